/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Prints how well marks are linked: with a folder of practice sets named, on these, else on invented ones. */
final class LinkScore {
    private LinkScore() {}

    static LinkSet.Score of(LinkSet set) {
        return set.score(new TrackLinker().link(set.marks(), Sets.JUPITER, Sets.system(Sets.JUPITER, "2")));
    }

    /** Words: folder of practice sets; or none. */
    public static void main(String[] words) throws IOException {
        if (words.length > 0) {
            for (String number : List.of("11", "12", "13", "14")) {
                LinkSet set = LinkSet.practice(Path.of(words[0]), number);
                print(number + " whole", List.of(set));
                print(number + " half", drawn(set, 0.5, 0, 1));
                print(number + " a fifth", drawn(set, 0.2, 0, 1));
                print(number + " half, a fifth false, errors / 1.3", drawn(set, 0.5, 0.2, 1.3));
            }
        }
        SplittableRandom random = new SplittableRandom(11);
        print(
                "births and deaths",
                List.of(
                        LinkSet.invented(new LinkSet.Recipe(24, 8, 150, 60, 40, 0.03), random),
                        LinkSet.invented(new LinkSet.Recipe(30, 6, 120, 50, 30, 0.03), random),
                        LinkSet.invented(new LinkSet.Recipe(40, 10, 180, 50, 40, 0.05), random)));
    }

    private static List<LinkSet> drawn(LinkSet set, double share, double falseShare, double understated) {
        List<LinkSet> sets = new ArrayList<>();
        for (int seed = 1; seed <= 5; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            LinkSet thin = set.thinned(share, random);
            sets.add(falseShare > 0 ? thin.spoilt(falseShare, understated, random) : thin);
        }
        return sets;
    }

    private static void print(String name, List<LinkSet> sets) {
        long start = System.nanoTime();
        double share = 0;
        double purity = 0;
        StringBuilder tracks = new StringBuilder();
        for (LinkSet set : sets) {
            LinkSet.Score score = of(set);
            share += score.share() / sets.size();
            purity += score.purity() / sets.size();
            tracks.append(" ").append(score.tracks()).append("/").append(score.features());
        }
        System.out.printf(
                java.util.Locale.ROOT,
                "%-40s share %.3f purity %.4f tracks%s (%.1f s)%n",
                name,
                share,
                purity,
                tracks,
                (System.nanoTime() - start) / 1e9);
    }
}
