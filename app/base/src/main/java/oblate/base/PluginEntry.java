/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/**
 * A plug-in that was let in.
 *
 * @param point interface of its extension point
 * @param id its id
 * @param label its label, as it was when it came in
 * @param jar file name of the jar it came in, or {@value #BUNDLED}
 */
public record PluginEntry(Class<?> point, String id, String label, String jar) {
    /** What stands in place of a jar's name for what ships with the program. */
    public static final String BUNDLED = "bundled";

    /** Whether it ships with the program. */
    public boolean isBundled() {
        return jar.equals(BUNDLED);
    }
}
