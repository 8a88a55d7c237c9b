/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.drift.timing.MoonState.Edge;
import oblate.drift.timing.MoonState.Side;
import oblate.sky.event.Passage;

/**
 * Contacts of one event between the last picture of one state and the first of the next. The time is the middle, its error that of an even chance in between
 * (width over the root of twelve) with the captures' lengths and the clock.
 */
final class ContactBrackets {
    private final Passage passage;
    private final double unknownKm;
    private final Phenomenon phenomenon;
    private final List<StateSaid> states;

    /** @param states all about this event */
    ContactBrackets(Foretold event, List<StateSaid> states) {
        passage = event.passage();
        unknownKm = event.unknownKm();
        phenomenon = Phenomenon.of(passage.kind());
        this.states = states.stream()
                .sorted(Comparator.comparing(s -> s.shot().midUtc()))
                .toList();
    }

    List<BracketTiming> timings() {
        List<BracketTiming> all = new ArrayList<>(side(true));
        all.addAll(side(false));
        return all;
    }

    /** The two pictures about a contact, in order of time: before it happened, after. */
    private record Pair(Optional<StateSaid> before, Optional<StateSaid> after) {
        boolean closed() {
            return before.isPresent() && after.isPresent();
        }

        boolean open() {
            return before.isEmpty() && after.isEmpty();
        }
    }

    private List<BracketTiming> side(boolean coming) {
        for (Edge edge : Edge.values()) {
            Optional<Quarrel> quarrel = contradiction(edge, coming);
            if (quarrel.isPresent()) {
                TimedPoint point = point(Edge.CENTRE, coming);
                return List.of(BracketTiming.untimed(
                        passage,
                        point,
                        Optional.of(quarrel.get().first().shot()),
                        Optional.of(quarrel.get().second().shot()),
                        ForetoldContact.of(passage, point).map(ForetoldContact::time),
                        List.of(quarrel.get().words())));
            }
        }
        Map<Edge, Pair> closed = new EnumMap<>(Edge.class);
        for (Edge edge : Edge.values()) {
            Pair pair = pair(edge, coming);
            if (pair.closed()) {
                closed.put(edge, pair);
            }
        }
        if (closed.isEmpty()) {
            return limit(coming).map(List::of).orElse(List.of());
        }
        return chosen(closed).stream()
                .flatMap(edge -> bracket(edge, coming, closed.get(edge)).stream())
                .toList();
    }

    /** One contact for each pair of pictures: the centre where a pair holds several, none where others tell it more closely. */
    private static List<Edge> chosen(Map<Edge, Pair> closed) {
        if (!closed.containsKey(Edge.CENTRE)) {
            return List.copyOf(closed.keySet());
        }
        Pair centre = closed.get(Edge.CENTRE);
        List<Edge> others = closed.keySet().stream()
                .filter(e -> e != Edge.CENTRE && !closed.get(e).equals(centre))
                .toList();
        return others.isEmpty() ? List.of(Edge.CENTRE) : others;
    }

    private boolean onSide(StateSaid said, boolean coming) {
        Instant mid = passage.mid().time().toInstant();
        return coming == said.shot().midUtc().isBefore(mid);
    }

    private Side sideOf(StateSaid said, Edge edge) {
        return said.state().side(phenomenon, edge);
    }

    /** The last picture outside and the first inside after it, coming; leaving, the other way round. */
    private Pair pair(Edge edge, boolean coming) {
        Optional<StateSaid> outside = Optional.empty();
        for (StateSaid said : states) {
            boolean later = coming || outside.isEmpty();
            if (onSide(said, coming) && sideOf(said, edge).outside() && later) {
                outside = Optional.of(said);
            }
        }
        Instant bound = outside.map(s -> s.shot().midUtc()).orElse(coming ? Instant.MIN : Instant.MAX);
        Optional<StateSaid> inside = Optional.empty();
        for (StateSaid said : states) {
            Instant time = said.shot().midUtc();
            boolean beyond = coming ? time.isAfter(bound) : time.isBefore(bound);
            boolean nearer = !coming || inside.isEmpty();
            // Without a picture from outside, one from inside speaks only for its own side of the middle.
            boolean speaks = outside.isPresent() || onSide(said, coming);
            if (beyond && speaks && sideOf(said, edge).inside() && nearer) {
                inside = Optional.of(said);
            }
        }
        return coming ? new Pair(outside, inside) : new Pair(inside, outside);
    }

    /** Two pictures that contradict each other, the earlier first. */
    private record Quarrel(StateSaid first, StateSaid second) {
        String words() {
            return "contradiction: " + words(first) + " but " + words(second);
        }

        private static String words(StateSaid said) {
            String clock = said.shot().midUtc().truncatedTo(ChronoUnit.SECONDS).toString();
            return said.state().id().replace('_', ' ') + " at " + clock.substring(11, 19) + " ("
                    + said.shot().name() + ")";
        }
    }

