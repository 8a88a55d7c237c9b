/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.tutorial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The tutorial's code is that of these sources, and it works. */
class TutorialTest {
    private static final Path ROOT = Path.of("").toAbsolutePath().getParent().getParent();

    @ParameterizedTest
    @ValueSource(strings = {"ObserverCountPanel", "TutorialPlanet"})
    void thePageShowsTheCompiledSource(String name) throws IOException {
        String source = Files.readString(
                ROOT.resolve("app/workbench/src/test/java/oblate/workbench/tutorial/" + name + ".java"));
        String body = source.substring(source.indexOf("public final class")).strip();
        String page = Files.readString(ROOT.resolve("docs/write-a-plug-in.md"));
        assertThat(page).contains("```java\n" + body + "\n```");
    }

    @Test
    void theTutorialPlanetHasADiscInTheSky() {
        TutorialPlanet planet = new TutorialPlanet();
        ApparentDisc disc = Sky.bundled().disc(planet, Instant.parse("2031-03-24T21:05:30Z"));
        assertThat(disc.diameterEquatorialArcsec()).isBetween(1.0, 30.0);
        assertThat(disc.subEarth().iauLonDeg()).isBetween(0.0, 360.0);
    }
}
