/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Arrays;
import java.util.List;

/**
 * The numbers of marks to be linked, in order of time: days from the first, longitudes (deg), standard errors (deg), latitudes (deg, not a number where unknown), kinds.
 * The errors and the scatter of latitudes are learnt while linking.
 */
final class LinkData {
    private static final double USUAL_LAT_SCATTER_DEG = 0.4;
    final double[] day;
    final double[] lon;
    final double[] sigma;
    final double[] lat;
    final double[] size;
    final String[] kind;
    final String[] feature;
    final int[] original;
    double sigmaFactor = 1;
    double latScatter = USUAL_LAT_SCATTER_DEG;
    double sizeScatter = Double.NaN;

    LinkData(List<LinkMark> marks) {
        int n = marks.size();
        Integer[] order = new Integer[n];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> marks.get(a)
                .point()
                .time()
                .compareTo(marks.get(b).point().time()));
        day = new double[n];
        lon = new double[n];
        sigma = new double[n];
        lat = new double[n];
        size = new double[n];
        kind = new String[n];
        feature = new String[n];
        original = new int[n];
        for (int i = 0; i < n; i++) {
            LinkMark mark = marks.get(order[i]);
            LongitudePoint p = mark.point();
            day[i] = Drift.daysBetween(marks.get(order[0]).point().time(), p.time());
            lon[i] = Math.IEEEremainder(p.lonDeg(), 360);
            sigma[i] = Math.max(1e-3, Math.min(90, p.sigmaDeg()));
            lat[i] = p.latGraphicDeg().orElse(Double.NaN);
            size[i] = mark.sizeDeg().orElse(Double.NaN);
            kind[i] = mark.kind();
            feature[i] = mark.feature();
            original[i] = order[i];
        }
    }

    int count() {
        return day.length;
    }

    double sigma(int i) {
        return sigma[i] * sigmaFactor;
    }

    boolean kindsAgree(int i, String other) {
        return other.isEmpty() || kind[i].isEmpty() || kind[i].equals(other);
    }

    /** Median of some values; they are sorted in place. */
    static double median(double[] values) {
        Arrays.sort(values);
        return values.length == 0 ? Double.NaN : values[values.length / 2];
    }
}
