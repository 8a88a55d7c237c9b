/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Rectangle;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Where longitudes and nights of a season lie on the coverage map.
 *
 * @param coverage the season, of one night or more
 * @param widthPx width of the map with its margins
 * @param roomPx height of the place it is shown in: a short season fills it
 */
record CoverageScale(SeasonCoverage coverage, int widthPx, int roomPx) {
    static final int LEFT = 128;
    static final int TOP = 58;
    private static final int RIGHT = 24;
    private static final int BOTTOM = 16;
    private static final double LEAST_PX_PER_DAY = 3;
    private static final double MOST_PX_PER_DAY = 16;
    private static final double NEAR_PX = 6;

    private LocalDate first() {
        return coverage.nights().get(0).evening();
    }

    private long days() {
        var nights = coverage.nights();
        return ChronoUnit.DAYS.between(first(), nights.get(nights.size() - 1).evening()) + 1;
    }

    double pxPerDay() {
        double fitting = (roomPx - TOP - BOTTOM) / (double) days();
        return Math.max(LEAST_PX_PER_DAY, Math.min(MOST_PX_PER_DAY, fitting));
    }

    double pxPerDeg() {
        return Math.max(1, widthPx - LEFT - RIGHT) / 360.0;
    }

    double yOf(LocalDate evening) {
        return TOP + ChronoUnit.DAYS.between(first(), evening) * pxPerDay();
    }

    /** Width of all longitudes (px). */
    int mapWidth() {
        return (int) Math.round(360 * pxPerDeg());
    }

    /** Height of all nights (px). */
    int mapHeight() {
        return (int) Math.ceil(days() * pxPerDay());
    }

    /** Height with its margins (px). */
    int height() {
        return (int) Math.ceil(TOP + days() * pxPerDay() + BOTTOM);
    }

    /** Where a longitude in a night is painted. */
    Rectangle cell(SeasonCoverage.Night night, int lonDeg) {
        return new Rectangle(
                (int) (LEFT + lonDeg * pxPerDeg()),
                (int) yOf(night.evening()),
                Math.max(1, (int) Math.ceil(pxPerDeg())),
                Math.max(1, (int) pxPerDay()));
    }

    /** The place at a point of the map: nights with pictures are few and thin, so that the nearest one within a few pixels is meant. */
    Optional<CoverageMap.Place> at(int x, int y) {
        int lon = (int) Math.floor((x - LEFT) / pxPerDeg());
        if (lon < 0 || lon >= 360 || y < TOP) {
            return Optional.empty();
        }
        double day = (y - TOP) / pxPerDay();
        return coverage.nights().stream()
                .map(n -> new CoverageMap.Place(n, lon))
                .filter(p -> distance(p, day) * pxPerDay() < NEAR_PX)
                .min((a, b) -> Double.compare(distance(a, day), distance(b, day)));
    }

    private double distance(CoverageMap.Place place, double day) {
        return Math.abs(ChronoUnit.DAYS.between(first(), place.night().evening()) + 0.5 - day);
    }
}
