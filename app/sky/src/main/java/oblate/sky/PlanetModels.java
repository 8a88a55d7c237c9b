/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import oblate.base.ProblemException;

/**
 * The planets at hand, to be found by the word a person writes. Immutable.
 *
 * @param planets in the order they are offered
 */
public record PlanetModels(List<PlanetModel> planets) {

    /** Copies the list. */
    public PlanetModels {
        planets = List.copyOf(planets);
    }

    /**
     * The planet whose id or label is a word, capitals and blanks around it not counted.
     *
     * @throws ProblemException {@link SkyProblem#NO_SUCH_PLANET} with the nearest name, or {@link SkyProblem#NO_PLANETS}
     */
    public PlanetModel named(String word) {
        String wanted = word.strip().toLowerCase(Locale.ROOT);
        for (PlanetModel planet : planets) {
            if (planet.id().equals(wanted)
                    || planet.label().toLowerCase(Locale.ROOT).equals(wanted)) {
                return planet;
            }
        }
        if (planets.isEmpty()) {
            throw new ProblemException(SkyProblem.NO_PLANETS, word);
        }
        PlanetModel nearest = planets.get(0);
        for (PlanetModel planet : planets) {
            if (edits(wanted, planet.id()) < edits(wanted, nearest.id())) {
                nearest = planet;
            }
        }
        String known = planets.stream().map(PlanetModel::id).collect(Collectors.joining(", "));
        throw new ProblemException(SkyProblem.NO_SUCH_PLANET, word.strip(), nearest.id(), known);
    }

    /** Least number of letters to put in, take out or change (Levenshtein). */
    private static int edits(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
