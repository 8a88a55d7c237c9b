/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times in a text note beside the picture: {@code name.ext.txt} or {@code name.txt}, any words, the first ISO 8601 time in them. */
final class NoteTimes {
    private static final int MOST_BYTES = 65_536;
    private static final Pattern LENGTH = Pattern.compile(
            "\\b(?:exposure|exp|capture|duration|length)\\b[^\\d\\r\\n]{0,20}?(\\d{1,7}(?:\\.\\d{1,6})?)\\s*"
                    + "(ms|seconds|second|secs|sec|s|minutes|minute|mins|min)\\b",
            Pattern.CASE_INSENSITIVE);

    private NoteTimes() {}

    static Testimony of(Path file) {
        if (file.getFileName() == null) {
            return Testimony.none();
        }
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        String bare = dot > 0 ? name.substring(0, dot) : name;
        List<String> remarks = new ArrayList<>();
        for (String note : List.of(name + ".txt", bare + ".txt")) {
            Path path = file.resolveSibling(note);
            if (note.equals(name) || !Files.isRegularFile(path)) {
                continue;
            }
            try (InputStream in = Files.newInputStream(path)) {
                Testimony testimony =
                        read(note, new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8), remarks);
                if (!testimony.statements().isEmpty() || testimony.exposureS().isPresent()) {
                    return testimony;
                }
            } catch (IOException e) {
                remarks.add("The note " + note + " cannot be read.");
            }
        }
        return new Testimony(List.of(), remarks, OptionalDouble.empty());
    }

    private static Testimony read(String note, String text, List<String> remarks) {
        OptionalDouble exposureS = exposure(text);
        List<Statement> statements = new ArrayList<>();
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            String place = note + " line " + number;
            for (IsoTime time : IsoTimes.find(line, IsoTimes.Manner.WORDS)) {
                if (time.fault().isPresent()) {
                    remarks.add(Testimony.fault(place, time.text(), time.fault().get()));
                    continue;
                }
                TimeMeaning meaning = MeaningWords.nearest(line, time.at(), time.end());
                statements.add(Testimony.statement(time, TimeSource.SIDE_NOTE, place, meaning, exposureS));
            }
        }
        return new Testimony(best(statements), remarks, exposureS);
    }

    /** The first time of the note, and a later one only when the two are start and end. */
    private static List<Statement> best(List<Statement> all) {
        if (all.isEmpty()) {
            return all;
        }
        Statement first = all.get(0);
        if (first.claim().meaning() == TimeMeaning.START) {
            for (Statement other : all) {
                if (other.claim().meaning() == TimeMeaning.END) {
                    return List.of(first, other);
                }
            }
        }
        return List.of(first);
    }

    private static OptionalDouble exposure(String text) {
        Matcher m = LENGTH.matcher(text);
        while (m.find()) {
            String unit = m.group(2).toLowerCase(Locale.ROOT);
            double factor = unit.equals("ms") ? 0.001 : unit.startsWith("m") ? 60 : 1;
            double value = Double.parseDouble(m.group(1)) * factor;
            if (value >= 1) {
                return OptionalDouble.of(value);
            }
        }
        return OptionalDouble.empty();
    }
}
