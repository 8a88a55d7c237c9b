/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import oblate.drift.Drift;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * A frame of longitude that moves evenly through a rotation system, and the band of latitude looked at.
 *
 * @param planet the planet
 * @param system system its longitudes are told in
 * @param rateDegPerDay how fast its zero moves through the system (deg per day of UTC), positive when its longitude grows
 * @param zeroLonDeg longitude of its zero at the epoch (deg, 0…360, planetographic)
 * @param epochUtc the epoch
 * @param widthDeg how much longitude is shown, half to each side of the zero (deg, 5…360)
 * @param southDeg southern edge, planetographic latitude (deg)
 * @param northDeg northern edge (deg), at least 1 above it
 * @param rateOf what the rate is, in words, e.g. "drift of white oval"
 */
public record LadderFrame(
        PlanetModel planet,
        RotationSystem system,
        double rateDegPerDay,
        double zeroLonDeg,
        Instant epochUtc,
        double widthDeg,
        double southDeg,
        double northDeg,
        String rateOf) {
    /** Width where nobody says otherwise (deg). */
    public static final double USUAL_WIDTH_DEG = 60;

    /** Height of the band, half to each side of a feature, where nobody says otherwise (deg). */
    public static final double USUAL_HALF_HEIGHT_DEG = 6;

    private static final double MS_PER_DAY = 86_400_000;
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.ENGLISH).withZone(ZoneOffset.UTC);

    /** Checks the ranges and brings the zero to 0…360. */
    public LadderFrame {
        if (!(widthDeg >= 5
                && widthDeg <= 360
                && southDeg >= -90
                && northDeg <= 90
                && northDeg - southDeg >= 1
                && Math.abs(rateDegPerDay) <= 1000
                && Double.isFinite(zeroLonDeg))) {
            throw new IllegalArgumentException(
                    widthDeg + " wide, " + southDeg + " to " + northDeg + ", " + rateDegPerDay + " a day");
        }
        zeroLonDeg = turned(zeroLonDeg);
    }

    /** The frame that moves with a fitted drift: its rate, and its longitude at its epoch. */
    public static LadderFrame movingWith(Drift drift, double widthDeg, double southDeg, double northDeg) {
        LongitudeSeries series = drift.series();
        return new LadderFrame(
                series.planet(),
                series.system(),
                drift.rateDegPerDay(),
                drift.lonDeg(),
                drift.epochUtc(),
                widthDeg,
                southDeg,
                northDeg,
                "drift of " + series.feature());
    }

    /** The frame of a stated rate in whose middle the marks of a series lie. */
    public static LadderFrame atRate(
            LongitudeSeries series, double rateDegPerDay, double widthDeg, double southDeg, double northDeg) {
        List<LongitudePoint> points = series.points();
        long first =
                points.stream().mapToLong(p -> p.time().toEpochMilli()).min().orElseThrow();
        long last =
                points.stream().mapToLong(p -> p.time().toEpochMilli()).max().orElseThrow();
        Instant epoch = Instant.ofEpochMilli(first + (last - first) / 2);
        double sine = 0;
        double cosine = 0;
        for (LongitudePoint p : points) {
            double angle = Math.toRadians(p.lonDeg() - rateDegPerDay * days(epoch, p.time()));
            sine += Math.sin(angle);
            cosine += Math.cos(angle);
        }
        return new LadderFrame(
                series.planet(),
                series.system(),
                rateDegPerDay,
                Math.toDegrees(Math.atan2(sine, cosine)),
                epoch,
                widthDeg,
                southDeg,
                northDeg,
                "as asked for");
    }

    /** Longitude of the frame's zero at an instant (deg, 0…360). */
    public double zeroLonDegAt(Instant time) {
        return turned(zeroLonDeg + rateDegPerDay * days(epochUtc, time));
    }

    /** Where a longitude of the system lies in the frame at an instant: degrees of longitude from its zero, −180…180. */
    public double offsetDeg(double lonDeg, Instant time) {
        return Math.IEEEremainder(lonDeg - zeroLonDegAt(time), 360);
    }

    /** +1 where longitude grows eastward, else −1: on a strip with north up, east is to the right. */
    public int eastSign() {
        return planet.globe().longitudePositive() == LongitudeSense.EAST ? 1 : -1;
    }

    /** The frame in words. */
    public String words() {
        return String.format(
                        Locale.ROOT,
                        "Frame moves %+.4f° a day (%+.2f° in 30 days, %s) in %s; its zero is longitude %.2f° on %s UT",
                        rateDegPerDay,
                        30 * rateDegPerDay,
                        rateOf,
                        system.label(),
                        zeroLonDeg,
                        DAY.format(epochUtc))
                .replace('-', '\u2212');
    }

    private static double days(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / MS_PER_DAY;
    }

    private static double turned(double lonDeg) {
        double lon = lonDeg % 360;
        return lon < 0 ? lon + 360 : lon;
    }
}
