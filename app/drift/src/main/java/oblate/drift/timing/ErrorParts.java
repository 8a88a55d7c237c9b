/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;

/**
 * The error of one O−P in its parts (s), or of a distance across the way (arcsec in place of s): what is its own, and what it shares with others. A shared part has a sign, so that two values that a cause moves apart
 * are told from two it moves alike.
 *
 * @param ownS standard error that nothing else shares (s)
 * @param shared effect of one standard error of each cause (s), by its name
 */
record ErrorParts(double ownS, Map<String, Double> shared) {
    /** Names of causes begin with one of these. */
    static final String CLOCK = "clock ";

    static final String ORBIT = "orbit ";
    static final String PHASE = "phase ";
    /** Where on the Earth the observer is, when that is not known. */
    static final String SITE = "place on the Earth ";

    static final String PICTURE = "fit of picture ";
    static final String NIGHT_FIT = "fits of night ";

    ErrorParts {
        shared = Map.copyOf(shared);
    }

    /** All together (s). */
    double totalS() {
        return Math.sqrt(ownS * ownS + square(k -> true));
    }

    /** What causes of some names do together (s). */
    double partS(String... prefixes) {
        return Math.sqrt(square(k -> begins(k, prefixes)));
    }

    /** The same without causes of a name. */
    ErrorParts without(String prefix) {
        Map<String, Double> left = new LinkedHashMap<>(shared);
        left.keySet().removeIf(k -> k.startsWith(prefix));
        return new ErrorParts(ownS, left);
    }

    /** What the value does not share with other pictures (s). */
    double apartS() {
        return Math.sqrt(ownS * ownS + square(k -> k.startsWith(PICTURE)));
    }

    ErrorParts withOwn(double newOwnS) {
        return new ErrorParts(newOwnS, shared);
    }

    private double square(Predicate<String> wanted) {
        return shared.entrySet().stream()
                .filter(e -> wanted.test(e.getKey()))
                .mapToDouble(e -> e.getValue() * e.getValue())
                .sum();
    }

    private static boolean begins(String name, String... prefixes) {
        for (String prefix : prefixes) {
            if (name.startsWith(prefix)) {
                return true;
            }
        }
        return false;
    }
}
