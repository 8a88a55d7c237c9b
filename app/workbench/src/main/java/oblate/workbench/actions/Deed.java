/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.actions;

import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.StringJoiner;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import oblate.workbench.words.Texts;

/**
 * Something a person can do. Its words and keys stand in the resource bundle of its package under its id: {@code id} is the text of menu and
 * button, {@code id.tip} one sentence more, {@code id.keys} its keys, parted by commas, as {@link KeyStroke#getKeyStroke(String)} reads them.
 *
 * <p>The first key is shown; where it is a plain letter or an editing key, so that it must not act while something is being typed, the
 * {@linkplain #bind component it belongs to} takes it instead of the menu.
 */
public final class Deed extends AbstractAction {
    private static final long serialVersionUID = 1L;
    private static final String MENU_KEY =
            System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("mac") ? "meta" : "ctrl";
    private final String id;
    private final transient Runnable doing;
    private final transient List<KeyStroke> keys = new ArrayList<>();

    private Deed(String id, String text, String keys, Runnable doing) {
        super(text);
        this.id = id;
        this.doing = doing;
        if (!keys.isBlank()) {
            readKeys(keys);
        }
    }

    /**
     * @param texts of the package the deed belongs to
     * @param id its key there, lower-case words with dots
     * @param doing what it does, on the event thread
     */
    public static Deed of(Texts texts, String id, Runnable doing) {
        Deed deed = new Deed(id, texts.text(id), texts.maybe(id + ".keys").orElse(""), doing);
        texts.maybe(id + ".tip").ifPresent(tip -> deed.putValue(SHORT_DESCRIPTION, tip));
        return deed;
    }

    /**
     * A deed whose words are known only while the program runs.
     *
     * @param keys as in the bundle; empty for none
     */
    public static Deed named(String id, String text, String keys, Runnable doing) {
        return new Deed(id, text, keys, doing);
    }

    private void readKeys(String words) {
        for (String word : words.split(",")) {
            KeyStroke key = KeyStroke.getKeyStroke(word.strip().replace("menu", MENU_KEY));
            if (key == null) {
                throw new IllegalArgumentException("\"" + word.strip() + "\" of " + id + " is no key");
            }
            keys.add(key);
        }
        if (!keys.isEmpty() && isSafeWhileTyping(keys.get(0))) {
            putValue(ACCELERATOR_KEY, keys.get(0));
        }
    }

    /** Whether a key may act wherever the focus is: function keys and keys with Ctrl, Alt or Meta that no text field uses. */
    static boolean isSafeWhileTyping(KeyStroke key) {
        boolean withModifier = (key.getModifiers()
                        & (InputEvent.CTRL_DOWN_MASK | InputEvent.META_DOWN_MASK | InputEvent.ALT_DOWN_MASK))
                != 0;
        boolean function = key.getKeyCode() >= KeyEvent.VK_F1 && key.getKeyCode() <= KeyEvent.VK_F12;
        boolean paging = key.getKeyCode() == KeyEvent.VK_PAGE_UP || key.getKeyCode() == KeyEvent.VK_PAGE_DOWN;
        return withModifier || function || paging;
    }

    /** Its id. */
    public String id() {
        return id;
    }

    /** All its keys, the one shown first. */
    public List<KeyStroke> keys() {
        return List.copyOf(keys);
    }

    /**
     * Makes its keys work in a component.
     *
     * @param condition as of {@link JComponent#getInputMap(int)}
     */
    public Deed bind(JComponent component, int condition) {
        component.getActionMap().put(id, this);
        keys.forEach(key -> component.getInputMap(condition).put(key, id));
        return this;
    }

    @Override
    public void actionPerformed(ActionEvent e) {
        doing.run();
    }

    /** The key of an action as a person reads it, e.g. "Ctrl+Shift+Z"; empty for one without. */
    public static Optional<String> keyOf(Action action) {
        if (action instanceof Deed deed) {
            return deed.keys.stream().findFirst().map(Deed::words);
        }
        return Optional.ofNullable((KeyStroke) action.getValue(ACCELERATOR_KEY)).map(Deed::words);
    }

    /** A key as a person reads it. */
    public static String words(KeyStroke key) {
        StringJoiner words = new StringJoiner("+");
        String modifiers = InputEvent.getModifiersExText(key.getModifiers());
        if (!modifiers.isEmpty()) {
            words.add(modifiers);
        }
        return words.add(KeyEvent.getKeyText(key.getKeyCode())).toString();
    }

    /** What a tooltip says: the text, the sentence more if there is one, and the key. */
    public static String tooltip(Action action) {
        String name = String.valueOf(action.getValue(NAME));
        Object more = action.getValue(SHORT_DESCRIPTION);
        String key = keyOf(action).map(k -> "  (" + k + ")").orElse("");
        return (more == null ? name : String.valueOf(more)) + key;
    }

    /** Whether all words typed occur in its text, sentence, section or key. */
    static boolean matches(Action action, String section, String typed) {
        String all = (section + " " + action.getValue(NAME) + " " + action.getValue(SHORT_DESCRIPTION) + " "
                        + keyOf(action).orElse(""))
                .toLowerCase(Locale.ROOT);
        for (String word : typed.toLowerCase(Locale.ROOT).split("\\s+")) {
            if (!all.contains(word)) {
                return false;
            }
        }
        return true;
    }
}
