/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import oblate.archive.ArchivedPicture;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;

/**
 * How well each longitude was seen in each night of a season: the emission angle at the latitude under the Earth, where the Sun shines. Immutable.
 *
 * @param planet the planet
 * @param system system of the longitudes
 * @param nights nights with pictures, in order of date
 */
record SeasonCoverage(PlanetModel planet, RotationSystem system, List<Night> nights) {
    /** Nights further apart belong to different seasons (d). */
    static final int SEASON_GAP_DAYS = 75;

    /** Emission angle of a longitude that was not seen at all (deg). */
    static final int UNSEEN_DEG = 90;

    /**
     * One night.
     *
     * @param evening date of its evening
     * @param bestDeg least emission angle of each whole degree of longitude (deg, {@link #UNSEEN_DEG} for unseen)
     * @param bestPicture number of the picture that shows it so; 0 for unseen
     */
    record Night(LocalDate evening, int[] bestDeg, long[] bestPicture) {}

    /** A dated picture with the sky's word on it. */
    private record Seen(ArchivedPicture picture, double meridianDeg, ApparentDisc disc) {}

    /** The dates of each season, in order; the nights are cut where there is a long gap. */
    static List<List<LocalDate>> seasons(List<LocalDate> sortedNights) {
        List<List<LocalDate>> seasons = new ArrayList<>();
        LocalDate before = LocalDate.MIN;
        for (LocalDate night : sortedNights) {
            if (seasons.isEmpty() || ChronoUnit.DAYS.between(before, night) > SEASON_GAP_DAYS) {
                seasons.add(new ArrayList<>());
            }
            seasons.get(seasons.size() - 1).add(night);
            before = night;
        }
        return seasons;
    }

    /** Computes it for pictures of the planet; those of other planets, without night or outside the ephemeris are left out. Any thread. */
    static SeasonCoverage of(Sky sky, PlanetModel planet, RotationSystem system, List<ArchivedPicture> pictures) {
        Map<LocalDate, Night> nights = new TreeMap<>();
        int index = planet.globe().indexOf(system);
        for (ArchivedPicture picture : pictures) {
            Double meridian = picture.centralMeridians().get(system.id());
            if (!picture.planetId().equals(Optional.of(planet.id()))
                    || meridian == null
                    || picture.night().isEmpty()
                    || picture.time().isEmpty()) {
                continue;
            }
            var mid = picture.time().get().midUtc();
            if (mid.isBefore(sky.firstInstant()) || mid.isAfter(sky.lastInstant())) {
                continue;
            }
            Night night = nights.computeIfAbsent(picture.night().get(), SeasonCoverage::unseen);
            add(night, new Seen(picture, meridian, sky.disc(planet, mid)), index);
        }
        return new SeasonCoverage(planet, system, List.copyOf(nights.values()));
    }

    private static Night unseen(LocalDate evening) {
        int[] best = new int[360];
        Arrays.fill(best, UNSEEN_DEG);
        return new Night(evening, best, new long[360]);
    }

    private static void add(Night night, Seen seen, int systemIndex) {
        ApparentDisc disc = seen.disc();
        double lat = Math.toRadians(disc.subEarth().latCentricDeg());
        double sunLat = Math.toRadians(disc.subSolar().latCentricDeg());
        // The Sun's distance from the meridian is the same in every system.
        double sunAway = disc.subSolar().lonDeg().get(systemIndex)
                - disc.subEarth().lonDeg().get(systemIndex);
        for (int lon = 0; lon < 360; lon++) {
            double away = Math.toRadians(lon + 0.5 - seen.meridianDeg());
            double up = Math.sin(lat) * Math.sin(lat) + Math.cos(lat) * Math.cos(lat) * Math.cos(away);
            double sun = Math.sin(lat) * Math.sin(sunLat)
                    + Math.cos(lat) * Math.cos(sunLat) * Math.cos(away - Math.toRadians(sunAway));
            int emission = (int) Math.round(Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, up)))));
            if (sun > 0 && emission < night.bestDeg()[lon]) {
                night.bestDeg()[lon] = emission;
                night.bestPicture()[lon] = seen.picture().id();
            }
        }
    }

    /** Least emission angle of each whole degree over all nights (deg). */
    int[] bestOfAllDeg() {
        int[] best = new int[360];
        Arrays.fill(best, UNSEEN_DEG);
        for (Night night : nights) {
            for (int lon = 0; lon < 360; lon++) {
                best[lon] = Math.min(best[lon], night.bestDeg()[lon]);
            }
        }
        return best;
    }

    /** Stretches of longitude that were never nearer to the centre than {@link Coverage#WITHIN_DEG}, as {@code 212°–258°}; across 0° in one. */
    List<String> gaps() {
        int[] best = bestOfAllDeg();
        List<String> gaps = new ArrayList<>();
        int start = 0;
        while (start < 360 && best[start] > Coverage.WITHIN_DEG) {
            start++;
        }
        if (start == 360) {
            return List.of("0°–360°");
        }
        int from = -1;
        for (int i = 1; i <= 360; i++) {
            int lon = (start + i) % 360;
            boolean unseen = best[lon] > Coverage.WITHIN_DEG;
            if (unseen && from < 0) {
                from = lon;
            } else if (!unseen && from >= 0) {
                gaps.add(from + "°–" + lon + "°");
                from = -1;
            }
        }
        return gaps;
    }
}
