/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What is drawn of one feature against time: dots with errors, lines, and bands of one standard error.
 *
 * @param name of the feature
 * @param tag what is written beside it
 * @param dots its marks
 * @param runs its lines
 * @param bands filled bands
 */
record Track(String name, String tag, List<Dot> dots, List<Run> runs, List<Band> bands) {
    Track {
        dots = List.copyOf(dots);
        runs = List.copyOf(runs);
        bands = List.copyOf(bands);
    }

    /**
     * A mark.
     *
     * @param index its place in the feature's series
     * @param time middle of its picture
     * @param value what is drawn (deg)
     * @param sigma its standard error (deg)
     * @param used false when the fit left it out: drawn hollow
     */
    record Dot(int index, Instant time, double value, double sigma, boolean used) {}

    /** How a line is drawn. */
    enum Style {
        /** Fitted, with marks near. */
        SOLID,
        /** Fitted, across a gap without marks. */
        DOTTED,
        /** Predicted. */
        DASHED,
        /** A mean. */
        THIN
    }

    /**
     * A line.
     *
     * @param points at least two, in order of time; longitudes not reduced to one turn
     * @param style how
     */
    record Run(List<Turns.Point> points, Style style) {
        Run {
            points = List.copyOf(points);
        }
    }

    /**
     * A band.
     *
     * @param low its lower edge, in order of time
     * @param high its upper edge, at the same instants
     */
    record Band(List<Turns.Point> low, List<Turns.Point> high) {
        Band {
            low = List.copyOf(low);
            high = List.copyOf(high);
        }
    }

    /** Whether some line crosses a gap. */
    boolean hasGap() {
        return runs.stream().anyMatch(r -> r.style() == Style.DOTTED);
    }

    /** The dot drawn last in time, if there is one. */
    java.util.Optional<Dot> last() {
        return dots.stream().max(java.util.Comparator.comparing(Dot::time));
    }

    /** Largest value of the dots that count with their errors; empty without one. */
    OptionalDouble largestUsed() {
        return dots.stream()
                .filter(Dot::used)
                .mapToDouble(d -> Math.abs(d.value()) + d.sigma())
                .max();
    }
}
