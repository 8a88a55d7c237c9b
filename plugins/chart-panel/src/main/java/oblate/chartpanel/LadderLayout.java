/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.ArrayList;
import java.util.List;

/**
 * Where strips are drawn along the axis of time: each as near to its own date as its neighbours allow, in order, none over another. Stateless.
 *
 * @param places in order of time
 * @param leftOut how many did not find room
 */
record LadderLayout(List<Place> places, int leftOut) {
    LadderLayout {
        places = List.copyOf(places);
    }

    /**
     * A strip's place.
     *
     * @param strip its index
     * @param datePx where its date is (px)
     * @param middlePx where its middle is drawn (px)
     */
    record Place(int strip, double datePx, double middlePx) {}

    /**
     * Spreads strips.
     *
     * @param datePx where their dates are (px), rising
     * @param heightPx room of each with its margin (px)
     * @param topPx upper end of the axis
     * @param bottomPx lower end
     */
    static LadderLayout of(List<Double> datePx, double heightPx, double topPx, double bottomPx) {
        List<Integer> kept = new ArrayList<>();
        for (int i = 0; i < datePx.size(); i++) {
            kept.add(i);
        }
        int most = Math.max(1, (int) Math.floor((bottomPx - topPx) / heightPx));
        while (kept.size() > most) {
            kept.remove(crowded(kept, datePx));
        }
        double[] middle = spread(kept.stream().mapToDouble(datePx::get).toArray(), heightPx);
        List<Place> places = new ArrayList<>();
        double least = topPx + heightPx / 2;
        double highest = bottomPx - heightPx / 2;
        for (int k = 0; k < kept.size(); k++) {
            double lowEnd = least + k * heightPx;
            double highEnd = highest - (kept.size() - 1 - k) * heightPx;
            double at = Math.max(lowEnd, Math.min(Math.max(lowEnd, highEnd), middle[k]));
            places.add(new Place(kept.get(k), datePx.get(kept.get(k)), at));
        }
        return new LadderLayout(places, datePx.size() - kept.size());
    }

    /** Of the two nearest neighbours the later, but never the first or the last of all while others are there. */
    private static int crowded(List<Integer> kept, List<Double> datePx) {
        int at = kept.size() - 1;
        double least = Double.MAX_VALUE;
        for (int k = 1; k < kept.size(); k++) {
            double apart = datePx.get(kept.get(k)) - datePx.get(kept.get(k - 1));
            if (apart < least) {
                least = apart;
                at = k;
            }
        }
        return at == kept.size() - 1 && kept.size() > 2 ? at - 1 : at;
    }

    /**
     * Places at least {@code apart} apart, in order, with the least sum of squared shifts: less the steps, a rising sequence, found by pooling neighbours that
     * would run against each other (isotonic regression; Barlow et al. 1972).
     */
    static double[] spread(double[] wanted, double apart) {
        int n = wanted.length;
        double[] mean = new double[n];
        int[] size = new int[n];
        int blocks = 0;
        for (int i = 0; i < n; i++) {
            mean[blocks] = wanted[i] - i * apart;
            size[blocks] = 1;
            while (blocks > 0 && mean[blocks - 1] > mean[blocks]) {
                int both = size[blocks - 1] + size[blocks];
                mean[blocks - 1] = (mean[blocks - 1] * size[blocks - 1] + mean[blocks] * size[blocks]) / both;
                size[blocks - 1] = both;
                blocks--;
            }
            blocks++;
        }
        double[] places = new double[n];
        int i = 0;
        for (int b = 0; b < blocks; b++) {
            for (int k = 0; k < size[b]; k++, i++) {
                places[i] = mean[b] + i * apart;
            }
        }
        return places;
    }
}
