/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

/** How sure an overlay line is, told by its stroke and not by colour: measured solid, predicted dashed, doubtful dotted. */
public enum Pattern {
    SOLID,
    DASHED,
    DOTTED
}
