/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.archive.PictureFacts;
import oblate.archive.PictureFacts.Taken;
import oblate.image.TimeClaim;
import oblate.image.TimeMeaning;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** The ways to mend what wants a look, the likeliest first. On the event thread only. */
final class Remedies {
    private static final Texts TEXTS = Texts.of(Remedies.class);
    private static final int MOST_OFFERED = 3;
    private static final Duration SAME = Duration.ofSeconds(1);
    private final PanelContext context;
    private final Corrector corrector;
    private final FitAcceptance fits;
    private final Editing editing;

    /** Chooses pictures and puts the caret into a field of the inspector. */
    interface Editing {
        /**
         * @param ids pictures to be corrected
         * @param field the field
         * @param text to begin with; empty for what is there
         * @param reason to begin with
         */
        void begin(List<Long> ids, FactField field, String text, String reason);
    }

    Remedies(PanelContext context, Corrector corrector, Editing editing) {
        this.context = context;
        this.corrector = corrector;
        this.editing = editing;
        fits = new FitAcceptance(context);
    }

    List<Remedy> of(Todo todo, TodoList list) {
        List<Remedy> remedies = new ArrayList<>();
        switch (todo.kind()) {
            case TIME_CONFLICT -> conflict(todo, list.claims().getOrDefault(todo.first(), List.of()), remedies);
            case CLOCK -> clock(todo, remedies);
            case UNDATED -> remedies.add(edit(TEXTS.text("remedy.time"), todo, FactField.TIME));
            case NO_PLANET -> {
                frequent(ArchivedPicture::planetId)
                        .forEach(id -> remedies.add(set(
                                TEXTS.text("remedy.planet.is", planetLabel(id)),
                                todo,
                                FactField.PLANET,
                                f -> f.withPlanet(Optional.of(id)))));
                remedies.add(edit(TEXTS.text("remedy.planet"), todo, FactField.PLANET));
            }
            case DOUBTFUL_FIT -> {
                remedies.add(open(TEXTS.text("remedy.fit.look"), todo));
                remedies.add(new Remedy(
                        TEXTS.text("remedy.fit.good"),
                        TEXTS.text("remedy.fit.good.tip"),
                        () -> fits.accept(todo.first())));
                remedies.add(new Remedy(
                        TEXTS.text("remedy.fit.wrong"),
                        TEXTS.text("remedy.fit.wrong.tip"),
                        () -> fits.withdraw(todo.first())));
            }
            case UNNAMED_MARKS -> remedies.add(open(TEXTS.text("remedy.name"), todo));
            case NO_SITE -> {
                frequent(ArchivedPicture::site)
                        .forEach(name -> remedies.add(set(
                                TEXTS.text("remedy.site.is", name),
                                todo,
                                FactField.SITE,
                                f -> f.withSite(Optional.of(name)))));
                remedies.add(edit(TEXTS.text("remedy.site"), todo, FactField.SITE));
                everywhere("remedy.site.all", todo, list, FactField.SITE, remedies);
            }
            case NO_OBSERVER -> {
                frequent(ArchivedPicture::observer)
                        .forEach(name -> remedies.add(set(
                                TEXTS.text("remedy.observer.is", name),
                                todo,
                                FactField.OBSERVER,
                                f -> f.withObserver(Optional.of(name)))));
                remedies.add(edit(TEXTS.text("remedy.observer"), todo, FactField.OBSERVER));
                everywhere("remedy.observer.all", todo, list, FactField.OBSERVER, remedies);
            }
            default -> throw new IllegalStateException(todo.kind().name());
        }
        if (todo.kind() == Todo.Kind.CLOCK || todo.kind() == Todo.Kind.TIME_CONFLICT) {
            remedies.add(open(TEXTS.text("remedy.look"), todo));
        }
        return remedies;
    }

    private void conflict(Todo todo, List<TimeClaim> claims, List<Remedy> remedies) {
        Optional<ArchivedPicture> picture = context.shelf().picture(todo.first());
        Optional<Instant> now = picture.flatMap(ArchivedPicture::time).map(t -> t.midUtc());
        remedies.add(new Remedy(
                now.map(Figures::clockUt)
                        .map(t -> TEXTS.text("remedy.time.keep", t))
                        .orElseGet(() -> TEXTS.text("remedy.time.keep.as.is")),
                TEXTS.text("remedy.time.keep.tip"),
                () -> picture.ifPresent(p -> corrector.settleTimes(List.of(p), TEXTS.text("why.settled")))));
        List<Instant> offered = new ArrayList<>(now.stream().toList());
        for (TimeClaim claim : claims) {
            Optional<Instant> mid = middle(claim);
            boolean known = mid.isEmpty()
                    || offered.stream()
                            .anyMatch(t -> Duration.between(t, mid.get()).abs().compareTo(SAME) < 0);
            if (!known && remedies.size() <= MOST_OFFERED) {
                offered.add(mid.get());
                remedies.add(new Remedy(
                        TEXTS.text("remedy.time.take", Figures.clockUt(mid.get()), claim.place()),
                        TEXTS.text("remedy.time.take.tip", mid.get().toString()),
                        () -> corrector.correct(
                                todo.pictures(),
                                f -> f.withTime(Optional.of(new Taken(
                                        mid.get(),
                                        exposure(claim, f),
                                        Math.max(0.3, claim.precisionS() / Math.sqrt(3))))),
                                timesOf(1),
                                TEXTS.text("why.believed", claim.place()))));
            }
        }
        remedies.add(edit(TEXTS.text("remedy.time.other"), todo, FactField.TIME));
    }

