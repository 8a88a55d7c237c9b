/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;

class PlanetModelsTest {
    private static final PlanetModels PLANETS =
            new PlanetModels(List.of(named("Mars"), named("Jupiter"), named("Saturn")));

    private static PlanetModel named(String label) {
        return new PlanetModel() {
            @Override
            public String id() {
                return label.toLowerCase(java.util.Locale.ROOT);
            }

            @Override
            public String label() {
                return label;
            }

            @Override
            public Globe globe() {
                throw new AssertionError("a look-up needs no globe");
            }
        };
    }

    @Test
    void capitalsAndBlanksDoNotMatter() {
        assertThat(PLANETS.named(" JUPITER ").id()).isEqualTo("jupiter");
        assertThat(PLANETS.named("mars").label()).isEqualTo("Mars");
    }

    @Test
    void misspeltNameIsRefusedWithTheNearest() {
        assertThatThrownBy(() -> PLANETS.named("jupter"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.NO_SUCH_PLANET))
                .hasMessageContainingAll("\"jupter\"", "did you mean jupiter?", "mars, jupiter, saturn");
        assertThatThrownBy(() -> PLANETS.named("Satrun")).hasMessageContaining("did you mean saturn?");
    }

    @Test
    void withoutPlanetsThereIsNothingToOffer() {
        assertThatThrownBy(() -> new PlanetModels(List.of()).named("mars"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.NO_PLANETS));
    }
}
