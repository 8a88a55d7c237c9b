/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class FileNamesTest {

    @Property(tries = 2000, seed = "1")
    void aSafeNameStaysAsItIs(@ForAll("names") String name) {
        String safe = FileNames.safe(name);
        assertThat(FileNames.safe(safe)).isEqualTo(safe);
    }

    @Property(tries = 2000, seed = "1")
    void aSafeNameIsOnePlainName(@ForAll("names") String name, @ForAll @IntRange(min = 2, max = 99999) int number) {
        for (String safe : List.of(FileNames.safe(name), FileNames.numbered(FileNames.safe(name), number))) {
            assertThat(safe).isNotEmpty().isNotEqualTo(".").isNotEqualTo("..");
            assertThat(safe).doesNotContainPattern("[/\\\\:*?\"<>|\\p{Cntrl}]");
            assertThat(safe.charAt(0)).isNotEqualTo('.').isNotEqualTo(' ');
            assertThat(safe.charAt(safe.length() - 1)).isNotEqualTo('.').isNotEqualTo(' ');
            assertThat(safe.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(190);
            assertThat(safe).isEqualTo(Normalizer.normalize(safe, Normalizer.Form.NFC));
            Path place = Path.of("pictures").resolve(safe).normalize();
            assertThat(place.getParent()).isEqualTo(Path.of("pictures"));
            assertThat(place.getFileName()).hasToString(safe);
            assertThat(safe.toLowerCase(Locale.ROOT)).doesNotMatch("(con|prn|aux|nul|(com|lpt)[0-9¹²³])(\\..*)?");
        }
    }

    @Property(seed = "1")
    void aPlainNameIsKept(@ForAll("plain") String name) {
        assertThat(FileNames.safe(name)).isEqualTo(name);
    }

    @Example
    void namesThatSystemsCannotHoldAreChangedAsLittleAsNeeded() {
        assertThat(FileNames.safe("../../etc/passwd")).isEqualTo("_._etc_passwd");
        assertThat(FileNames.safe("a:b?.png")).isEqualTo("a_b_.png");
        assertThat(FileNames.safe("con.png")).isEqualTo("_con.png");
        assertThat(FileNames.safe("COM1.tif")).isEqualTo("_COM1.tif");
        assertThat(FileNames.safe("  . ")).isEqualTo("picture");
        assertThat(FileNames.safe("oval. .png")).isEqualTo("oval.png");
        assertThat(FileNames.safe("e\u0301.png")).isEqualTo("\u00e9.png");
        assertThat(FileNames.safe("ab\u202egnp.exe")).isEqualTo("ab_gnp.exe");
        assertThat(FileNames.numbered("a.fit", 2)).isEqualTo("a-2.fit");
        assertThat(FileNames.numbered("a", 2)).isEqualTo("a-2");
    }

    @Example
    void aLongEndingCutShortIsStillStable() {
        String name = "b".repeat(170) + "." + "c".repeat(50);
        assertThat(FileNames.safe(FileNames.safe(name))).isEqualTo(FileNames.safe(name));
        String reserved = "con." + "x".repeat(170) + ".png";
        assertThat(FileNames.safe(FileNames.safe(reserved))).isEqualTo(FileNames.safe(reserved));
    }

    @Provide
    Arbitrary<String> names() {
        Arbitrary<String> hostile = Arbitraries.of(
                "../",
                "..",
                ".",
                " ",
                "/",
                "\\",
                "con",
                "COM1",
                "nul",
                ":",
                "\u0000",
                "\u202e",
                "e\u0301",
                "\ud83d\ude00",
                "\ud800",
                "x".repeat(90),
                "日".repeat(40),
                ".png",
                "a");
        return Arbitraries.oneOf(
                Arbitraries.strings().ofMaxLength(260),
                hostile.list().ofMaxSize(8).map(parts -> String.join("", parts)));
    }

    @Provide
    Arbitrary<String> plain() {
        return Arbitraries.strings()
                .withCharRange('a', 'z')
                .withChars('-', '_', '0', '9')
                .ofMinLength(5)
                .ofMaxLength(100)
                .map(s -> s + ".png");
    }
}
