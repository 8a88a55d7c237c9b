/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import oblate.sky.MoonFacts;
import oblate.sky.event.Passage;

/** All that was marked and said of one event, or of a moon beside the disc in one night, as rows. */
final class EventTimings {
    private final Phenomenon phenomenon;
    private final Optional<Foretold> foretold;
    private final Optional<Passage> passage;
    private final List<PlaceTiming> places;
    private final List<BracketTiming> brackets;
    private final List<PlaceTiming> usable;

    EventTimings(Phenomenon phenomenon, Optional<Foretold> foretold, List<PlaceTiming> places, List<StateSaid> states) {
        this.phenomenon = phenomenon;
        this.foretold = foretold;
        passage = foretold.map(Foretold::passage);
        this.places = List.copyOf(places);
        brackets = foretold.filter(f -> !states.isEmpty())
                .map(f -> new ContactBrackets(f, states).timings())
                .orElse(List.of());
        usable = places.stream().filter(p -> p.hasTime() && p.usable()).toList();
    }

    boolean isEmpty() {
        return places.isEmpty() && brackets.isEmpty();
    }

    List<PlaceTiming> usablePlaces() {
        return usable;
    }

    List<BracketTiming> usableBrackets() {
        return brackets.stream().filter(b -> b.hasTime() && b.usable()).toList();
    }

    /** One row for each marked picture and for each contact. */
    List<Timing> singles() {
        List<Timing> rows = new ArrayList<>();
        places.forEach(p -> rows.add(single(p)));
        brackets.forEach(b -> rows.add(row(b)));
        return rows;
    }

    /** Contacts, what the places say of the event's moments, and all together where there is more than one of these. */
    List<Timing> rows() {
        List<Timing> rows = new ArrayList<>();
        brackets.forEach(b -> rows.add(row(b)));
        if (!places.isEmpty()) {
            rows.addAll(usable.isEmpty() ? places.stream().map(this::single).toList() : byPlaces());
        }
        List<Pool.Value> all = new ArrayList<>();
        usable.forEach(p -> all.add(p.value()));
        usableBrackets().forEach(b -> all.add(b.value()));
        boolean both = !usable.isEmpty() && !usableBrackets().isEmpty();
        if (both || usableBrackets().size() > 1) {
            rows.add(together(all));
        }
        return rows;
    }

    private static Optional<String> site(Shot shot) {
        return shot.site().map(ShotSite::name);
    }

    private MoonFacts moon() {
        return passage.map(Passage::moon)
                .orElseGet(() -> places.get(0).mark().subject().moon());
    }

    private Timing single(PlaceTiming place) {
        Shot shot = place.mark().shot();
        return new Timing(
                shot.night(),
                shot.observer(),
                site(shot),
                moon(),
                phenomenon,
                TimedPoint.PLACE,
                Timing.Method.PLACE,
                place.hasTime() ? Optional.of(shot.midUtc()) : Optional.empty(),
                place.hasTime() ? Optional.of(place.predictedUtc()) : Optional.empty(),
                place.oMinusPS(),
                Timing.Errors.of(place.errors()),
                place.hasTime()
                        ? Optional.of(new Timing.Beside(
                                place.besideArcsec(), place.besideErrors().totalS()))
                        : Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(shot.name()),
                place.usable() ? 0 : 1,
                place.doubts());
    }

    private Timing row(BracketTiming b) {
        Shot shot = b.anyShot();
        return new Timing(
                shot.night(),
                shot.observer(),
                site(shot),
                b.passage().moon(),
                phenomenon,
                b.point(),
                b.hasTime() ? Timing.Method.BRACKET : Timing.Method.LIMIT,
                b.observedUtc(),
                b.predictedUtc(),
                b.oMinusPS(),
                Timing.Errors.of(b.errors()),
                Optional.empty(),
                b.isContradiction() ? Optional.empty() : b.before().map(Shot::midUtc),
                b.isContradiction() ? Optional.empty() : b.after().map(Shot::midUtc),
                Stream.of(b.before(), b.after())
                        .flatMap(Optional::stream)
                        .map(Shot::name)
                        .toList(),
                0,
                b.doubts());
    }

