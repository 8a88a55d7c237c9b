/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.SplittableRandom;

/** Prints how time and memory grow with the work, in one thread. */
final class WorkScore {
    private WorkScore() {}

    /** Words: largest number of features fitted, largest number of marks linked. */
    public static void main(String[] words) {
        int mostFeatures = Integer.parseInt(words[0]);
        int mostMarks = Integer.parseInt(words[1]);
        for (int features = 100; features <= mostFeatures; features *= 10) {
            SplittableRandom random = new SplittableRandom(3);
            long start = cpu();
            int curved = 0;
            for (int f = 0; f < features; f++) {
                Drift drift = new DriftFitter()
                        .fit(Sets.simulated(
                                        random, new Sets.Recipe(200, random.nextDouble(-2, 1), 0.04, 1, 150, 60, 12))
                                .series());
                curved += drift.model().equals("rate") ? 0 : 1;
            }
            print(features + " features of 200 marks, " + curved + " curved", start, "");
        }
        for (int marks = 1000; marks <= mostMarks; marks *= 10) {
            int features = Math.max(5, marks / 200);
            LinkSet set = LinkSet.invented(
                    new LinkSet.Recipe(features, Math.max(2, Math.min(40, features / 8)), 150, 200, 150, 0.03),
                    new SplittableRandom(8));
            System.gc();
            long start = cpu();
            LinkSet.Score score = LinkScore.of(set);
            print(set.marks().size() + " marks linked", start, score.toString());
        }
    }

    /** Processor time of this thread (ns): what others do on the machine does not count. */
    private static long cpu() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void print(String what, long start, String more) {
        double seconds = (cpu() - start) / 1e9;
        Runtime run = Runtime.getRuntime();
        System.out.printf(
                Locale.ROOT,
                "%-45s %6.1f s of processor time, %4d MB in use %s%n",
                what,
                seconds,
                (run.totalMemory() - run.freeMemory()) >> 20,
                more);
    }
}
