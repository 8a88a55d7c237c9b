/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Format;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oblate.workbench.measure.Layers;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.words.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The resource bundles of the window and the sources that read them fit together, and no words stand in the sources. */
class TextsTest {
    private static final Path SOURCES = Path.of("src/main/java");
    private static final Path RESOURCES = Path.of("src/main/resources");

    /** Whatever the sources ask a bundle for, and the place of the key among the arguments. */
    private static final Pattern ASKED =
            Pattern.compile("TEXTS\\s*\\.\\s*(?:text|maybe|counted|word)|Deed\\s*\\.\\s*of|Texts\\s*\\.\\s*key");

    /** Where words reach a person. */
    private static final Pattern SHOWN =
            Pattern.compile("new J(?:Label|Button|CheckBox|RadioButton|ToggleButton|Menu|MenuItem"
                    + "|Dialog)|new FoldSection|setText|setTitle|setToolTipText|setAccessibleName|setAccessibleDescription"
                    + "|setApproveButtonText|addTab|setEmptyWords|drawString|say|alarm|remark|fact|figure"
                    + "|putClientProperty");

    private static final Pattern WORDS = Pattern.compile("[A-Z]|\\p{L}{2,} \\p{L}{2,}");

    /** Literals at those places that are no words for people: names of properties, and the end of a time that is cut off. */
    private static final Set<String> NO_WORDS = Set.of(
            "JTextField.placeholderText",
            "JTextField.showClearButton",
            "JButton.buttonType",
            "toolBarButton",
            " UT",
            "FlatLaf.styleClass");

    /** What deeds and counts add to a key, and the desk to its deeds that act ten times as far. */
    private static final Pattern ENDING = Pattern.compile("\\.(tip|keys|one|far)$");

    /** Keys made of the names of a kind's values. */
    private enum Named {
        BEARING("bearing", "Bearing"),
        MARK_CHANGE("edit.what.mark", "Edit$Change"),
        FIT_ORIGIN("edit.what.fit", "Edit$Origin"),
        THEME("theme", "look.Theme"),
        STATE("state", "look.StateGlyph$State"),
        VIEW("nights.bar", "nights.NightsBar$View"),
        FACT("fact", "nights.FactField"),
        FACT_SAID("fact.said", "nights.FactField"),
        SEARCH_HINT("search.hint", "nights.SearchKey"),
        TODO_COUNT("todo.count", "nights.Todo$Kind"),
        TODO_HEADING("todo.heading", "nights.Todo$Kind"),
        CHANNEL("channel", "measure.Look$Channel"),
        MANNER("compare.manner", "measure.PairCanvas$Manner"),
        FRAME("compare.kind", "measure.SameFrame$Kind"),
        VIEW_SHOWN("nights.view", "nights.NightsBar$View"),
        THEME_DEED("view.theme", "look.Theme"),
        BEARING_DEED("view.bearing", "Bearing");

        private final String prefix;
        private final String kind;

        Named(String prefix, String kind) {
            this.prefix = prefix;
            this.kind = "oblate.workbench." + kind;
        }

        /** Whether its keys are those of deeds, put together by whoever makes the deeds. */
        boolean isDeed() {
            return name().endsWith("DEED");
        }

        Set<String> keys() throws ClassNotFoundException {
            return Stream.of(Class.forName(kind).getEnumConstants())
                    .map(value -> Texts.key(prefix, (Enum<?>) value))
                    .collect(Collectors.toSet());
        }
    }

    /** One package with a bundle. */
    private record Part(String name, Map<String, String> bundle, Map<String, String> sources) {
        @Override
        public String toString() {
            return name;
        }

        List<SourceCalls> asking() {
            return sources.values().stream()
                    .flatMap(s -> SourceCalls.in(s, ASKED).stream())
                    .toList();
        }
    }

