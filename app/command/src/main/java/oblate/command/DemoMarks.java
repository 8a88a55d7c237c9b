/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.base.ProblemException;
import oblate.disc.PixelPoint;
import oblate.sample.SampleTruth;
import oblate.sky.PlanetModel;

/**
 * Marks the features of the sample season: at their true pixels plus a pick error, as a careful hand would click them. Longitudes then come
 * from the fits, not from the truth.
 */
final class DemoMarks {
    /** Standard error of a pick in each direction (px). */
    static final double PICK_SIGMA_PX = 0.7;

    private static final double LARGEST_EMISSION_DEG = 58;

    private final Services services;
    private final Console console;
    private final Archive archive;

    DemoMarks(Services services, Console console, Archive archive) {
        this.services = services;
        this.console = console;
        this.archive = archive;
    }

    /**
     * What came of it.
     *
     * @param made marks on features made now
     * @param moons marks on moons and shadows made now
     * @param known pictures marked in an earlier run
     * @param refused sentences
     */
    record Tally(int made, int moons, int known, List<String> refused) {}

    Tally markAll(SampleTruth truth) {
        PlanetModel planet = services.planet("jupiter");
        addFeatures(truth, planet);
        Random random = new Random(20_310_324L);
        Marking marking = new Marking(services, archive, PICK_SIGMA_PX, "demo");
        ConsoleProgress progress = new ConsoleProgress(console, "Marking");
        List<Demo.Pair> pairs = Demo.pairs(archive, truth);
        int[] count = new int[3];
        List<String> refused = new ArrayList<>();
        int done = 0;
        for (Demo.Pair pair : pairs) {
            List<Marking.Wish> wishes = wishes(pair, truth, random);
            if (pair.picture().markCount() > 0) {
                count[2]++;
            } else if (pair.picture().fitted()) {
                wishes.forEach(wish -> mark(marking, wish, count, refused));
            }
            progress.report(++done, pairs.size(), pair.picture().name());
        }
        progress.finish();
        return new Tally(count[0], count[1], count[2], refused);
    }

    private static void mark(Marking marking, Marking.Wish wish, int[] count, List<String> refused) {
        try {
            boolean moon = wish.kind()
                    .filter(k -> k.equals("moon") || k.equals("shadow"))
                    .isPresent();
            marking.add(wish);
            count[moon ? 1 : 0]++;
        } catch (ProblemException e) {
            refused.add(e.getMessage());
        }
    }

    private void addFeatures(SampleTruth truth, PlanetModel planet) {
        List<String> known =
                archive.features(planet.id()).stream().map(Feature::name).toList();
        for (oblate.sample.Feature f : truth.features()) {
            if (!known.contains(f.name())) {
                archive.addFeature(new Feature(
                        0,
                        planet.id(),
                        f.name(),
                        f.kind(),
                        Optional.of(f.tone().name().toLowerCase(Locale.ROOT)),
                        Optional.of(f.systemId()),
                        Optional.of(f.look().words() + ", invented")));
            }
        }
    }

    /** What a hand would click on one picture. The pick errors are drawn whether or not it is marked, so that a second run draws the same. */
    private static List<Marking.Wish> wishes(Demo.Pair pair, SampleTruth truth, Random random) {
        List<Marking.Wish> wishes = new ArrayList<>();
        for (SampleTruth.Mark mark : truth.marksOf(pair.truth())) {
            PixelPoint pixel = new PixelPoint(
                    mark.xPx() + PICK_SIGMA_PX * random.nextGaussian(),
                    mark.yPx() + PICK_SIGMA_PX * random.nextGaussian());
            if (mark.emissionDeg().orElse(0) < LARGEST_EMISSION_DEG) {
                wishes.add(new Marking.Wish(
                        String.valueOf(pair.picture().id()),
                        pixel,
                        Optional.of(mark.feature()),
                        Optional.of(kind(mark)),
                        Optional.empty(),
                        "centre"));
            }
        }
        return wishes;
    }

    private static String kind(SampleTruth.Mark mark) {
        if (mark.place().isEmpty()) {
            return "moon";
        }
        return mark.kind().contains("shadow") ? "shadow" : mark.kind();
    }
}
