/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Arrays;
import java.util.List;

/** How far marks really scatter, learnt from the tracks found so far. Stateless. */
final class LearntScatter {
    private static final int FEWEST_MARKS = 6;
    private static final int FEWEST = 20;
    /** The median of the absolute value of a normal variable, in standard deviations. */
    private static final double MEDIAN = 0.6745;

    private LearntScatter() {}

    /** Writes what the tracks tell about errors of longitude and the scatters of latitude and size into the data. */
    static void into(LinkData data, List<LinkTrack> tracks) {
        double[] lonZ = new double[data.count()];
        double[] latOff = new double[data.count()];
        double[] sizeOff = new double[data.count()];
        int n = 0;
        int m = 0;
        int s = 0;
        for (LinkTrack track : tracks) {
            if (track.marks.length >= FEWEST_MARKS && track.isFitted()) {
                double spare = Math.sqrt(track.marks.length / (track.marks.length - 2.0));
                for (int mark : track.marks) {
                    lonZ[n++] = Math.abs(track.offset(mark)) / data.sigma[mark] * spare;
                    double off = Math.abs(data.lat[mark] - track.lat);
                    if (!Double.isNaN(off)) {
                        latOff[m++] = off;
                    }
                    double size = Math.abs(data.size[mark] - track.size);
                    if (!Double.isNaN(size)) {
                        sizeOff[s++] = size;
                    }
                }
            }
        }
        if (n >= FEWEST) {
            double factor = LinkData.median(Arrays.copyOf(lonZ, n)) / MEDIAN;
            data.sigmaFactor = Math.max(1, Math.min(3, factor));
        }
        if (m >= FEWEST) {
            double scatter = LinkData.median(Arrays.copyOf(latOff, m)) / MEDIAN;
            data.latScatter = Math.max(0.1, Math.min(2, scatter * 1.05));
        }
        if (s >= FEWEST) {
            data.sizeScatter = Math.max(0.1, LinkData.median(Arrays.copyOf(sizeOff, s)) / MEDIAN);
        }
    }
}
