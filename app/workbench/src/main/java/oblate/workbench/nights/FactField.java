/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import oblate.archive.PictureFacts;
import oblate.archive.Rating;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** The facts of a picture a person may correct. Texts are as shown and typed; an empty one means not known. */
enum FactField {
    PLANET(f -> f.planetId().orElse(""), (f, t) -> f.withPlanet(said(t))),
    TIME(f -> f.time().map(t -> t.midUtc().toString()).orElse(""), FactField::withTime),
    LENGTH(
            f -> f.time()
                    .filter(t -> t.exposureS().isPresent())
                    .map(t -> Figures.fixed(t.exposureS().getAsDouble(), 0))
                    .orElse(""),
            FactField::withLength),
    SITE(f -> f.site().orElse(""), (f, t) -> f.withSite(said(t))),
    OBSERVER(f -> f.observer().orElse(""), (f, t) -> f.withObserver(said(t))),
    KIT(f -> f.kit().orElse(""), (f, t) -> f.withKit(said(t))),
    FILTER(f -> f.filter().orElse(""), (f, t) -> f.withFilter(said(t))),
    SEEING(f -> rated(f.seeing()), (f, t) -> f.withSeeing(rating(t, "Pickering"))),
    TRANSPARENCY(f -> rated(f.transparency()), (f, t) -> f.withTransparency(rating(t, "limiting magnitude"))),
    NOTES(f -> f.notes().orElse(""), (f, t) -> f.withNotes(said(t)));

    private static final Texts TEXTS = Texts.of(FactField.class);

    private final Function<PictureFacts, String> text;
    private final BiFunction<PictureFacts, String, PictureFacts> with;

    FactField(Function<PictureFacts, String> text, BiFunction<PictureFacts, String, PictureFacts> with) {
        this.text = text;
        this.with = with;
    }

    String label() {
        return TEXTS.word("fact", this);
    }

    /** Its name within a sentence. */
    String said() {
        return TEXTS.word("fact.said", this);
    }

    /** As shown. */
    String text(PictureFacts facts) {
        return text.apply(facts);
    }

    /** The facts with what was typed; what cannot be understood changes nothing, see {@link #fault}. */
    PictureFacts with(PictureFacts facts, String typed) {
        return with.apply(facts, typed);
    }

    /** Why what was typed cannot be taken, one sentence. */
    Optional<String> fault(String typed) {
        if (this == TIME && !typed.isBlank() && TimeEntry.of(typed).isEmpty()) {
            return Optional.of(TEXTS.text("fact.no.time", typed.strip(), TEXTS.text("fact.time.how")));
        }
        if (this == LENGTH && !typed.isBlank() && !typed.strip().matches("\\d{1,5}(\\.\\d{1,3})?( ?s)?")) {
            return Optional.of(TEXTS.text("fact.no.length", typed.strip()));
        }
        return Optional.empty();
    }

    private static Optional<String> said(String typed) {
        return Optional.of(typed.strip()).filter(t -> !t.isEmpty());
    }

    private static PictureFacts withTime(PictureFacts facts, String typed) {
        return typed.isBlank()
                ? facts.withTime(Optional.empty())
                : TimeEntry.of(typed).map(e -> e.applied(facts)).orElse(facts);
    }

    private static PictureFacts withLength(PictureFacts facts, String typed) {
        String number = typed.replace("s", "").strip();
        return facts.withTime(facts.time()
                .map(t -> new PictureFacts.Taken(
                        t.midUtc(),
                        number.isEmpty()
                                ? java.util.OptionalDouble.empty()
                                : java.util.OptionalDouble.of(Double.parseDouble(number)),
                        t.sigmaS())));
    }

    private static String rated(Optional<Rating> rating) {
        return rating.map(r -> r.value() + " " + r.scale()).orElse("");
    }

    /** The first word is the value, the rest its scale; without a scale the usual one. */
    private static Optional<Rating> rating(String typed, String usualScale) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        int blank = text.indexOf(' ');
        return Optional.of(
                blank < 0
                        ? new Rating(text, usualScale)
                        : new Rating(
                                text.substring(0, blank),
                                text.substring(blank + 1).strip()));
    }
}
