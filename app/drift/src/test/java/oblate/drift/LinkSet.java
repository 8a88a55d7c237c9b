/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * Marks whose features are known, and how well they are linked.
 *
 * @param marks the marks
 * @param truth feature of each mark; empty for a false one
 */
record LinkSet(List<LinkMark> marks, List<String> truth) {

    /**
     * How well a set was linked.
     *
     * @param share of good marks that lie in the track of their own feature
     * @param purity share of the linked marks that belong to their track's feature
     * @param features true ones with at least five marks
     * @param tracks found
     */
    record Score(double share, double purity, int features, int tracks, double doubtfulShare) {
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "share %.3f purity %.4f tracks %d of %d doubtful %.3f",
                    share,
                    purity,
                    tracks,
                    features,
                    doubtfulShare);
        }
    }

    Score score(Linked linked) {
        Map<String, Map<String, Integer>> byTrack = new HashMap<>();
        Map<String, Integer> members = new HashMap<>();
        int good = 0;
        int in = 0;
        int doubtful = 0;
        for (int i = 0; i < truth.size(); i++) {
            String track = linked.links().get(i).track();
            good += truth.get(i).isEmpty() ? 0 : 1;
            members.merge(truth.get(i), 1, Integer::sum);
            if (!track.isEmpty()) {
                in++;
                doubtful += linked.links().get(i).doubtful() ? 1 : 0;
                byTrack.computeIfAbsent(track, t -> new HashMap<>()).merge(truth.get(i), 1, Integer::sum);
            }
        }
        Map<String, Integer> bestOf = new HashMap<>();
        int pure = 0;
        for (Map<String, Integer> counts : byTrack.values()) {
            Map.Entry<String, Integer> most = counts.entrySet().stream()
                    .filter(e -> !e.getKey().isEmpty())
                    .max(Map.Entry.comparingByValue())
                    .orElse(null);
            if (most != null) {
                pure += most.getValue();
                bestOf.merge(most.getKey(), most.getValue(), Math::max);
            }
        }
        int own = bestOf.values().stream().mapToInt(i -> i).sum();
        int features = (int) members.entrySet().stream()
                .filter(e -> !e.getKey().isEmpty() && e.getValue() >= 5)
                .count();
        return new Score(
                (double) own / good,
                (double) pure / Math.max(1, in),
                features,
                byTrack.size(),
                (double) doubtful / Math.max(1, in));
    }

    /** With only a share of the marks left. */
    LinkSet thinned(double share, SplittableRandom random) {
        List<LinkMark> kept = new ArrayList<>();
        List<String> keptTruth = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            if (random.nextDouble() < share) {
                kept.add(marks.get(i));
                keptTruth.add(truth.get(i));
            }
        }
        return new LinkSet(kept, keptTruth);
    }

    /** With false marks at the latitudes of good ones until they are so large a share of all, and with stated errors divided by a factor. */
    LinkSet spoilt(double falseShare, double understated, SplittableRandom random) {
        List<LinkMark> more = new ArrayList<>();
        List<String> moreTruth = new ArrayList<>(truth);
        marks.forEach(m -> more.add(with(m.point(), m.point().time(), m.point().lonDeg(), understated)));
        int wrong = (int) truth.stream().filter(String::isEmpty).count();
        while (wrong < falseShare * more.size()) {
            LongitudePoint from = marks.get(random.nextInt(marks.size())).point();
            Instant when = marks.get(random.nextInt(marks.size())).point().time();
            more.add(with(from, when, random.nextDouble(0, 360), understated));
            moreTruth.add("");
            wrong++;
        }
        return new LinkSet(more, moreTruth);
    }

    private static LinkMark with(LongitudePoint p, Instant time, double lon, double understated) {
        return LinkMark.of(
                new LongitudePoint(time, lon, p.sigmaDeg() / understated, p.latGraphicDeg(), p.sigmaLatDeg()));
    }

    /** What to invent: features, bands of latitude, days, marks per feature over the whole time, days a feature lives at least, share of false marks. */
    record Recipe(int features, int bands, double days, double marksEach, double leastLife, double falseShare) {}

    /** Invented features of mixed motions, evenly strewn over bands of latitude, some living only a part of the time. */
    static LinkSet invented(Recipe recipe, SplittableRandom random) {
        List<LinkMark> marks = new ArrayList<>();
        List<String> truth = new ArrayList<>();
        for (int f = 0; f < recipe.features(); f++) {
            int band = f % recipe.bands();
            double lat = -60 + 120.0 * (band + 0.5) / recipe.bands();
            double jet = Math.abs(lat) < 9.5 ? -7.5 : lat > 21.5 && lat < 26 ? -2.5 : random(band);
            double perBand = Math.max(1, recipe.features() / (double) recipe.bands());
            double lon = 360 * (f / recipe.bands() + 0.6 * random.nextDouble()) / perBand + 17 * band;
            double rate = jet + 0.08 * Sets.gauss(random);
            double half = recipe.days() / 2;
            CurveKind kind = CurveKind.values()[random.nextInt(10) < 6 ? 0 : random.nextInt(1, 4)];
            double[] theta = new double[kind.parameters()];
            theta[0] = lon;
            theta[1] = rate * half;
            switch (kind) {
                default -> {}
                case ACCELERATION -> theta[2] = random.nextDouble(-3, 3);
                case CHANGE -> {
                    theta[2] = random.nextDouble(-0.15, 0.15) * half;
                    theta[3] = random.nextDouble(-0.3, 0.3);
                }
                case OSCILLATION -> {
                    theta[2] = random.nextDouble(0.5, 1.5);
                    theta[4] = random.nextDouble(0.6, 1);
                }
            }
            double life = random.nextDouble(Math.min(recipe.leastLife(), recipe.days() - 1), recipe.days());
            double birth = random.nextDouble(0, recipe.days() - life);
            double ownLat = lat + 0.2 * Sets.gauss(random);
            int n = (int) Math.round(recipe.marksEach() * life / recipe.days());
            for (int i = 0; i < n; i++) {
                double day = random.nextDouble(birth, birth + life);
                double sigma = random.nextDouble(0.5, 1);
                boolean bad = random.nextDouble() < recipe.falseShare();
                double value = kind.value(day / half - 1, theta) + sigma * Sets.gauss(random);
                value += bad ? random.nextDouble(6, 25) * (random.nextBoolean() ? 1 : -1) : 0;
                marks.add(LinkMark.of(new LongitudePoint(
                        Sets.day(day),
                        ((value % 360) + 360) % 360,
                        sigma,
                        OptionalDouble.of(ownLat + 0.35 * Sets.gauss(random)),
                        OptionalDouble.empty())));
                truth.add(bad ? "" : "F" + f);
            }
        }
        return new LinkSet(marks, truth);
    }

    private static double random(int band) {
        return new SplittableRandom(band).nextDouble(-0.9, 0.5);
    }

    /** The practice set of a number in a folder: its unlabelled marks and the key to them. */
    static LinkSet practice(Path folder, String number) throws IOException {
        List<LinkMark> marks = new ArrayList<>();
        List<String> truth = new ArrayList<>();
        for (String line : Files.readAllLines(folder.resolve("marks_" + number + "_unlabelled.csv"))) {
            if (!line.startsWith("time_utc")) {
                String[] cells = line.split(",");
                marks.add(LinkMark.of(new LongitudePoint(
                        Instant.parse(cells[0]),
                        Double.parseDouble(cells[1]),
                        Double.parseDouble(cells[3]),
                        OptionalDouble.of(Double.parseDouble(cells[2])),
                        OptionalDouble.empty())));
            }
        }
        for (String line : Files.readAllLines(folder.resolve("marks_" + number + "_key.csv"))) {
            if (!line.startsWith("row")) {
                String[] cells = line.split(",");
                truth.add(cells[2].equals("1") ? "" : cells[1]);
            }
        }
        return new LinkSet(marks, truth);
    }

    /** Feature names of the set. */
    Set<String> features() {
        Set<String> names = new HashSet<>(truth);
        names.remove("");
        return names;
    }
}
