/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.List;

/** The numbers of a series, in the order of its points: days from the middle of the arc, longitudes (deg, −180…180), standard errors (deg). */
record Arc(double zeroEpochS, double[] days, double[] lonDeg, double[] sigmaDeg) {
    // A millionth of a degree is far below any mark and keeps squares of tiny errors from vanishing.
    private static final double LEAST_SIGMA_DEG = 1e-6;
    private static final double LARGEST_SIGMA_DEG = 360;

    static Arc of(List<LongitudePoint> points) {
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        for (LongitudePoint point : points) {
            first = Math.min(first, point.time().getEpochSecond());
            last = Math.max(last, point.time().getEpochSecond());
        }
        double zero = Math.floor((first + last) / 2);
        int n = points.size();
        double[] days = new double[n];
        double[] lon = new double[n];
        double[] sigma = new double[n];
        for (int i = 0; i < n; i++) {
            LongitudePoint point = points.get(i);
            days[i] = (point.time().getEpochSecond() - zero + point.time().getNano() * 1e-9) / 86_400;
            lon[i] = Math.IEEEremainder(point.lonDeg(), 360);
            sigma[i] = Math.min(LARGEST_SIGMA_DEG, Math.max(LEAST_SIGMA_DEG, point.sigmaDeg()));
        }
        return new Arc(zero, days, lon, sigma);
    }

    int size() {
        return days.length;
    }

    double spanDays() {
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        for (double day : days) {
            first = Math.min(first, day);
            last = Math.max(last, day);
        }
        return last - first;
    }

    /** Every so manieth point, so that at most {@code most} are left. */
    Arc thinned(int most) {
        int step = (size() + most - 1) / most;
        if (step <= 1) {
            return this;
        }
        int n = (size() + step - 1) / step;
        double[][] kept = new double[3][n];
        for (int i = 0; i < n; i++) {
            kept[0][i] = days[i * step];
            kept[1][i] = lonDeg[i * step];
            kept[2][i] = sigmaDeg[i * step];
        }
        return new Arc(zeroEpochS, kept[0], kept[1], kept[2]);
    }

    /** Without one point. */
    Arc without(int index) {
        return new Arc(zeroEpochS, dropped(days, index), dropped(lonDeg, index), dropped(sigmaDeg, index));
    }

    private static double[] dropped(double[] values, int index) {
        double[] left = new double[values.length - 1];
        System.arraycopy(values, 0, left, 0, index);
        System.arraycopy(values, index + 1, left, index, left.length - index);
        return left;
    }

    /** The instant of a day of this arc, to the second, or to the millisecond in an arc shorter than a day. */
    Instant instant(double day) {
        Instant zero = Instant.ofEpochSecond((long) zeroEpochS);
        return spanDays() >= 1
                ? zero.plusSeconds(Math.round(day * 86_400))
                : zero.plusMillis(Math.round(day * 86_400_000));
    }

    /** Day of this arc at an instant. */
    double day(Instant instant) {
        return (instant.getEpochSecond() - zeroEpochS + instant.getNano() * 1e-9) / 86_400;
    }
}