    /** A picture from inside that is earlier than one from outside on the way in, or later on the way out: the first and the last such. */
    private Optional<Quarrel> contradiction(Edge edge, boolean coming) {
        Optional<StateSaid> early = Optional.empty();
        Optional<StateSaid> late = Optional.empty();
        for (StateSaid said : states) {
            Side side = sideOf(said, edge);
            boolean done = coming ? side.inside() : side.outside();
            boolean notYet = coming ? side.outside() : side.inside();
            if (onSide(said, coming) && done && early.isEmpty()) {
                early = Optional.of(said);
            }
            if (onSide(said, coming) && notYet && early.isPresent()) {
                late = Optional.of(said);
            }
        }
        Optional<StateSaid> last = late;
        return early.flatMap(e -> last.map(l -> new Quarrel(e, l)));
    }

    private Optional<BracketTiming> limit(boolean coming) {
        for (Edge edge : new Edge[] {Edge.CENTRE, Edge.OUTER, Edge.INNER}) {
            Pair pair = pair(edge, coming);
            TimedPoint point = point(edge, coming);
            Optional<ForetoldContact> foretold = ForetoldContact.of(passage, point);
            if (!pair.open() && foretold.isPresent()) {
                return Optional.of(BracketTiming.untimed(
                        passage,
                        point,
                        pair.before().map(StateSaid::shot),
                        pair.after().map(StateSaid::shot),
                        Optional.of(foretold.get().time()),
                        foretold.get().doubts()));
            }
        }
        return Optional.empty();
    }

    private Optional<BracketTiming> bracket(Edge edge, boolean coming, Pair pair) {
        TimedPoint point = point(edge, coming);
        Optional<ForetoldContact> found = ForetoldContact.of(passage, point);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        ForetoldContact foretold = found.get();
        StateSaid before = pair.before().orElseThrow();
        StateSaid after = pair.after().orElseThrow();
        Instant from = before.shot().midUtc();
        Instant to = after.shot().midUtc();
        if (edge == Edge.CENTRE) {
            // The centre cannot be on the edge sooner than half a crossing after the moon was still clear of it.
            long halfMs = Math.round(foretold.crossingS() * 500);
            Side outer = sideOf(before, coming ? Edge.OUTER : Edge.INNER);
            Side inner = sideOf(after, coming ? Edge.INNER : Edge.OUTER);
            boolean late = coming ? outer == Side.OUTSIDE : outer == Side.INSIDE;
            boolean early = coming ? inner == Side.INSIDE : inner == Side.OUTSIDE;
            Instant closerFrom = late ? from.plusMillis(halfMs) : from;
            Instant closerTo = early ? to.minusMillis(halfMs) : to;
            if (closerFrom.isBefore(closerTo)) {
                from = closerFrom;
                to = closerTo;
            }
        }
        Instant middle = from.plus(Duration.between(from, to).dividedBy(2));
        double widthS = Duration.between(from, to).toMillis() / 1000.0;
        ErrorParts errors = errors(edge, before, after, foretold, widthS);
        double oMinusP = Duration.between(foretold.time(), middle).toMillis() / 1000.0;
        List<String> doubts = new ArrayList<>(foretold.doubts());
        boolean usable = doubts.isEmpty();
        if (Math.abs(oMinusP) > PlaceTimer.DOUBTFUL * errors.totalS()) {
            doubts.add(String.format(
                    java.util.Locale.ROOT,
                    "%.0f standard errors from its foretold time",
                    Math.abs(oMinusP) / errors.totalS()));
        }
        return Optional.of(new BracketTiming(
                passage,
                point,
                Optional.of(before.shot()),
                Optional.of(after.shot()),
                Optional.of(middle),
                Optional.of(foretold.time()),
                oMinusP,
                errors,
                doubts,
                usable));
    }

    /** Width of the bracket, threshold of the eye, smear and softness of the limb on its own; clocks, orbit and place shared. */
    private ErrorParts errors(Edge edge, StateSaid before, StateSaid after, ForetoldContact foretold, double widthS) {
        boolean rough = sideOf(before, edge).rough() || sideOf(after, edge).rough();
        double thresholdS = rough ? foretold.crossingS() / Math.sqrt(12) : 0;
        double smearS = Math.hypot(before.shot().smearS(), after.shot().smearS()) / 2;
        double own = Math.sqrt(
                widthS * widthS / 12 + thresholdS * thresholdS + smearS * smearS + foretold.softS() * foretold.softS());
        Map<String, Double> shared = new LinkedHashMap<>();
        shared.put(ErrorParts.CLOCK + before.shot().clock(), before.shot().sigmaS() / 2);
        shared.merge(ErrorParts.CLOCK + after.shot().clock(), after.shot().sigmaS() / 2, Double::sum);
        shared.put(ErrorParts.ORBIT + passage.moon().id(), foretold.sigmaS());
        // Moons before and behind their planet, who go opposite ways, are both seen late from the Earth's western edge:
        // one sign for all.
        shared.put(ErrorParts.SITE + before.shot().clock() + " west", unknownKm / foretold.speedKmS());
        return new ErrorParts(own, shared);
    }

    private static TimedPoint point(Edge edge, boolean coming) {
        return switch (edge) {
            case OUTER -> coming ? TimedPoint.T1 : TimedPoint.T4;
            case CENTRE -> coming ? TimedPoint.INGRESS_CENTRE : TimedPoint.EGRESS_CENTRE;
            case INNER -> coming ? TimedPoint.T2 : TimedPoint.T3;
        };
    }
}
