/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.sky.MoonPlace;
import oblate.sky.Sky;

/**
 * Matches small lights beside a disc to the sky's moons: at the stated time and others, as the disc was placed, turned upside down and mirrored. The
 * likelihood counts how well each moon that should show is hit, against the density of false lights. Not safe for many threads.
 */
final class MoonMatcher {
    private static final double REACH_S = 26 * 3600.0;
    private static final double STEP_S = 30;
    /** How often stated times are wrong by more than a slip of seconds: one in thirty. */
    private static final double WRONG_SHARE = 1 / 30.0;

    private static final double USUAL_SIGMA_S = 40;

    /** How likely a moon that should show is found; others are faint. */
    private static final Map<String, Double> SHOWS = Map.of(
            "io",
            0.9,
            "europa",
            0.9,
            "ganymede",
            0.9,
            "callisto",
            0.9,
            "titan",
            0.9,
            "rhea",
            0.6,
            "dione",
            0.5,
            "tethys",
            0.5,
            "iapetus",
            0.4);

    private static final double FAINT = 0.15;

    private final DiscFrame frame;
    private final MoonsBeside beside;
    private final List<PointLight> points;
    private final double density;

    MoonMatcher(Sky sky, Plane plane, DiscFrame frame, PlacementCovariance errors) {
        this.frame = frame;
        beside = new MoonsBeside(sky, plane, frame, errors);
        points = beside.lights();
        density = Math.max(1, points.size()) / ((double) plane.width() * plane.height());
    }

    /** What the moons say; empty when no light was found beside the disc. */
    Optional<MoonFinding> look() {
        if (points.isEmpty()) {
            return Optional.empty();
        }
        List<PictureTurn> ways = new ArrayList<>();
        for (int w = 0; w < 4; w++) {
            ways.add(new PictureTurn((w & 1) == 1, (w & 2) == 2));
        }
        for (double t = -REACH_S; t <= REACH_S; t += STEP_S) {
            weigh(ways, t);
        }
        PictureTurn best =
                ways.stream().max(Comparator.comparingDouble(w -> w.evidence)).orElseThrow();
        double all = 0;
        double turned = 0;
        double mirrored = 0;
        for (PictureTurn way : ways) {
            double share = Math.exp(way.evidence - best.evidence);
            all += share;
            turned += way.turned ? share : 0;
            mirrored += way.mirrored ? share : 0;
        }
        Placement placed = placement(best);
        double mirrorShare = frame.placement().mirrored() ? 1 - mirrored / all : mirrored / all;
        List<MoonsBeside.Hit> hits = beside.hits(placed, beside.moons(0));
        List<MoonFinding.Match> matches = new ArrayList<>();
        for (MoonsBeside.Hit hit : hits) {
            matches.add(new MoonFinding.Match(
                    hit.moon(),
                    hit.light(),
                    hit.light().xPx() - hit.x(),
                    hit.light().yPx() - hit.y()));
        }
        return Optional.of(new MoonFinding(
                points,
                matches,
                placed,
                turned / all,
                mirrorShare,
                Optional.of(new MoonClock(beside).judge(best, placed))));
    }

    private void weigh(List<PictureTurn> ways, double offsetS) {
        List<MoonPlace> moons = beside.moons(offsetS);
        double slip = offsetS / USUAL_SIGMA_S;
        double prior =
                (1 - WRONG_SHARE) * Math.exp(-slip * slip / 2) / (USUAL_SIGMA_S * Math.sqrt(2 * Math.PI)) * STEP_S
                        + WRONG_SHARE * STEP_S / (2 * REACH_S);
        for (PictureTurn way : ways) {
            way.add(offsetS, likelihood(placement(way), moons), Math.log(prior));
        }
    }

    private Placement placement(PictureTurn way) {
        Placement p = frame.placement();
        return new Placement(
                p.centreXPx(),
                p.centreYPx(),
                p.equatorialRadiusPx(),
                p.poleAngleDeg() + (way.turned ? 180 : 0),
                p.mirrored() ^ way.mirrored);
    }

    private static double shows(MoonPlace moon) {
        return SHOWS.getOrDefault(moon.id(), FAINT);
    }

    private double likelihood(Placement placement, List<MoonPlace> moons) {
        double sum = 0;
        boolean[] used = new boolean[points.size()];
        for (MoonsBeside.Spot spot : beside.expected(placement, moons)) {
            double p = shows(spot.moon());
            double best = Math.log(1 - p);
            int taken = -1;
            for (int i = 0; i < points.size(); i++) {
                PointLight light = points.get(i);
                double dx = light.xPx() - spot.x();
                double dy = light.yPx() - spot.y();
                if (used[i] || dx * dx + dy * dy > 900) {
                    continue;
                }
                double tolerance = beside.tolerance(spot, light);
                double squares = (dx * dx + dy * dy) / (tolerance * tolerance);
                double value =
                        Math.log(p) - squares / 2 - Math.log(2 * Math.PI * tolerance * tolerance) - Math.log(density);
                if (value > best) {
                    best = value;
                    taken = i;
                }
            }
            if (taken >= 0) {
                used[taken] = true;
            }
            sum += best;
        }
        return sum;
    }
}
