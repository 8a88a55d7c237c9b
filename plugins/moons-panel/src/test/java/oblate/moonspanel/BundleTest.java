/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oblate.drift.timing.MoonState;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.TimedPoint;
import oblate.sky.Twilight;
import oblate.sky.event.EventKind;
import oblate.sky.event.MutualContact;
import org.junit.jupiter.api.Test;

/** The bundle of texts against the sources that use it. */
class BundleTest {
    private static final Path SOURCES = Path.of("src/main/java/oblate/moonspanel");
    private static final Path BUNDLE = Path.of("src/main/resources/oblate/moonspanel/texts.properties");
    private static final Pattern LITERAL = Pattern.compile("\"([a-z0-9_]+(?:\\.[a-z0-9_]+)*)\"");
    /** A call's key, or both keys of a choice. */
    private static final Pattern ASKED = Pattern.compile(
            "(?:(?:TEXTS|Texts\\.of\\(\\w+\\.class\\))\\s*\\.text\\(|Deed\\.of\\(\\s*TEXTS,)(?:[^\"(),;]|\\([^\"();]*\\))*\"([^\"]+)\"(?:\\s*:\\s*\"([^\"]+)\")?\\s*[,)]");

    private static Properties bundle() throws IOException {
        Properties texts = new Properties();
        try (Reader in = Files.newBufferedReader(BUNDLE)) {
            texts.load(in);
        }
        return texts;
    }

    private static String sources() throws IOException {
        try (Stream<Path> files = Files.list(SOURCES)) {
            StringBuilder all = new StringBuilder();
            for (Path file : files.sorted().toList()) {
                all.append(Files.readString(file));
            }
            return all.toString();
        }
    }

    /** Keys put together while the program runs. */
    private static Set<String> composed() {
        Set<String> keys = new TreeSet<>();
        for (EventKind kind : EventKind.values()) {
            keys.add("kind." + kind.id());
            for (MoonState state : MoonState.about(Phenomenon.valueOf(kind.name()))) {
                keys.add("state." + kind.id() + "." + state.id());
            }
        }
        for (EventKind kind : List.of(EventKind.OCCULTATION, EventKind.ECLIPSE)) {
            keys.add("meeting." + kind.id());
        }
        for (MutualContact kind : MutualContact.values()) {
            keys.add("touch." + kind.name().toLowerCase(Locale.ROOT));
        }
        for (String touch : List.of("t1", "ingress_centre", "t2", "t3", "egress_centre", "t4")) {
            keys.add("touch." + touch);
        }
        for (TimedPoint point : TimedPoint.values()) {
            if (point != TimedPoint.PLACE) {
                keys.add("point." + point.id());
            }
        }
        for (Twilight light : Twilight.values()) {
            keys.add("twilight." + light.word());
        }
        for (String part :
                List.of("planet", "site", "stretch", "date", "facing", "mirrored", "time", "slider", "near", "wide")) {
            keys.add(part + ".name");
            keys.add(part + ".tip");
        }
        return keys;
    }

    @Test
    void everyKeyTheSourcesAskForIsThere() throws IOException {
        Set<String> asked = ASKED.matcher(sources())
                .results()
                .flatMap(m -> Stream.of(m.group(1), m.group(2)))
                .filter(k -> k != null && !k.startsWith(".") && !k.endsWith("."))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(asked).hasSizeGreaterThan(40);
        asked.addAll(composed());
        assertThat(bundle().stringPropertyNames()).containsAll(asked);
    }

    @Test
    void everyKeyThereIsUsed() throws IOException {
        Set<String> used =
                LITERAL.matcher(sources()).results().map(m -> m.group(1)).collect(Collectors.toSet());
        used.addAll(composed());
        assertThat(bundle().stringPropertyNames())
                .allSatisfy(key -> assertThat(List.of(key, key.replaceFirst("\\.(tip|keys|name)$", "")))
                        .as(key)
                        .anyMatch(used::contains));
    }

    @Test
    void everyPatternParsesAndKeepsItsApostrophes() throws IOException {
        Properties texts = bundle();
        for (String key : texts.stringPropertyNames()) {
            String text = texts.getProperty(key);
            assertThat(text).as(key).isNotBlank();
            if (text.contains("{")) {
                assertThatCode(() -> new MessageFormat(text)).as(key).doesNotThrowAnyException();
                assertThat(text.replace("''", "")).as(key).doesNotContain("'");
            } else {
                assertThat(text).as(key).doesNotContain("''");
            }
        }
    }
}
