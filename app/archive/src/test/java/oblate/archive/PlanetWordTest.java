/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.image.HeaderFact;
import oblate.image.PictureHeader;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Test;

class PlanetWordTest {

    private static PlanetWord word(String users, String path, String... facts) {
        List<HeaderFact> said = new java.util.ArrayList<>();
        for (int i = 0; i < facts.length; i += 3) {
            said.add(new HeaderFact(facts[i], facts[i + 1], facts[i + 2]));
        }
        PictureHeader header = new PictureHeader("fits", 10, 10, 1, 16, false, said);
        return PlanetWord.of(Optional.ofNullable(users), Path.of(path), header, Desk.PLANETS);
    }

    private static Optional<String> planet(PlanetWord word) {
        return word.planet().map(PlanetModel::id);
    }

    @Test
    void theUsersWordComesFirstAndTheFilesIsTold() {
        PlanetWord word = word("Saturn", "in/jupiter.fits", "FITS", "OBJECT", "JUPITER");
        assertThat(planet(word)).contains("saturn");
        assertThat(word.remarks()).hasSize(2).allMatch(r -> r.contains("Jupiter") && r.contains("Saturn"));
    }

    @Test
    void objectComesBeforeTheNameAndThatBeforeTheFolder() {
        assertThat(planet(word(null, "mars/saturn-1.fits", "FITS", "OBJECT", "Jupiter R")))
                .contains("jupiter");
        assertThat(planet(word(null, "mars/saturn-1.fits", "FITS", "OBJECT", "unknown")))
                .contains("saturn");
        assertThat(planet(word(null, "Mars 2031/run_1.fits"))).contains("mars");
        assertThat(planet(word(null, "in/1.png", "PNG", "Title", "my Jupiter"))).contains("jupiter");
        assertThat(planet(word(null, "in/1.jpg", "Exif", "ImageDescription", "SATURN")))
                .contains("saturn");
    }

    @Test
    void aWordWithinAWordOrTwoPlanetsSayNothing() {
        assertThat(planet(word(null, "in/marsh.png"))).isEmpty();
        assertThat(planet(word(null, "in/jupiter and mars.png"))).isEmpty();
        assertThat(word(null, "in/x.png").remarks()).hasSize(1).allMatch(r -> r.contains("planet is not known"));
    }

    @Test
    void agreementIsNoRemark() {
        assertThat(word("jupiter", "jupiter/Jupiter.png", "FITS", "OBJECT", "Jupiter")
                        .remarks())
                .isEmpty();
    }

    @Test
    void anUnknownPlanetIsRefusedWithTheKnownOnes() {
        assertThatThrownBy(() -> word("vulcan", "in/x.png"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(ArchiveProblem.NO_SUCH_PLANET))
                .hasMessageContainingAll("vulcan", "jupiter", "mars", "saturn");
    }
}
