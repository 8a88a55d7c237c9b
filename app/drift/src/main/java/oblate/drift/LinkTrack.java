/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/** A track in the making: its marks, and the curve through them. Not safe for many threads. */
final class LinkTrack {
    private static final int MOST_MARKS_IN_SEARCH = 80;
    private static final double FEWEST_SLACK_DAYS = 10;
    private static final double SLACK_SPACINGS = 6;

    private final LinkData data;
    /** Marks in order of time. */
    int[] marks;

    String name = "";
    boolean doubtful;
    String reason = "";
    double first;
    double last;
    double lat = Double.NaN;
    double size = Double.NaN;
    double scatter;
    String kind = "";
    private double middle;
    private Line line;
    private Curve curve;
    private int[] fitted = new int[0];
    private double fittedFactor;

    LinkTrack(LinkData data, int[] marks, Line line) {
        this.data = data;
        this.line = line;
        take(marks);
    }

    void take(int[] some) {
        marks = some.clone();
        Arrays.sort(marks);
        first = data.day[marks[0]];
        last = data.day[marks[marks.length - 1]];
        lat = mean(data.lat);
        size = mean(data.size);
        kind = Arrays.stream(marks)
                .mapToObj(i -> data.kind[i])
                .filter(k -> !k.isEmpty())
                .collect(java.util.stream.Collectors.groupingBy(
                        k -> k, java.util.TreeMap::new, java.util.stream.Collectors.counting()))
                .entrySet()
                .stream()
                .max(java.util.Map.Entry.comparingByValue())
                .map(java.util.Map.Entry::getKey)
                .orElse("");
    }

    private double mean(double[] of) {
        double[] known = Arrays.stream(marks)
                .mapToDouble(i -> of[i])
                .filter(v -> !Double.isNaN(v))
                .toArray();
        return LinkData.median(known);
    }

    double span() {
        return last - first;
    }

    /** Usual time between two marks (days). */
    double spacing() {
        return Math.max(0.5, span() / Math.max(1, marks.length - 1));
    }

    /** How far beyond its ends a mark may still join (days). */
    double slack() {
        return Math.max(FEWEST_SLACK_DAYS, SLACK_SPACINGS * spacing());
    }

    /** Fits the curve to the marks as they are, if they have changed. */
    void fit() {
        if (Arrays.equals(fitted, marks) && fittedFactor == data.sigmaFactor && curve != null) {
            return;
        }
        double[] x = new double[marks.length];
        double[] y = new double[marks.length];
        double[] w = new double[marks.length];
        double[] sigma = new double[marks.length];
        double mid = (first + last) / 2;
        for (int k = 0; k < marks.length; k++) {
            int i = marks[k];
            double model = at(data.day[i]);
            x[k] = data.day[i] - mid;
            y[k] = model + RateScan.nearest(data.lon[i] - model);
            sigma[k] = data.sigma(i);
            w[k] = 1 / (sigma[k] * sigma[k]);
        }
        Line start = Line.fit(x, y, w).orElse(null);
        if (start == null) {
            return;
        }
        Arc arc = new Arc(0, x, wrapped(y), sigma);
        List<ModelSearch.Fitted> found = new ModelSearch(arc, OptionalDouble.empty(), MOST_MARKS_IN_SEARCH).run(start);
        curve = found.isEmpty()
                ? Curve.of(start, Instant.EPOCH, 1)
                : Curve.of(found.get(0).curve(), Instant.EPOCH, false)
                        .orElseGet(() -> Curve.of(start, Instant.EPOCH, 1));
        scatter = found.isEmpty() ? 0 : found.get(0).curve().scatterDeg();
        middle = mid;
        line = new Line(start.xMiddle() + mid, start.middle(), start.slope(), start.weight(), start.weightXx());
        fitted = marks.clone();
        fittedFactor = data.sigmaFactor;
    }

    /** Takes over the curve of another track of the same marks. */
    void adopt(LinkTrack other) {
        line = other.line;
        curve = other.curve;
        middle = other.middle;
        scatter = other.scatter;
        fitted = other.fitted;
        fittedFactor = other.fittedFactor;
    }

    private static double[] wrapped(double[] y) {
        return Arrays.stream(y).map(v -> RateScan.nearest(v)).toArray();
    }

    boolean isFitted() {
        return curve != null;
    }

    /** Longitude (deg, some turn) at a day of the data. */
    double at(double day) {
        return curve != null ? curve.lonDegAtDay(day - middle) : line.at(day);
    }

    double sigmaAt(double day) {
        return curve != null ? curve.sigmaLonDegAtDay(day - middle) : 1;
    }

    /** Mean rate (deg per day). */
    double rate() {
        return line.slope();
    }

    double offset(int mark) {
        return RateScan.nearest(data.lon[mark] - at(data.day[mark]));
    }

    /** Own scatter, not taken at its word where there are few marks. */
    double usedScatter() {
        return marks.length < 8 ? Math.min(scatter, 0.5) : Math.min(scatter, 1.5);
    }

    /** Standard error (deg) of a mark about this track. */
    double sigmaOf(int mark) {
        double curveSigma = Math.min(3, sigmaAt(data.day[mark]));
        double own = data.sigma(mark);
        double added = usedScatter();
        return Math.sqrt(own * own + added * added + curveSigma * curveSigma);
    }
}
