/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a panel's bundle of texts and the sources that use it owe each other. A test class extends it in the package of the panel. */
public abstract class BundleContract {
    private static final Pattern LITERAL = Pattern.compile("\"([a-z0-9_]+(?:\\.[a-z0-9_]+)*)\"");
    /** A call's key, or both keys of a choice. */
    private static final Pattern ASKED = Pattern.compile(
            "(?:(?:TEXTS|Texts\\.of\\(\\w+\\.class\\))\\s*\\.text\\(|Deed\\.of\\(\\s*TEXTS,)(?:[^\"(),;]|\\([^\"();]*\\))*\"([^\"]+)\"(?:\\s*:\\s*\"([^\"]+)\")?\\s*[,)]");

    /** Keys put together while the program runs. */
    protected abstract Set<String> composed();

    /** The folder of this package, in the sources or the resources. */
    private Path folder(String tree) {
        return Path.of("src/main", tree).resolve(getClass().getPackageName().replace('.', '/'));
    }

    private Properties bundle() throws IOException {
        Properties texts = new Properties();
        try (Reader in = Files.newBufferedReader(folder("resources").resolve("texts.properties"))) {
            texts.load(in);
        }
        return texts;
    }

    private String sources() throws IOException {
        try (Stream<Path> files = Files.list(folder("java"))) {
            StringBuilder all = new StringBuilder();
            for (Path file : files.sorted().toList()) {
                all.append(Files.readString(file));
            }
            return all.toString();
        }
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
