/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

/** What a chart shows. Each kind of chart is a record of its own; a {@link ChartWriter} says which it can draw. */
public interface ChartContent {}
