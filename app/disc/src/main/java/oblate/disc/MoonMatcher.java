/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.sky.MoonPlace;
import oblate.sky.Sky;
import oblate.sky.UtcTime;

/**
 * Matches small lights beside a disc to the sky's moons: at the stated time and others, as the disc was placed, turned upside down and mirrored. The
 * likelihood counts how well each moon that should show is hit, against the density of false lights. Not safe for many threads.
 */
final class MoonMatcher {
    private static final double REACH_S = 26 * 3600.0;
    private static final double STEP_S = 30;
    private static final double FINE_S = 5;
    private static final double NEAR_S = 90;
    /** How often stated times are wrong by more than a slip of seconds: one in thirty. */
    private static final double WRONG_SHARE = 1 / 30.0;

    private static final double USUAL_SIGMA_S = 40;
    private static final double MODEL_PX = 0.5;

    /** What finishing does to a moon's middle (px). */
    private static final double CENTROID_PX = 0.35;

    private static final double SIGNIFICANT = 4;
    private static final double AGREEING = 3;
    private static final double LEAST_OFFSET_S = 20;
    private static final double CLEARLY = 9;
    private static final double RIVAL = 4.6;
    private static final double RIVAL_APART_S = 300;
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

    private final Sky sky;
    private final DiscFrame frame;
    private final PlacementCovariance errors;
    private final Plane plane;
    private final PointFinder finder;
    private final List<PointLight> points;
    private final double density;

    MoonMatcher(Sky sky, Plane plane, DiscFrame frame, PlacementCovariance errors) {
        this.sky = sky;
        this.plane = plane;
        this.frame = frame;
        this.errors = errors;
        finder = new PointFinder(plane, frame);
        points = finder.find();
        density = Math.max(1, points.size()) / ((double) plane.width() * plane.height());
    }

    private record Spot(MoonPlace moon, double x, double y) {}

    private record Hit(String moon, PointLight light, double x, double y, double tolerance) {}

    /** One way the picture may be turned, with its likelihood over the times. */
    private static final class Way {
        final boolean turned;
        final boolean mirrored;
        double best = Double.NEGATIVE_INFINITY;
        double bestS;
        double near = Double.NEGATIVE_INFINITY;
        double evidence = Double.NEGATIVE_INFINITY;
        final List<double[]> good = new ArrayList<>();

        Way(boolean turned, boolean mirrored) {
            this.turned = turned;
            this.mirrored = mirrored;
        }

        void add(double offsetS, double likelihood, double logPrior) {
            good.add(new double[] {offsetS, likelihood});
            if (likelihood > best) {
                best = likelihood;
                bestS = offsetS;
            }
            if (Math.abs(offsetS) <= NEAR_S) {
                near = Math.max(near, likelihood);
            }
            double more = likelihood + logPrior;
            double top = Math.max(more, evidence);
            evidence = top + Math.log(Math.exp(more - top) + Math.exp(evidence - top));
        }
    }

    /** What the moons say; empty when no light was found beside the disc. */
    Optional<MoonFinding> look() {
        if (points.isEmpty()) {
            return Optional.empty();
        }
        List<Way> ways = new ArrayList<>();
        for (int w = 0; w < 4; w++) {
            ways.add(new Way((w & 1) == 1, (w & 2) == 2));
        }
        for (double t = -REACH_S; t <= REACH_S; t += STEP_S) {
            weigh(ways, t);
        }
        Way best =
                ways.stream().max(Comparator.comparingDouble(w -> w.evidence)).orElseThrow();
        double all = 0;
        double turned = 0;
        double mirrored = 0;
        for (Way way : ways) {
            double share = Math.exp(way.evidence - best.evidence);
            all += share;
            turned += way.turned ? share : 0;
            mirrored += way.mirrored ? share : 0;
        }
        Placement placed = placement(best);
        double mirrorShare = frame.placement().mirrored() ? 1 - mirrored / all : mirrored / all;
        List<Hit> hits = hits(placed, moons(0));
        List<MoonFinding.Match> matches = new ArrayList<>();
        for (Hit hit : hits) {
            matches.add(new MoonFinding.Match(
                    hit.moon(),
                    hit.light(),
                    hit.light().xPx() - hit.x(),
                    hit.light().yPx() - hit.y()));
        }
        return Optional.of(new MoonFinding(points, matches, placed, turned / all, mirrorShare, clock(best, placed)));
    }

