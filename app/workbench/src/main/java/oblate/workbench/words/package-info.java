/* SPDX-License-Identifier: Apache-2.0 */
/** Texts a person reads, kept in resource bundles. */
package oblate.workbench.words;