    private static OptionalDouble exposure(TimeClaim claim, PictureFacts facts) {
        return claim.exposureS().isPresent()
                ? claim.exposureS()
                : facts.time().map(Taken::exposureS).orElse(OptionalDouble.empty());
    }

    /** The middle a claim means, when it says its zone and, for a start or end, its length. */
    private static Optional<Instant> middle(TimeClaim claim) {
        Optional<Instant> stated =
                claim.offset().map((ZoneOffset o) -> claim.stated().toInstant(o));
        if (claim.meaning() != TimeMeaning.START && claim.meaning() != TimeMeaning.END) {
            return stated;
        }
        if (claim.exposureS().isEmpty()) {
            return Optional.empty();
        }
        long halfMs = Math.round(claim.exposureS().getAsDouble() * 500);
        return stated.map(t -> t.plusMillis(claim.meaning() == TimeMeaning.START ? halfMs : -halfMs));
    }

    private void clock(Todo todo, List<Remedy> remedies) {
        Optional<ArchivedPicture> picture = context.shelf().picture(todo.first());
        Optional<FitSummary> fit = context.shelf().fit(todo.first());
        if (picture.isEmpty() || fit.isEmpty()) {
            return;
        }
        long offsetMs = Math.round(fit.get().clockOffsetS().orElse(0) * 1000);
        String shift = (offsetMs < 0 ? Figures.MINUS : '+') + Figures.fixed(Math.abs(offsetMs) / 1000.0, 0) + " s";
        List<Long> night = context.shelf().pictures().stream()
                .filter(p -> p.night().equals(picture.get().night())
                        && p.kit().equals(picture.get().kit())
                        && p.time().isPresent())
                .map(ArchivedPicture::id)
                .toList();
        String reason = TEXTS.text("why.moons", shift);
        TimeEntry by = new TimeEntry.Shift(Duration.ofMillis(offsetMs));
        if (night.size() > 1) {
            remedies.add(new Remedy(
                    TEXTS.text("remedy.shift.night", Integer.toString(night.size()), shift),
                    TEXTS.text("remedy.shift.night.tip"),
                    () -> corrector.correct(night, by::applied, timesOf(night.size()), reason)));
        }
        remedies.add(new Remedy(
                TEXTS.text("remedy.shift", shift),
                TEXTS.text("remedy.shift.tip"),
                () -> corrector.correct(todo.pictures(), by::applied, timesOf(1), reason)));
        remedies.add(edit(TEXTS.text("remedy.time.other"), todo, FactField.TIME));
    }

    private Remedy edit(String label, Todo todo, FactField field) {
        return new Remedy(label, TEXTS.text("remedy.edit.tip"), () -> editing.begin(todo.pictures(), field, "", ""));
    }

    /** One word for all nights that lack the same fact, when there are several. */
    private void everywhere(String key, Todo todo, TodoList list, FactField field, List<Remedy> remedies) {
        List<Long> all = list.todos().stream()
                .filter(t -> t.kind() == todo.kind())
                .flatMap(t -> t.pictures().stream())
                .toList();
        if (all.size() > todo.pictures().size()) {
            remedies.add(new Remedy(
                    TEXTS.text(key, Integer.toString(all.size())),
                    TEXTS.text("remedy.all.tip"),
                    () -> editing.begin(all, field, "", "")));
        }
    }

    private Remedy open(String label, Todo todo) {
        return new Remedy(label, TEXTS.text("remedy.open.tip"), () -> context.openPicture(todo.first()));
    }

    private static String timesOf(int pictures) {
        return TEXTS.counted("facts.of", pictures, FactField.TIME.said());
    }

    private Remedy set(String label, Todo todo, FactField fact, java.util.function.UnaryOperator<PictureFacts> change) {
        int count = todo.pictures().size();
        return new Remedy(
                label,
                TEXTS.counted("remedy.set.tip", count),
                () -> corrector.correct(
                        todo.pictures(),
                        change,
                        TEXTS.counted("facts.of", count, fact.said()),
                        TEXTS.text("why.filled.in")));
    }

    private List<String> frequent(Function<ArchivedPicture, Optional<String>> fact) {
        return context.shelf().pictures().stream()
                .flatMap(p -> fact.apply(p).stream())
                .collect(Collectors.groupingBy(f -> f, Collectors.counting()))
                .entrySet()
                .stream()
                .sorted(Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder()))
                .limit(MOST_OFFERED)
                .map(Map.Entry::getKey)
                .toList();
    }

    private String planetLabel(String id) {
        return context.workbench().planets().stream()
                .filter(p -> p.id().equals(id))
                .map(PlanetModel::label)
                .findFirst()
                .orElse(id);
    }
}
