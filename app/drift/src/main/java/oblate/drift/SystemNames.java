/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Locale;
import java.util.stream.Collectors;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Finds a planet's rotation system by what a person calls it. Stateless. */
public final class SystemNames {

    private SystemNames() {}

    /**
     * The system a word means: its id ("2"), its label ("System II"), the Roman number alone ("II"), or "iau" for the IAU's on any planet.
     *
     * @throws ProblemException with {@link DriftProblem#UNKNOWN_SYSTEM}, listing the planet's systems
     */
    public static RotationSystem named(PlanetModel planet, String word) {
        String wanted = bare(word);
        for (RotationSystem system : planet.globe().systems()) {
            if (wanted.equals(bare(system.id())) || wanted.equals(bare(system.label()))) {
                return system;
            }
        }
        if (wanted.equals("iau")) {
            return planet.globe().iauSystem();
        }
        String known = planet.globe().systems().stream()
                .map(system -> system.id().equalsIgnoreCase(system.label()) ? system.id() : system.id() + " (" + system.label() + ")")
                .collect(Collectors.joining(", "));
        throw new ProblemException(DriftProblem.UNKNOWN_SYSTEM, word, planet.label(), known);
    }

    private static String bare(String word) {
        return word.strip().toLowerCase(Locale.ROOT).replaceFirst("^(system|sys)[ _-]*", "");
    }
}
