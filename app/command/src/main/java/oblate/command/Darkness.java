/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Locale;
import oblate.sky.Twilight;
import picocli.CommandLine.Option;

/** How dark and how high it must be for a planet to be worth observing. */
final class Darkness {
    private static final List<Twilight> LIMITS =
            List.of(Twilight.DAY, Twilight.CIVIL, Twilight.NAUTICAL, Twilight.ASTRONOMICAL);

    @Option(
            names = "--after",
            paramLabel = "TWILIGHT",
            defaultValue = "civil",
            description =
                    "dark enough once this is over: day, civil, nautical, astronomical (default: ${DEFAULT-VALUE}; the Sun 6 deg down)")
    private String after;

    @Option(
            names = "--min-altitude",
            paramLabel = "DEG",
            defaultValue = "20",
            description = "high enough from this altitude on (default: ${DEFAULT-VALUE})")
    private double minAltitudeDeg;

    /** Altitude the Sun must be under (deg). */
    double sunBelowDeg() {
        return LIMITS.stream()
                .filter(t -> t.word().equals(after.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> new UsageException("--after \"" + after + "\" is no twilight; "
                        + Nearest.hint(
                                after, LIMITS.stream().map(Twilight::word).toList())))
                .lowestDeg();
    }

    /** Altitude the planet must be over (deg). */
    double minAltitudeDeg() {
        if (!(minAltitudeDeg >= 0 && minAltitudeDeg < 90)) {
            throw new UsageException("--min-altitude " + minAltitudeDeg + " is not an altitude from 0 to 90 deg");
        }
        return minAltitudeDeg;
    }

    /** In words, for a table's head. */
    String said() {
        return "Sun below " + String.format(Locale.ROOT, "%.1f", sunBelowDeg()) + " deg, planet above "
                + String.format(Locale.ROOT, "%.0f", minAltitudeDeg()) + " deg";
    }
}
