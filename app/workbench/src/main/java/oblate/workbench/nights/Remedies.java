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

/** The ways to mend what wants a look, the likeliest first. On the event thread only. */
final class Remedies {
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
            case UNDATED -> remedies.add(edit("Give its time", todo, FactField.TIME));
            case NO_PLANET -> {
                frequent(ArchivedPicture::planetId)
                        .forEach(id -> remedies.add(
                                set("It is " + planetLabel(id), todo, "planet", f -> f.withPlanet(Optional.of(id)))));
                remedies.add(edit("Say which planet", todo, FactField.PLANET));
            }
            case DOUBTFUL_FIT -> {
                remedies.add(open("Look at it on the measuring desk", todo));
                remedies.add(new Remedy(
                        "The fit is good: accept it",
                        "Keeps the same fit as a trusted one, noting that you accepted it",
                        () -> fits.accept(todo.first())));
                remedies.add(new Remedy(
                        "The fit is wrong: withdraw it",
                        "Takes it out of use; it stays readable",
                        () -> fits.withdraw(todo.first())));
            }
            case UNNAMED_MARKS -> remedies.add(open("Name them on the measuring desk", todo));
            case NO_SITE -> {
                frequent(ArchivedPicture::site)
                        .forEach(name -> remedies.add(
                                set("It was at " + name, todo, "site", f -> f.withSite(Optional.of(name)))));
                remedies.add(edit("Say which site", todo, FactField.SITE));
                everywhere("Say which site of all", todo, list, FactField.SITE, remedies);
            }
            case NO_OBSERVER -> {
                frequent(ArchivedPicture::observer)
                        .forEach(name -> remedies.add(
                                set("It was " + name, todo, "observer", f -> f.withObserver(Optional.of(name)))));
                remedies.add(edit("Say who observed", todo, FactField.OBSERVER));
                everywhere("Say who observed all", todo, list, FactField.OBSERVER, remedies);
            }
            default -> throw new IllegalStateException(todo.kind().name());
        }
        if (todo.kind() == Todo.Kind.CLOCK || todo.kind() == Todo.Kind.TIME_CONFLICT) {
            remedies.add(open("Look at the picture", todo));
        }
        return remedies;
    }

    private void conflict(Todo todo, List<TimeClaim> claims, List<Remedy> remedies) {
        Optional<ArchivedPicture> picture = context.shelf().picture(todo.first());
        Optional<Instant> now = picture.flatMap(ArchivedPicture::time).map(t -> t.midUtc());
        remedies.add(new Remedy(
                "Keep " + now.map(Figures::clockUt).orElse("it as it is"),
                "Settles that the time is right; what the other sources say stays among the claims",
                () -> picture.ifPresent(p -> corrector.settleTimes(List.of(p), "looked at and found right"))));
        List<Instant> offered = new ArrayList<>(now.stream().toList());
        for (TimeClaim claim : claims) {
            Optional<Instant> mid = middle(claim);
            boolean known = mid.isEmpty()
                    || offered.stream()
                            .anyMatch(t -> Duration.between(t, mid.get()).abs().compareTo(SAME) < 0);
            if (!known && remedies.size() <= MOST_OFFERED) {
                offered.add(mid.get());
                remedies.add(new Remedy(
                        "Take " + Figures.clockUt(mid.get()) + " from " + claim.place(),
                        "Makes the middle of the capture " + mid.get() + "; marks are measured anew",
                        () -> corrector.correct(
                                todo.pictures(),
                                f -> f.withTime(Optional.of(new Taken(
                                        mid.get(),
                                        exposure(claim, f),
                                        Math.max(0.3, claim.precisionS() / Math.sqrt(3))))),
                                "time of a picture",
                                claim.place() + " was believed")));
            }
        }
        remedies.add(edit("Give another time", todo, FactField.TIME));
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
        String reason = "the moons beside the planet fit a time " + shift + " off";
        TimeEntry by = new TimeEntry.Shift(Duration.ofMillis(offsetMs));
        if (night.size() > 1) {
            remedies.add(new Remedy(
                    "Shift the night’s " + night.size() + " pictures by " + shift,
                    "One clock was wrong for the whole night of this kit; marks are measured anew",
                    () -> corrector.correct(night, by::applied, "time of " + night.size() + " pictures", reason)));
        }
        remedies.add(new Remedy(
                "Shift this picture by " + shift,
                "Only this one was wrong; its marks are measured anew",
                () -> corrector.correct(todo.pictures(), by::applied, "time of a picture", reason)));
        remedies.add(edit("Give another time", todo, FactField.TIME));
    }

    private Remedy edit(String label, Todo todo, FactField field) {
        return new Remedy(
                label,
                "Goes to the field in the inspector; Ctrl+Enter there corrects",
                () -> editing.begin(todo.pictures(), field, "", ""));
    }

    /** One word for all nights that lack the same fact, when there are several. */
    private void everywhere(String label, Todo todo, TodoList list, FactField field, List<Remedy> remedies) {
        List<Long> all = list.todos().stream()
                .filter(t -> t.kind() == todo.kind())
                .flatMap(t -> t.pictures().stream())
                .toList();
        if (all.size() > todo.pictures().size()) {
            remedies.add(new Remedy(
                    label + " " + all.size() + " pictures",
                    "Chooses every picture that lacks it and goes to the field in the inspector; Ctrl+Enter there corrects",
                    () -> editing.begin(all, field, "", "")));
        }
    }

    private Remedy open(String label, Todo todo) {
        return new Remedy(label, "Opens the picture", () -> context.openPicture(todo.first()));
    }

    private Remedy set(String label, Todo todo, String fact, java.util.function.UnaryOperator<PictureFacts> change) {
        int count = todo.pictures().size();
        return new Remedy(
                label,
                "Says so of " + (count == 1 ? "the picture" : "all " + count + " pictures"),
                () -> corrector.correct(
                        todo.pictures(),
                        change,
                        fact + " of " + (count == 1 ? "a picture" : count + " pictures"),
                        "filled in from the to-do list"));
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
