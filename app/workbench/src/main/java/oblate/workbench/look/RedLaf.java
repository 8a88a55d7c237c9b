/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import com.formdev.flatlaf.FlatDarkLaf;

/** The red look; its values are in the properties file of the same name. */
public final class RedLaf extends FlatDarkLaf {
    private static final long serialVersionUID = 1L;

    @Override
    public String getName() {
        return "Oblate red";
    }
}