    /** The moments of an event that a person could time, or the mean place beside the disc. */
    private List<Timing> byPlaces() {
        Pool pool = Pool.of(usable.stream().map(PlaceTiming::value).toList());
        Pool beside = Pool.of(usable.stream().map(PlaceTiming::beside).toList());
        List<String> doubts = new ArrayList<>();
        for (int i : pool.outlying()) {
            if (usable.size() > 1) {
                doubts.add(usable.get(i).mark().shot().name() + " stands off the others");
            }
        }
        places.stream()
                .filter(p -> !p.usable())
                .forEach(p -> doubts.add(p.mark().shot().name() + " left out: "
                        + (p.doubts().isEmpty() ? "no time" : p.doubts().get(0))));
        cautions(doubts);
        double sigmaBeside = beside.errors().totalS();
        if (Math.abs(beside.meanS()) > PlaceTimer.DOUBTFUL * sigmaBeside && usable.size() > 1) {
            doubts.add(String.format(
                    Locale.ROOT,
                    "together %.1f standard errors off the foretold way",
                    Math.abs(beside.meanS()) / sigmaBeside));
        }
        Timing.Beside across = new Timing.Beside(beside.meanS(), sigmaBeside);
        Timing.Method method = places.size() == 1 ? Timing.Method.PLACE : Timing.Method.PLACES;
        List<Timing> rows = new ArrayList<>();
        for (TimedPoint point : points()) {
            Instant predicted = predicted(point);
            rows.add(place(point, method, predicted, pool, Optional.of(across), doubts, places));
        }
        return rows;
    }

    /** What is said of single places that are used all the same, with how many it is said of. */
    private void cautions(List<String> doubts) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        usable.forEach(p -> p.doubts().forEach(d -> counts.merge(d, 1, Integer::sum)));
        counts.forEach(
                (doubt, n) -> doubts.add(usable.size() == 1 ? doubt : doubt + " (" + n + " of " + usable.size() + ")"));
    }

    private List<TimedPoint> points() {
        if (passage.isEmpty()) {
            return List.of(TimedPoint.PLACE);
        }
        List<TimedPoint> points = new ArrayList<>();
        if (canBeSeen(TimedPoint.INGRESS_CENTRE)) {
            points.add(TimedPoint.INGRESS_CENTRE);
        }
        if (!passage.get().kind().behind()) {
            points.add(TimedPoint.MID);
        }
        if (canBeSeen(TimedPoint.EGRESS_CENTRE)) {
            points.add(TimedPoint.EGRESS_CENTRE);
        }
        return points.isEmpty() ? List.of(TimedPoint.MID) : points;
    }

    private boolean canBeSeen(TimedPoint point) {
        return ForetoldContact.of(passage.orElseThrow(), point)
                .filter(c -> c.doubts().isEmpty())
                .isPresent();
    }

    /** When a moment is foretold; beside the disc, the middle of the pictures less the mean O−P is worked out by the caller. */
    private Instant predicted(TimedPoint point) {
        if (point == TimedPoint.PLACE) {
            long sum = usable.stream()
                    .mapToLong(p -> p.predictedUtc().toEpochMilli() / usable.size())
                    .sum();
            return Instant.ofEpochMilli(sum);
        }
        return ForetoldContact.of(passage.orElseThrow(), point)
                .map(ForetoldContact::time)
                .orElseGet(() -> passage.orElseThrow().mid().time().toInstant());
    }

    private Timing together(List<Pool.Value> values) {
        Pool pool = Pool.of(values);
        List<String> doubts = pool.outlying().isEmpty() || values.size() < 2
                ? List.of()
                : List.of(pool.outlying().size() + " of " + values.size() + " timings stand off the others");
        return place(
                TimedPoint.MID,
                Timing.Method.COMBINED,
                passage.orElseThrow().mid().time().toInstant(),
                pool,
                Optional.empty(),
                doubts,
                usable);
    }

    private Timing place(
            TimedPoint point,
            Timing.Method method,
            Instant predicted,
            Pool pool,
            Optional<Timing.Beside> across,
            List<String> doubts,
            List<PlaceTiming> marks) {
        Shot shot = marks.isEmpty()
                ? brackets.get(0).anyShot()
                : marks.get(0).mark().shot();
        List<Shot> shots =
                new ArrayList<>(marks.stream().map(p -> p.mark().shot()).toList());
        if (method == Timing.Method.COMBINED) {
            usableBrackets().forEach(b -> {
                shots.add(b.before().orElseThrow());
                shots.add(b.after().orElseThrow());
            });
        }
        return new Timing(
                shot.night(),
                shot.observer(),
                site(shot),
                moon(),
                phenomenon,
                point,
                method,
                Optional.of(predicted.plusMillis(Math.round(pool.meanS() * 1000))),
                Optional.of(predicted),
                pool.meanS(),
                Timing.Errors.of(pool.errors()),
                across,
                Optional.empty(),
                Optional.empty(),
                shots.stream()
                        .sorted(Comparator.comparing(Shot::midUtc))
                        .map(Shot::name)
                        .distinct()
                        .toList(),
                (int) marks.stream().filter(p -> !p.usable()).count(),
                doubts);
    }
}