    static List<Part> parts() throws IOException {
        try (Stream<Path> files = Files.walk(RESOURCES)) {
            return files.filter(f -> f.endsWith("texts.properties"))
                    .sorted()
                    .map(TextsTest::part)
                    .toList();
        }
    }

    private static Part part(Path file) {
        Path folder = RESOURCES.relativize(file.getParent());
        Map<String, String> sources = new LinkedHashMap<>();
        try (Reader in = Files.newBufferedReader(file);
                Stream<Path> beside = Files.list(SOURCES.resolve(folder))) {
            Properties properties = new Properties();
            properties.load(in);
            Map<String, String> bundle = new LinkedHashMap<>();
            properties.stringPropertyNames().forEach(k -> bundle.put(k, properties.getProperty(k)));
            for (Path source :
                    beside.filter(f -> f.toString().endsWith(".java")).toList()) {
                sources.put(source.getFileName().toString(), Files.readString(source));
            }
            return new Part(folder.toString(), bundle, sources);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everyPackageOfTheWindowWithWordsHasItsBundle() throws IOException {
        assertThat(parts().stream().map(p -> p.name().replace('\\', '/')))
                .contains(
                        "oblate/workbench",
                        "oblate/workbench/actions",
                        "oblate/workbench/look",
                        "oblate/workbench/measure",
                        "oblate/workbench/nights",
                        "oblate/workbench/pictures",
                        "oblate/workbench/plugins",
                        "oblate/workbench/table");
    }

    @ParameterizedTest
    @MethodSource("parts")
    void everyKeyAskedForIsInTheBundle(Part part) {
        List<String> missing = new ArrayList<>();
        int asked = 0;
        for (SourceCalls call : part.asking()) {
            for (String key : keys(call)) {
                asked++;
                List<String> wanted = call.words().endsWith("counted") ? List.of(key, key + ".one") : List.of(key);
                wanted.stream().filter(k -> !part.bundle().containsKey(k)).forEach(missing::add);
            }
        }
        assertThat(missing).isEmpty();
        assertThat(asked).isPositive();
    }

    @ParameterizedTest
    @MethodSource("parts")
    void everyKeyOfTheBundleIsAskedFor(Part part) throws ClassNotFoundException {
        Set<String> known = new TreeSet<>();
        for (Named named : Named.values()) {
            known.addAll(named.keys());
        }
        part.sources().values().stream()
                .filter(s -> s.contains("TEXTS"))
                .forEach(s -> known.addAll(SourceCalls.literals(s)));
        Layers.all().forEach(layer -> known.add("layer." + layer.id()));
        assertThat(part.bundle().keySet()).allSatisfy(key -> {
            List<String> names = new ArrayList<>(List.of(key));
            for (String k = key; ENDING.matcher(k).find(); ) {
                k = ENDING.matcher(k).replaceFirst("");
                names.add(k);
            }
            assertThat(names).as(key).anyMatch(known::contains);
        });
    }

    @ParameterizedTest
    @EnumSource(Named.class)
    void everyValueOfAKindHasItsWords(Named named) throws IOException, ClassNotFoundException {
        Set<String> all =
                parts().stream().flatMap(p -> p.bundle().keySet().stream()).collect(Collectors.toSet());
        assertThat(all).containsAll(named.keys());
        if (named == Named.TODO_COUNT) {
            named.keys().forEach(key -> assertThat(all).contains(key + ".one"));
        }
    }

    @Test
    void everyKindAskedForByValueIsKnownHere() throws IOException {
        Set<String> prefixes = Stream.of(Named.values())
                .filter(n -> !n.isDeed())
                .map(n -> n.prefix)
                .collect(Collectors.toSet());
        Set<String> asked = parts().stream()
                .flatMap(p -> p.asking().stream())
                .filter(c -> c.words().endsWith("word") || c.words().endsWith("key"))
                .map(c -> SourceCalls.literals(c.arguments().get(0)).get(0))
                .collect(Collectors.toSet());
        assertThat(asked).isEqualTo(prefixes);
    }

    @ParameterizedTest
    @MethodSource("parts")
    void everyPatternParsesAndFillsThePlacesItIsHanded(Part part) {
        part.bundle().forEach((key, text) -> {
            if (text.matches("(?s).*\\{\\d.*")) {
                Format[] places = new MessageFormat(text, Locale.ROOT).getFormatsByArgumentIndex();
                assertThat(places.length).as(key).isPositive();
            }
        });
        for (SourceCalls call : part.asking()) {
            for (String key : keys(call)) {
                int handed = call.words().endsWith("text") ? call.arguments().size() - 1 : 0;
                if (call.words().endsWith("counted")) {
                    assertThat(places(part, key))
                            .as(key)
                            .isEqualTo(call.arguments().size() - 1);
                    assertThat(places(part, key + ".one"))
                            .as(key)
                            .isLessThan(call.arguments().size());
                } else {
                    assertThat(places(part, key)).as(key).isEqualTo(handed);
                }
            }
        }
    }

    @Test
    void numbersAndValuesChooseTheirWords() {
        Texts texts = Texts.of(NightGroup.class);
        assertThat(texts.counted("pictures", 1)).isEqualTo("1 picture");
        assertThat(texts.counted("pictures", 0)).isEqualTo("0 pictures");
        assertThat(texts.counted("pictures", 12_000)).isEqualTo("12000 pictures");
        assertThat(Texts.key("bearing", Bearing.NORTH_UP)).isEqualTo("bearing.north.up");
        assertThat(Texts.of(Bearing.class).word("bearing", Bearing.AS_TAKEN)).isEqualTo("as taken");
    }

    @Test
    void noWordsStandInTheSources() throws IOException {
        List<String> found = new ArrayList<>();
        int looked = 0;
        for (Part part : parts()) {
            for (Map.Entry<String, String> source : part.sources().entrySet()) {
                looked += SourceCalls.in(source.getValue(), SHOWN).size();
                spoken(source.getValue()).forEach(w -> found.add(source.getKey() + ": " + w));
            }
        }
        assertThat(found).isEmpty();
        assertThat(looked).isGreaterThan(200);
    }

    @Test
    void theGuardSeesWordsWhereverTheyAreHandedOver() {
        assertThat(spoken("add(new JLabel(\"Reason\"));")).containsExactly("Reason");
        assertThat(spoken("head.setText(n == 1 ? \"one mark\" : n + \" of them all\");"))
                .hasSize(2);
        assertThat(spoken("box.putClientProperty(\"JTextField.placeholderText\", \"Name, or (a) new one\");"))
                .hasSize(1);
        assertThat(spoken("context.say(\n    \"Nothing \\\" is left\")")).hasSize(1);
        assertThat(spoken("head.setText(TEXTS.text(\"head.one\") + \"   ·   \" + size + \" px\");"))
                .isEmpty();
    }

    private static List<String> spoken(String source) {
        return SourceCalls.in(source, SHOWN).stream()
                .flatMap(c -> c.arguments().stream())
                .flatMap(a -> SourceCalls.literals(a).stream())
                .filter(l -> WORDS.matcher(l).find() && !NO_WORDS.contains(l))
                .toList();
    }

    /** The whole keys of a call; those put together while the program runs are left out. */
    private static List<String> keys(SourceCalls call) {
        boolean deed = call.words().endsWith("of");
        boolean named = call.words().endsWith("word") || call.words().endsWith("key");
        String argument = call.arguments().get(deed ? 1 : 0);
        return named || argument.contains("+") || argument.contains("Texts.key")
                ? List.of()
                : SourceCalls.literals(argument);
    }

    private static int places(Part part, String key) {
        String text = part.bundle().getOrDefault(key, "");
        return text.matches("(?s).*\\{\\d.*")
                ? new MessageFormat(text, Locale.ROOT).getFormatsByArgumentIndex().length
                : 0;
    }
}
