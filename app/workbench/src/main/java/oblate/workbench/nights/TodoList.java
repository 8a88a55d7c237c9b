/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.archive.StoredMark;
import oblate.disc.Trust;
import oblate.image.CaptureTime;
import oblate.image.TimeClaim;
import oblate.workbench.look.Figures;
import oblate.workbench.look.NightName;
import oblate.workbench.words.Texts;

/**
 * Everything in the archive that wants a look, the gravest first. Immutable.
 *
 * @param todos the things
 * @param claims what each source says of the time, by picture, where they disagree
 */
record TodoList(List<Todo> todos, Map<Long, List<TimeClaim>> claims) {
    private static final Texts TEXTS = Texts.of(TodoList.class);
    /** Copies the collections. */
    TodoList {
        todos = List.copyOf(todos);
        claims = Map.copyOf(claims);
    }

    /** What of an archive's pictures, fits and marks wants a look. Any thread. */
    static TodoList of(
            List<ArchivedPicture> pictures,
            Function<Long, Optional<FitSummary>> fitOf,
            List<StoredMark> marks,
            Function<Long, List<TimeClaim>> claimsOf) {
        Map<Long, Long> unnamed = marks.stream()
                .filter(m -> m.mark().featureId().isEmpty())
                .collect(Collectors.groupingBy(m -> m.mark().pictureId(), Collectors.counting()));
        List<Todo> todos = new ArrayList<>();
        for (ArchivedPicture p : pictures) {
            ofTimeAndPlanet(p, todos);
            fitOf.apply(p.id()).ifPresent(fit -> ofFit(p, fit, todos));
            Long count = unnamed.get(p.id());
            if (count != null) {
                todos.add(one(Todo.Kind.UNNAMED_MARKS, p, TEXTS.counted("todo.unnamed", count)));
            }
        }
        byNight(Todo.Kind.NO_SITE, pictures, p -> p.site().isEmpty(), todos);
        byNight(Todo.Kind.NO_OBSERVER, pictures, p -> p.observer().isEmpty(), todos);
        todos.sort(Comparator.comparing(Todo::kind));
        Map<Long, List<TimeClaim>> claims = todos.stream()
                .filter(t -> t.kind() == Todo.Kind.TIME_CONFLICT)
                .collect(Collectors.toMap(Todo::first, t -> claimsOf.apply(t.first())));
        return new TodoList(todos, claims);
    }

    private static void ofTimeAndPlanet(ArchivedPicture p, List<Todo> todos) {
        if (!p.timeConflicts().isEmpty()) {
            todos.add(one(Todo.Kind.TIME_CONFLICT, p, String.join(" ", p.timeConflicts())));
        }
        if (p.time().isEmpty()) {
            todos.add(one(Todo.Kind.UNDATED, p, TEXTS.text("todo.undated")));
        }
        if (p.planetId().isEmpty()) {
            todos.add(one(Todo.Kind.NO_PLANET, p, TEXTS.text("todo.planetless")));
        }
    }

    private static void ofFit(ArchivedPicture p, FitSummary fit, List<Todo> todos) {
        if (fit.clockDisagrees()) {
            double sigmaS = fit.clockSigmaS().orElse(Double.NaN);
            todos.add(one(
                    Todo.Kind.CLOCK,
                    p,
                    TEXTS.text(
                            "todo.clock", Figures.withSigma(fit.clockOffsetS().orElse(0), sigmaS, "s"))));
        } else if (fit.trust() == Trust.DOUBTFUL) {
            String why = fit.reasons().isEmpty() ? "" : " " + String.join(" ", fit.reasons());
            todos.add(one(Todo.Kind.DOUBTFUL_FIT, p, TEXTS.text("todo.doubtful") + why));
        }
    }

    private static Todo one(Todo.Kind kind, ArchivedPicture p, String sentence) {
        String time = p.time()
                .map(CaptureTime::midUtc)
                .map(t -> ", " + Figures.clockUt(t))
                .orElse("");
        return new Todo(kind, List.of(p.id()), p.night().map(NightName::of).orElse(p.originalName()) + time, sentence);
    }

    private static void byNight(
            Todo.Kind kind, List<ArchivedPicture> pictures, Predicate<ArchivedPicture> lacking, List<Todo> todos) {
        Map<Optional<LocalDate>, List<ArchivedPicture>> nights = pictures.stream()
                .filter(lacking)
                .collect(Collectors.groupingBy(
                        ArchivedPicture::night,
                        () -> new TreeMap<>(Comparator.comparing(n -> n.orElse(LocalDate.MIN))),
                        Collectors.toList()));
        String key = kind == Todo.Kind.NO_SITE ? "todo.no.site" : "todo.no.observer";
        nights.forEach((night, of) -> todos.add(new Todo(
                kind,
                of.stream().map(ArchivedPicture::id).toList(),
                night.map(NightName::of).orElse(TEXTS.text("todo.without.time")),
                TEXTS.counted(key, of.size()))));
    }

    /** How many of each kind, in words; a sentence of praise for an empty list. */
    String summary() {
        if (todos.isEmpty()) {
            return TEXTS.text("todo.nothing");
        }
        return Arrays.stream(Todo.Kind.values())
                .map(k -> Map.entry(k, todos.stream().filter(t -> t.kind() == k).count()))
                .filter(e -> e.getValue() > 0)
                .map(e -> e.getKey().count(e.getValue()))
                .collect(Collectors.joining(", "));
    }
}
