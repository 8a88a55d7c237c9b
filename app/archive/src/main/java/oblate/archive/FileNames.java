/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Makes names for files in the archive that every system can hold, as near to the original as that allows. */
final class FileNames {
    static final int MOST_BYTES = 180;
    private static final int MOST_EXTENSION_BYTES = 20;

    private static final Pattern UNFIT =
            Pattern.compile("[\\p{Cntrl}\\p{Cf}\\p{Cs}\\p{Co}\\p{Cn}\\p{Zl}\\p{Zp}/\\\\:*?\"<>|]");
    private static final Pattern EDGE = Pattern.compile("^[\\p{Z}.]+|[\\p{Z}.]+$");
    private static final Set<String> RESERVED = Set.of("con", "prn", "aux", "nul");
    private static final Pattern RESERVED_PORT = Pattern.compile("(com|lpt)[0-9¹²³]");

    private FileNames() {}

    /** A safe name; the same for a name that is safe already. */
    static String safe(String original) {
        String name = original;
        String safer = safer(name);
        // Cutting one long ending can bring another to light, so until nothing changes.
        while (!safer.equals(name)) {
            name = safer;
            safer = safer(name);
        }
        return name;
    }

    private static String safer(String original) {
        String name = Normalizer.normalize(original, Normalizer.Form.NFC);
        name = UNFIT.matcher(name).replaceAll("_");
        name = EDGE.matcher(name).replaceAll("");
        String stem = EDGE.matcher(stem(name)).replaceAll("");
        String extension = extension(name);
        if (extension.getBytes(StandardCharsets.UTF_8).length > MOST_EXTENSION_BYTES) {
            stem = name;
            extension = "";
        }
        stem = EDGE.matcher(cut(stem, MOST_BYTES - extension.length() * 4)).replaceAll("");
        if (stem.isEmpty()) {
            stem = "picture";
        }
        if (isReserved(stem)) {
            stem = "_" + stem;
        }
        return stem + extension;
    }

    /** The name with a number before its extension, for when the plain one is taken. */
    static String numbered(String safeName, int number) {
        return stem(safeName) + "-" + number + extension(safeName);
    }

    /** Name without its extension. */
    static String stem(String name) {
        return name.substring(0, name.length() - extension(name).length());
    }

    /** Extension with its dot, or nothing. */
    static String extension(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 && dot < name.length() - 1 ? name.substring(dot) : "";
    }

    private static boolean isReserved(String stem) {
        int dot = stem.indexOf('.');
        String first = (dot < 0 ? stem : stem.substring(0, dot)).strip().toLowerCase(Locale.ROOT);
        return RESERVED.contains(first) || RESERVED_PORT.matcher(first).matches();
    }

    private static String cut(String text, int mostBytes) {
        int bytes = 0;
        int end = 0;
        while (end < text.length()) {
            int codePoint = text.codePointAt(end);
            bytes += new String(Character.toChars(codePoint)).getBytes(StandardCharsets.UTF_8).length;
            if (bytes > mostBytes) {
                break;
            }
            end += Character.charCount(codePoint);
        }
        return text.substring(0, end);
    }
}
