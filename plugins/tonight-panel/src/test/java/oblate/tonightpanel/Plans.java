/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.drift.plan.FollowedFeatures;
import oblate.drift.plan.Planner;
import oblate.drift.plan.SmearLimit;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** Nights planned without an archive. */
final class Plans {
    static final Sky SKY = Sky.bundled();
    static final PlanetModel JUPITER = new Jupiter();
    static final GroundSite GARDEN = new GroundSite(48.2, 16.3, 170);
    private static final Instant START = Instant.parse("2024-11-01T21:00:00Z");

    private Plans() {}

    /** A feature of System II, marked every second day for a month. */
    static LongitudeSeries series(String name, double lonDeg, double degPerDay) {
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            double lon = lonDeg + 2 * i * degPerDay + (i % 3 - 1) * 0.3;
            points.add(new LongitudePoint(
                    START.plusSeconds(2 * i * 86_400L),
                    ((lon % 360) + 360) % 360,
                    0.4,
                    OptionalDouble.of(-22),
                    OptionalDouble.of(0.4)));
        }
        return new LongitudeSeries(name, JUPITER, JUPITER.globe().system("2").orElseThrow(), points);
    }

    static NightSheet night(PlanetModel planet, GroundSite site, String date, LongitudeSeries... series) {
        Asked asked = new Asked(planet, new Place(site, ""), Optional.empty(), -6, 20, SmearLimit.ofDeg(1));
        GroundSky ground = GroundSky.over(SKY, site);
        return NightSheet.of(
                new Planner()
                        .plan(
                                asked.night(ground, LocalDate.parse(date)),
                                FollowedFeatures.of(List.of(series), new DriftFitter())),
                asked.place());
    }

    static Clock clock(String time) {
        return Clock.fixed(Instant.parse(time), ZoneOffset.UTC);
    }
}