    private void weigh(List<Way> ways, double offsetS) {
        List<MoonPlace> moons = moons(offsetS);
        double slip = offsetS / USUAL_SIGMA_S;
        double prior =
                (1 - WRONG_SHARE) * Math.exp(-slip * slip / 2) / (USUAL_SIGMA_S * Math.sqrt(2 * Math.PI)) * STEP_S
                        + WRONG_SHARE * STEP_S / (2 * REACH_S);
        for (Way way : ways) {
            way.add(offsetS, likelihood(placement(way), moons), Math.log(prior));
        }
    }

    private List<MoonPlace> moons(double offsetS) {
        UtcTime time = UtcTime.of(frame.disc().time().toInstant().plusMillis(Math.round(offsetS * 1000)));
        return sky.moons(frame.disc().planet(), time);
    }

    private Placement placement(Way way) {
        Placement p = frame.placement();
        return new Placement(
                p.centreXPx(),
                p.centreYPx(),
                p.equatorialRadiusPx(),
                p.poleAngleDeg() + (way.turned ? 180 : 0),
                p.mirrored() ^ way.mirrored);
    }

    /** Moons that should show beside the disc in the frame. */
    private List<Spot> expected(Placement placement, List<MoonPlace> moons) {
        DiscFrame as = new DiscFrame(frame.disc(), placement);
        List<Spot> spots = new ArrayList<>();
        for (MoonPlace moon : moons) {
            if (moon.inTransit() || moon.occulted() || moon.eclipsed()) {
                continue;
            }
            PixelPoint p = as.placeOffset(moon.xWestRadii(), moon.yNorthRadii());
            boolean inFrame = p.xPx() > 3 && p.yPx() > 3 && p.xPx() < plane.width() - 4 && p.yPx() < plane.height() - 4;
            if (inFrame && finder.beside(p.xPx(), p.yPx())) {
                spots.add(new Spot(moon, p.xPx(), p.yPx()));
            }
        }
        return spots;
    }

    /** How far a moon may lie from where it is expected, one standard error (px). */
    private double tolerance(Spot spot, PointLight light) {
        Placement p = frame.placement();
        double away = Math.hypot(spot.x() - p.centreXPx(), spot.y() - p.centreYPx());
        double scale = away * errors.sigmaRadiusPx() / p.equatorialRadiusPx();
        double angle = away * Math.toRadians(Math.min(5, errors.sigmaPoleAngleDeg()));
        double arcsec = frame.disc().diameterEquatorialArcsec() / (2 * p.equatorialRadiusPx());
        double own = spot.moon().offsetSigmaArcsec() / arcsec;
        return Math.sqrt(errors.sigmaCentrePx() * errors.sigmaCentrePx()
                + scale * scale
                + angle * angle
                + own * own
                + MODEL_PX * MODEL_PX
                + light.sigmaPx() * light.sigmaPx());
    }

    private static double shows(MoonPlace moon) {
        return SHOWS.getOrDefault(moon.id(), FAINT);
    }

