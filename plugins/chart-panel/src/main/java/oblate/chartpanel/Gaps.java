/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import oblate.drift.Drift;

/** Cuts the arc of a drift into pieces with marks and pieces without. Stateless. */
final class Gaps {
    private Gaps() {}

    /**
     * A piece of time.
     *
     * @param from its beginning
     * @param to its end
     * @param empty whether it is a gap without marks
     */
    record Piece(Instant from, Instant to, boolean empty) {}

    /** The pieces from the first to the last mark used; those without a mark for longer than so many days are gaps. */
    static List<Piece> of(Drift drift, double gapDays) {
        List<Instant> times = IntStream.range(0, drift.states().size())
                .filter(i -> drift.states().get(i).used())
                .mapToObj(i -> drift.series().points().get(i).time())
                .sorted()
                .toList();
        List<Piece> pieces = new ArrayList<>();
        for (int i = 1; i < times.size(); i++) {
            Instant from = times.get(i - 1);
            Instant to = times.get(i);
            boolean empty = Duration.between(from, to).toMillis() > gapDays * 86_400_000;
            Piece last = pieces.isEmpty() ? null : pieces.get(pieces.size() - 1);
            if (last != null && !last.empty() && !empty) {
                pieces.set(pieces.size() - 1, new Piece(last.from(), to, false));
            } else {
                pieces.add(new Piece(from, to, empty));
            }
        }
        return pieces.stream().filter(p -> p.from().isBefore(p.to())).toList();
    }
}
