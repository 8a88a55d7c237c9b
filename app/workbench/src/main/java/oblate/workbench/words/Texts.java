/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.words;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;

/**
 * The texts of one package, from the resource bundle {@code texts} beside its classes, in UTF-8. A translation is a file {@code texts_xx.properties}
 * beside it. Immutable.
 */
public final class Texts {
    private final ResourceBundle bundle;

    private Texts(ResourceBundle bundle) {
        this.bundle = bundle;
    }

    /**
     * The texts of a class's package.
     *
     * @throws MissingResourceException when it has none
     */
    public static Texts of(Class<?> owner) {
        return new Texts(ResourceBundle.getBundle(
                owner.getPackageName() + ".texts", Locale.getDefault(), owner.getClassLoader(), FALLBACK));
    }

    /**
     * A language that is not there means the plain bundle, not that of the machine's own language; and English is the plain bundle, so that nothing
     * has to be looked for in every jar.
     */
    private static final ResourceBundle.Control FALLBACK = new ResourceBundle.Control() {
        @Override
        public List<String> getFormats(String baseName) {
            return FORMAT_PROPERTIES;
        }

        @Override
        public List<Locale> getCandidateLocales(String baseName, Locale locale) {
            return locale.getLanguage().equals("en")
                    ? List.of(Locale.ROOT)
                    : super.getCandidateLocales(baseName, locale);
        }

        @Override
        public Locale getFallbackLocale(String baseName, Locale locale) {
            return null;
        }
    };

    /**
     * A text as it stands.
     *
     * @throws MissingResourceException when there is none of that key
     */
    public String text(String key) {
        return bundle.getString(key);
    }

    /**
     * A text with its places filled in, by the rules of {@link MessageFormat}. Numbers should be handed in as text, formatted by whoever knows their
     * error.
     *
     * @throws MissingResourceException when there is none of that key
     */
    public String text(String key, Object... values) {
        return new MessageFormat(bundle.getString(key), Locale.ROOT).format(values);
    }

    /**
     * A text that says how many: the key with {@code .one} added for one, the plain key for any other number. The number is the place {@code {0}} of
     * both, the other values follow.
     *
     * @throws MissingResourceException when there is none of that key
     */
    public String counted(String key, long count, Object... more) {
        Object[] values = new Object[more.length + 1];
        values[0] = Long.toString(count);
        System.arraycopy(more, 0, values, 1, more.length);
        return text(count == 1 ? key + ".one" : key, values);
    }

    /**
     * The text of one value of several, under its {@linkplain #key(String, Enum) key}.
     *
     * @throws MissingResourceException when there is none of that key
     */
    public String word(String prefix, Enum<?> value) {
        return text(key(prefix, value));
    }

    /** The key of one value of several: after the prefix and a dot its name in lower case with dots, e.g. {@code bearing.north.up}. */
    public static String key(String prefix, Enum<?> value) {
        return prefix + "." + value.name().toLowerCase(Locale.ROOT).replace('_', '.');
    }

    /** A text, if there is one of that key. */
    public Optional<String> maybe(String key) {
        return bundle.containsKey(key) ? Optional.of(bundle.getString(key)) : Optional.empty();
    }
}