    private double likelihood(Placement placement, List<MoonPlace> moons) {
        double sum = 0;
        boolean[] used = new boolean[points.size()];
        for (Spot spot : expected(placement, moons)) {
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
                double tolerance = tolerance(spot, light);
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

    private List<Hit> hits(Placement placement, List<MoonPlace> moons) {
        List<Hit> hits = new ArrayList<>();
        boolean[] used = new boolean[points.size()];
        for (Spot spot : expected(placement, moons)) {
            int best = -1;
            double least = 16;
            for (int i = 0; i < points.size(); i++) {
                PointLight light = points.get(i);
                double tolerance = tolerance(spot, light);
                double squares = (Math.pow(light.xPx() - spot.x(), 2) + Math.pow(light.yPx() - spot.y(), 2))
                        / (tolerance * tolerance);
                if (!used[i] && squares < least) {
                    least = squares;
                    best = i;
                }
            }
            if (best >= 0) {
                used[best] = true;
                PointLight light = points.get(best);
                hits.add(new Hit(spot.moon().name(), light, spot.x(), spot.y(), tolerance(spot, light)));
            }
        }
        return hits;
    }

    private Optional<ClockFinding> clock(Way way, Placement placement) {
        Refined at = refine(placement, way.bestS);
        Refined stated = refine(placement, 0);
        boolean elsewhere = way.best - way.near > CLEARLY && at.moons >= 2;
        Refined told = elsewhere ? at : stated;
        if (told.moons < 2 || !(told.sigmaS < 1800)) {
            return Optional.of(new ClockFinding(
                    ClockFinding.Verdict.UNDECIDED,
                    told.moons,
                    Double.NaN,
                    Double.NaN,
                    "Fewer than two moons beside the disc were found where they can tell the time."));
        }
        boolean off = elsewhere
                || Math.abs(told.offsetS) > SIGNIFICANT * told.sigmaS && Math.abs(told.offsetS) > LEAST_OFFSET_S;
        if (!off && Math.abs(told.offsetS) > AGREEING * told.sigmaS) {
            return Optional.of(new ClockFinding(
                    ClockFinding.Verdict.UNDECIDED,
                    told.moons,
                    told.offsetS,
                    told.sigmaS,
                    "The moons fit another time a little better, but not surely."));
        }
        if (!off) {
            return Optional.of(new ClockFinding(
                    ClockFinding.Verdict.AGREES,
                    told.moons,
                    told.offsetS,
                    told.sigmaS,
                    "The moons agree with the stated time."));
        }
        boolean rivals = elsewhere
                && way.good.stream()
                        .anyMatch(g -> g[1] > way.best - RIVAL && Math.abs(g[0] - way.bestS) > RIVAL_APART_S);
        return Optional.of(new ClockFinding(
                ClockFinding.Verdict.DISAGREES,
                told.moons,
                told.offsetS,
                told.sigmaS,
                ClockReason.words(told.offsetS, told.sigmaS, rivals)));
    }

    private record Refined(double offsetS, double sigmaS, int moons) {}

    /** Least squares for the time together with the disc's place, scale and angle, which may give way by their own errors. */
    private Refined refine(Placement placement, double startS) {
        double t = startS;
        double sigma = Double.POSITIVE_INFINITY;
        int moons = 0;
        for (int round = 0; round < 6; round++) {
            List<Hit> hits = hits(placement, moons(t));
            List<Spot> later = expected(placement, moons(t + FINE_S));
            List<Spot> earlier = expected(placement, moons(t - FINE_S));
            double[][] normal = new double[5][6];
            double[] priors = {
                0,
                errors.sigmaCentrePx(),
                errors.sigmaCentrePx(),
                errors.sigmaRadiusPx() / placement.equatorialRadiusPx(),
                Math.toRadians(Math.min(5, errors.sigmaPoleAngleDeg()))
            };
            for (int k = 1; k < 5; k++) {
                normal[k][k] = 1 / (priors[k] * priors[k]);
            }
            moons = 0;
            for (Hit hit : hits) {
                double[] speed = speed(hit.moon(), earlier, later);
                if (speed == null) {
                    continue;
                }
                moons++;
                double dx = hit.x() - placement.centreXPx();
                double dy = hit.y() - placement.centreYPx();
                double w = 1
                        / (MODEL_PX * MODEL_PX
                                + hit.light().sigmaPx() * hit.light().sigmaPx());
                add(normal, new double[] {speed[0], 1, 0, dx, dy}, hit.light().xPx() - hit.x(), w);
                add(normal, new double[] {speed[1], 0, 1, dy, -dx}, hit.light().yPx() - hit.y(), w);
            }
            if (moons == 0 || !(normal[0][0] > 0)) {
                return new Refined(t, Double.POSITIVE_INFINITY, moons);
            }
            double[] step = Gauss.solve(normal);
            sigma = Math.sqrt(step[5]);
            double change = Math.max(-1800, Math.min(1800, step[0]));
            t += change;
            if (Math.abs(change) < 0.5) {
                break;
            }
        }
        return new Refined(t, sigma, moons);
    }

    private static double[] speed(String moon, List<Spot> earlier, List<Spot> later) {
        Optional<Spot> a =
                earlier.stream().filter(s -> s.moon().name().equals(moon)).findFirst();
        Optional<Spot> b =
                later.stream().filter(s -> s.moon().name().equals(moon)).findFirst();
        if (a.isEmpty() || b.isEmpty()) {
            return null;
        }
        return new double[] {
            (b.get().x() - a.get().x()) / (2 * FINE_S), (b.get().y() - a.get().y()) / (2 * FINE_S)
        };
    }

    private static void add(double[][] normal, double[] row, double value, double weight) {
        for (int j = 0; j < 5; j++) {
            for (int k = 0; k < 5; k++) {
                normal[j][k] += weight * row[j] * row[k];
            }
            normal[j][5] += weight * row[j] * value;
        }
    }
}
