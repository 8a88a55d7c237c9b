/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import oblate.archive.ArchivedPicture;
import oblate.workbench.look.StateGlyph.State;

/** Dated pictures as ticks along time, gathered by pixel column, so that a hundred thousand of them are painted as quickly as ten. Immutable. */
final class RibbonTicks {
    private final List<ArchivedPicture> pictures;
    private final double[] seconds;
    private final double[] heights;
    private final State[] states;

    /**
     * What stands in one column of pixels.
     *
     * @param xPx middle of the tallest tick (px)
     * @param height of the tallest (share of the full height, 0…1)
     * @param state the gravest or furthest: what needs a look shows before all else
     */
    record Column(double xPx, double height, State state) {}

    private RibbonTicks(List<ArchivedPicture> pictures, double[] seconds, double[] heights, State[] states) {
        this.pictures = pictures;
        this.seconds = seconds;
        this.heights = heights;
        this.states = states;
    }

    static RibbonTicks none() {
        return new RibbonTicks(List.of(), new double[0], new double[0], new State[0]);
    }

    static RibbonTicks of(List<ArchivedPicture> all, Function<ArchivedPicture, State> stateOf) {
        List<ArchivedPicture> dated = all.stream()
                .filter(p -> p.time().isPresent())
                .sorted(Comparator.comparing(p -> p.time().get().midUtc()))
                .toList();
        double[] seconds = new double[dated.size()];
        double[] heights = new double[dated.size()];
        State[] states = new State[dated.size()];
        for (int i = 0; i < seconds.length; i++) {
            Instant mid = dated.get(i).time().orElseThrow().midUtc();
            seconds[i] = mid.getEpochSecond() + mid.getNano() * 1e-9;
            heights[i] = SeasonRibbon.quality(dated.get(i).seeing());
            states[i] = stateOf.apply(dated.get(i));
        }
        return new RibbonTicks(dated, seconds, heights, states);
    }

    boolean isEmpty() {
        return pictures.isEmpty();
    }

    /** All of them, in order of time. */
    List<ArchivedPicture> pictures() {
        return pictures;
    }

    /** Instants of the first and the last; none when there are no pictures. */
    List<Instant> ends() {
        return isEmpty() ? List.of() : List.of(time(0), time(pictures.size() - 1));
    }

    private Instant time(int index) {
        return pictures.get(index).time().orElseThrow().midUtc();
    }

    /** Columns with something in them, from left to right. */
    List<Column> columns(RibbonScale scale) {
        List<Column> columns = new ArrayList<>();
        int i = firstFrom(scale.secondsAt(-2));
        double last = scale.secondsAt(scale.widthPx() + 2);
        while (i < seconds.length && seconds[i] <= last) {
            double x = scale.xOfSeconds(seconds[i]);
            long pixel = (long) Math.floor(x);
            double height = 0;
            State state = states[i];
            while (i < seconds.length && (long) Math.floor(scale.xOfSeconds(seconds[i])) == pixel) {
                if (heights[i] > height) {
                    height = heights[i];
                    x = scale.xOfSeconds(seconds[i]);
                }
                state = states[i].ordinal() > state.ordinal() ? states[i] : state;
                i++;
            }
            columns.add(new Column(x, height, state));
        }
        return columns;
    }

    private int firstFrom(double second) {
        int low = 0;
        int high = seconds.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (seconds[middle] < second) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The picture nearest to an instant (s since 1970); empty when there are none. */
    Optional<ArchivedPicture> nearest(double second) {
        int after = firstFrom(second);
        if (isEmpty()) {
            return Optional.empty();
        }
        if (after == seconds.length || after > 0 && second - seconds[after - 1] <= seconds[after] - second) {
            after--;
        }
        return Optional.of(pictures.get(after));
    }

    /** How many lie in a stretch of time. */
    int countIn(Selection.Span span) {
        return firstFrom(span.to().toEpochMilli() / 1000.0 + 1e-3)
                - firstFrom(span.from().toEpochMilli() / 1000.0);
    }

    /** First picture of the next night after (or before, with a negative step) that of a picture; the picture itself at the end. */
    Optional<ArchivedPicture> nightBeside(Optional<ArchivedPicture> from, int step) {
        if (isEmpty()) {
            return Optional.empty();
        }
        int index = from.map(pictures::indexOf).orElse(-1);
        if (index < 0) {
            return Optional.of(pictures.get(step > 0 ? 0 : pictures.size() - 1));
        }
        int i = index;
        while (i >= 0
                && i < pictures.size()
                && pictures.get(i).night().equals(pictures.get(index).night())) {
            i += step;
        }
        if (i < 0 || i >= pictures.size()) {
            return Optional.of(pictures.get(index));
        }
        while (i > 0 && pictures.get(i - 1).night().equals(pictures.get(i).night())) {
            i--;
        }
        return Optional.of(pictures.get(i));
    }
}
