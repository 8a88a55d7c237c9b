/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * Joins marks without names into tracks. Stateless.
 *
 * <p>Order of the work: bands of latitude from the marks themselves; in each, votes over longitude and rate find pieces, which grow at their ends; the kind of motion is chosen;
 * every mark goes to the likeliest track; pieces that meet are joined; what is left is searched again, with a lower bar at the end, and the tracks so found are doubtful.
 */
public final class TrackLinker {
    private static final int MOST_MARKS = 300_000;
    private static final double FIRM = 0.02;
    private static final double FAINT = 0.2;
    private static final int FEWEST = 5;
    private static final int FEWEST_FAINT = 4;

    private final Optional<RateWindow> window;

    /** With the windows of rates customary at each latitude of the planet. */
    public TrackLinker() {
        window = Optional.empty();
    }

    /** With one window of rates (deg per day, in the system of the marks) for all. */
    public TrackLinker(RateWindow window) {
        this.window = Optional.of(window);
    }

    /**
     * Links marks.
     *
     * @param marks of one planet, in one system, in any order; those with a feature's name stay with it
     * @throws ProblemException with {@link DriftProblem#TOO_MANY_TO_LINK} for more than 300 000 marks
     */
    public Linked link(List<LinkMark> marks, PlanetModel planet, RotationSystem system) {
        if (marks.isEmpty()) {
            return new Linked(List.of(), List.of());
        }
        if (marks.size() > MOST_MARKS) {
            throw new ProblemException(DriftProblem.TOO_MANY_TO_LINK, marks.size(), MOST_MARKS);
        }
        return new Work(new LinkData(marks), planet, system).run();
    }

    /** The work on one set of marks. */
    private final class Work {
        private final LinkData data;
        private final PlanetModel planet;
        private final RotationSystem system;
        private List<LinkTrack> tracks = new ArrayList<>();
        private final int[] owner;

        Work(LinkData data, PlanetModel planet, RotationSystem system) {
            this.data = data;
            this.planet = planet;
            this.system = system;
            owner = new int[data.count()];
        }

        Linked run() {
            named();
            own();
            search(FIRM, FEWEST, false);
            settle(FEWEST);
            LearntScatter.into(data, tracks);
            settle(FEWEST);
            search(FIRM, FEWEST, false);
            settle(FEWEST);
            join();
            search(FIRM, FEWEST, true);
            settle(FEWEST);
            join();
            LearntScatter.into(data, tracks);
            settle(FEWEST);
            faint();
            return new LinkVerdict(data, tracks).linked();
        }

        /** Features that have a name start as tracks. */
        private void named() {
            Map<String, List<Integer>> byName = new TreeMap<>();
            for (int i = 0; i < data.count(); i++) {
                if (!data.feature[i].isEmpty()) {
                    byName.computeIfAbsent(data.feature[i], name -> new ArrayList<>())
                            .add(i);
                }
            }
            byName.forEach((name, some) -> {
                int[] own = some.stream().mapToInt(i -> i).toArray();
                LinkTrack track = new LinkTrack(data, own, startOf(own));
                track.name = name;
                tracks.add(track);
                track.fit();
            });
        }

        private Line startOf(int[] own) {
            double[] x = Arrays.stream(own).mapToDouble(i -> data.day[i]).toArray();
            double[] y = Arrays.stream(own).mapToDouble(i -> data.lon[i]).toArray();
            double[] s = Arrays.stream(own).mapToDouble(data::sigma).toArray();
            Arc arc = new Arc(0, x, y, s);
            if (own.length < 2 || arc.spanDays() < 1e-6) {
                return new Line(x[0], y[0], 0, 1, 1);
            }
            RateWindow searched = window.orElseGet(() -> RateWindow.of(planet, system));
            return RateScan.candidates(arc, searched).get(0).line();
        }

        private void own() {
            Arrays.fill(owner, -1);
            for (int t = 0; t < tracks.size(); t++) {
                for (int mark : tracks.get(t).marks) {
                    owner[mark] = t;
                }
            }
        }

        private void search(double threshold, int fewest, boolean anyRate) {
            own();
            PieceSearch pieces = new PieceSearch(data, threshold, fewest, owner);
            for (int[] band : bands()) {
                double lat = LinkData.median(Arrays.stream(band)
                        .mapToDouble(i -> data.lat[i])
                        .filter(v -> !Double.isNaN(v))
                        .toArray());
                RateWindow searched = window.orElseGet(() -> anyRate || Double.isNaN(lat)
                        ? RateWindow.of(planet, system)
                        : LatitudeRates.window(planet, system, lat));
                pieces.search(band, searched, tracks);
            }
        }

        /** Free marks by band of latitude and, where kinds are told, by kind. */
        private List<int[]> bands() {
            double[] lats = new double[data.count()];
            for (int i = 0; i < lats.length; i++) {
                lats[i] = owner[i] < 0 ? data.lat[i] : Double.NaN;
            }
            double half = LatitudeBands.halfWidthDeg(data.latScatter);
            List<int[]> bands = new ArrayList<>();
            for (double middle : LatitudeBands.middles(lats, data.latScatter)) {
                bands.addAll(byKind(i -> Math.abs(data.lat[i] - middle) <= half));
            }
            bands.addAll(byKind(i -> Double.isNaN(data.lat[i])));
            return bands;
        }

        private List<int[]> byKind(java.util.function.IntPredicate inside) {
            int[] band = java.util.stream.IntStream.range(0, data.count())
                    .filter(i -> owner[i] < 0 && inside.test(i))
                    .toArray();
            List<String> kinds = Arrays.stream(band)
                    .mapToObj(i -> data.kind[i])
                    .filter(k -> !k.isEmpty())
                    .distinct()
                    .sorted()
                    .toList();
            if (band.length == 0) {
                return List.of();
            }
            if (kinds.size() < 2) {
                return List.of(band);
            }
            return kinds.stream()
                    .map(kind -> Arrays.stream(band)
                            .filter(i -> data.kindsAgree(i, kind))
                            .toArray())
                    .toList();
        }

        /** Fits, gives every mark to the likeliest track, and again until little moves. */
        private void settle(int fewest) {
            for (int round = 0; round < 2; round++) {
                tracks.forEach(LinkTrack::fit);
                tracks = new ArrayList<>(new TrackAssignment(data, tracks).applied(tracks, fewest));
            }
            tracks.forEach(LinkTrack::fit);
        }

        private void join() {
            int before = tracks.size();
            tracks = new TrackJoiner(data).joined(tracks);
            if (tracks.size() < before) {
                settle(FEWEST);
            }
        }

        private void faint() {
            List<LinkTrack> firm = new ArrayList<>(tracks);
            search(FAINT, FEWEST_FAINT, false);
            for (LinkTrack track : tracks) {
                if (!firm.contains(track)) {
                    track.doubtful = true;
                    track.reason = "few marks: chance may have made this track";
                }
            }
            settle(FEWEST_FAINT);
            join();
        }
    }
}
