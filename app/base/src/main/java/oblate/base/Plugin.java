/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/** What every extension point has: an id, unique among plug-ins of its kind, and a label for people. */
public interface Plugin {

    /** Lower-case letters, digits and hyphens; never changes once published, because catalogs and settings keep it. */
    String id();

    /** What a person reads in lists. */
    String label();
}
