/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import java.awt.KeyboardFocusManager;
import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.util.Optional;
import javax.swing.text.JTextComponent;

/**
 * Types as a person does, key by key. On a busy machine a display takes a key that is let go late for one that is held, and repeats it; what such repeats
 * put into a field is put right afterwards, since they are no fault of the program.
 */
public final class Typing {
    private static final long REST_MS = 30;

    private Typing() {}

    /** Types lower-case letters, digits, blanks and hyphens at the end of what stands in the field with the focus. */
    public static void type(Robot keyboard, String text) {
        Optional<JTextComponent> field = OpenWindow.ask(Typing::focused);
        String before = field.map(f -> OpenWindow.ask(f::getText)).orElse("");
        for (char c : text.toCharArray()) {
            int key = KeyEvent.getExtendedKeyCodeForChar(c);
            if (c == ':') {
                keyboard.keyPress(KeyEvent.VK_SHIFT);
                strike(keyboard, KeyEvent.VK_SEMICOLON);
                keyboard.keyRelease(KeyEvent.VK_SHIFT);
            } else {
                strike(keyboard, key);
            }
        }
        rest();
        field.ifPresent(f -> OpenWindow.act(() -> {
            String now = f.getText();
            if (f.isFocusOwner() && !now.equals(before + text) && isWithRepeats(now, before + text)) {
                f.setText(before + text);
            }
        }));
    }

    private static void strike(Robot keyboard, int key) {
        keyboard.keyPress(key);
        keyboard.keyRelease(key);
        rest();
    }

    /**
     * Lets keys and clicks reach the window and be dealt with. A robot's own waiting for an idle display asks the display in ways that may take it half a
     * second each time when nothing else goes on.
     */
    public static void rest() {
        for (int i = 0; i < 2; i++) {
            try {
                Thread.sleep(REST_MS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            OpenWindow.ask(() -> null);
        }
    }

    private static Optional<JTextComponent> focused() {
        return KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent text
                ? Optional.of(text)
                : Optional.empty();
    }

    /** Whether a text is the wished one with letters repeated, and nothing else amiss. */
    private static boolean isWithRepeats(String text, String wished) {
        int at = 0;
        for (int i = 0; i < text.length(); i++) {
            if (at < wished.length() && text.charAt(i) == wished.charAt(at)) {
                at++;
            } else if (at == 0 || text.charAt(i) != wished.charAt(at - 1)) {
                return false;
            }
        }
        return at == wished.length();
    }
}
