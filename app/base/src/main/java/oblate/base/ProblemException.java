/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.util.List;
import java.util.Locale;

/**
 * A problem a person can mend: its message is one clear sentence naming file, place and remedy, fit to be shown as it is.
 *
 * <p>Carries its {@link ProblemKind} and parts, so that tests assert the kind and not the English.
 */
public final class ProblemException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient ProblemKind kind;
    private final transient List<Object> parts;

    /**
     * @param kind what went wrong
     * @param parts values for the places of the template, in order; doubles are written as {@code Double.toString} does
     */
    public ProblemException(ProblemKind kind, Object... parts) {
        this(null, kind, parts);
    }

    /**
     * @param cause what was thrown below, kept for the log; may be null
     * @param kind what went wrong
     * @param parts values for the places of the template, in order
     */
    public ProblemException(Throwable cause, ProblemKind kind, Object... parts) {
        super(sentence(kind, parts), cause);
        this.kind = kind;
        this.parts = List.of(parts);
    }

    /** What went wrong. */
    public ProblemKind kind() {
        return kind;
    }

    /** The values put into the sentence, in order. */
    public List<Object> parts() {
        return parts;
    }

    private static String sentence(ProblemKind kind, Object... parts) {
        String text = kind.template();
        for (int i = 0; i < parts.length; i++) {
            text = text.replace(String.format(Locale.ROOT, "{%d}", i), String.valueOf(parts[i]));
        }
        return text;
    }
}
