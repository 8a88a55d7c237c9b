/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of this panel, from its resource bundle. */
final class Words {
    private static final ResourceBundle BUNDLE =
            ResourceBundle.getBundle("oblate.tonightpanel.TonightPanel", Locale.ROOT);

    private Words() {}

    /** A text with its blanks filled. */
    static String of(String key, Object... blanks) {
        String text = BUNDLE.getString(key);
        return blanks.length == 0 ? text : new MessageFormat(text, Locale.ROOT).format(blanks);
    }
}
