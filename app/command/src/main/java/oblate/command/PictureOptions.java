/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.disc.FitHints;
import oblate.image.TimeMeaning;
import oblate.image.TimeWish;
import picocli.CommandLine.Option;

/** What a user can say about a picture that is not in an archive. */
final class PictureOptions {

    @Option(names = "--planet", paramLabel = "PLANET", description = "which planet is in the picture")
    private String planet;

    @Option(
            names = {"--time", "--at-time"},
            paramLabel = "TIME",
            description = "middle of the capture (see --time-is), ISO 8601 with Z; beats what the file says")
    private String time;

    @Option(
            names = "--time-is",
            paramLabel = "WHICH",
            description = "which moment stated times are where the file does not say: start, middle or end")
    private TimeMeaning timeIs;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "time zone of times that give none, e.g. UTC or +02:00")
    private String zone;

    @Option(
            names = "--exposure",
            paramLabel = "SECONDS",
            description = "length of the capture where the file does not say")
    private Double exposureS;

    @Option(
            names = "--name-pattern",
            paramLabel = "PATTERN",
            description = "pattern of times in file names, e.g. \"yyyy-MM-dd HHmmss\"; tried before ISO 8601")
    private String namePattern;

    @Option(
            names = "--pole-angle",
            paramLabel = "DEG",
            description =
                    "direction of the north pole from straight up, counter-clockwise as displayed, as far as known")
    private Double poleAngleDeg;

    @Option(
            names = "--pole-sigma",
            paramLabel = "DEG",
            defaultValue = "5",
            description = "how sure that is, one standard error (default: ${DEFAULT-VALUE})")
    private double poleSigmaDeg;

    @Option(
            names = "--mirrored",
            paramLabel = "yes|no",
            description = "whether the picture is a mirror image of the sky")
    private YesNo mirrored;

    /** yes or no. */
    enum YesNo {
        YES,
        NO
    }

    Optional<String> planet() {
        return Optional.ofNullable(planet);
    }

    TimeWish timeWish() {
        return new TimeWish(
                Optional.ofNullable(time),
                Optional.ofNullable(zone).map(PictureOptions::zone),
                Optional.ofNullable(timeIs),
                exposureS == null ? OptionalDouble.empty() : OptionalDouble.of(exposureS),
                Optional.ofNullable(namePattern));
    }

    static ZoneId zone(String text) {
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            throw new UsageException("zone \"" + text
                    + "\" is not known; write UTC, an offset like +02:00, or a name like Europe/Lisbon");
        }
    }

    FitHints hints() {
        if (poleSigmaDeg <= 0) {
            throw new UsageException("--pole-sigma must be above 0");
        }
        return new FitHints(
                Optional.ofNullable(poleAngleDeg).map(a -> new FitHints.Angle(a, poleSigmaDeg)),
                Optional.ofNullable(mirrored).map(m -> m == YesNo.YES),
                Optional.empty());
    }
}
