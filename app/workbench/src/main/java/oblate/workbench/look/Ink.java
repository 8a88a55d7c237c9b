/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

/** What an overlay line means; each theme has a colour for it, and each is drawn with a dark casing. */
public enum Ink {
    OUTLINE,
    GRID,
    MERIDIAN,
    TERMINATOR,
    RING,
    MARK,
    CHOSEN,
    EXPECTED,
    ERROR
}
