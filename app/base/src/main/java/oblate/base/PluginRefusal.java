/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/**
 * A plug-in that could not be used, and why.
 *
 * @param where jar file name, or {@code "bundled"}
 * @param what class or id of the plug-in, or the extension point when no more is known
 * @param reason one sentence
 */
public record PluginRefusal(String where, String what, String reason) {}
