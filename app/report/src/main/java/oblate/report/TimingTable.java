/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Timing;
import oblate.sky.PlanetModel;

/** The tables of timings: one row per moment of an event, or per picture; and one row per night for its clock. */
public final class TimingTable {
    /** What stands for a prediction that no place was known for. */
    public static final String GEOCENTRE = "geocentre";

    private static final int TENTHS_MS = 100;

    private TimingTable() {}

    /**
     * One row per timing, in the order given.
     *
     * @param ephemeris name of the planetary ephemeris the predictions rest on
     */
    public static ReportTable of(PlanetModel planet, List<Timing> timings, String ephemeris) {
        TableDraft<Timing> draft = new TableDraft<>("Timings of the moons of " + planet.label());
        facts(draft, planet, ephemeris);
        who(draft);
        times(draft);
        errors(draft);
        check(draft);
        return draft.rows(timings);
    }

    private static void facts(TableDraft<?> draft, PlanetModel planet, String ephemeris) {
        draft.fact("planet", planet.label())
                .fact(
                        "times",
                        "UTC; observed by the pictures' clock, predicted as seen from the site in seen_from, or from the Earth's centre")
                .fact(
                        "o_minus_p",
                        "observed minus predicted; positive when seen later than foretold, as a clock that is fast makes it")
                .fact(
                        "predicted",
                        "transits at the edge of the lit part, occultations at the true edge, shadows on the side of the globe that is seen, eclipses at half light")
                .fact("errors", "one standard error; the clock's is shared by all pictures of a night and observer")
                .fact("ephemeris", ephemeris)
                .fact("software", Software.nameAndVersion());
    }

    private static void text(
            TableDraft<Timing> draft,
            String name,
            String heading,
            String ucd,
            String description,
            Function<Timing, ?> value) {
        draft.column(new Column(name, heading, "", ucd, description, -1), value);
    }

    private static void seconds(
            TableDraft<Timing> draft, String name, String heading, String description, Function<Timing, Double> value) {
        draft.column(
                new Column(name, heading, "s", "stat.error;time", description, 1),
                t -> t.hasTime() ? value.apply(t) : null);
    }

    private static void who(TableDraft<Timing> draft) {
        text(draft, "night", "Night", "time.start;obs", "date of the evening", t -> t.night()
                .toString());
        text(draft, "observer", "Observer", "obs.observer", "whose clock it was", Timing::observer);
        text(
                draft,
                "seen_from",
                "Seen from",
                "obs.observer;pos",
                "site the prediction is for; geocentre where the pictures' site is not known",
                t -> t.site().orElse(GEOCENTRE));
        text(draft, "moon", "Moon", "meta.id;src", "moon", t -> t.moon().id());
        text(
                draft,
                "phenomenon",
                "Phenomenon",
                "meta.code.class",
                "transit, shadow_transit, occultation, eclipse, or beside: beside the disc",
                t -> t.phenomenon().id());
        text(
                draft,
                "point",
                "Moment",
                "meta.code",
                "t1 … t4 touches, ingress_centre, mid, egress_centre, or place: where the mark lies",
                t -> t.point().id());
        text(
                draft,
                "method",
                "Method",
                "meta.code",
                "place, places: from marks on the moon's way; bracket: between two pictures; limit: one side only; combined",
                t -> t.method().id());
    }

    private static void times(TableDraft<Timing> draft) {
        text(draft, "observed_utc", "Observed", "time.epoch;obs", "observed time, UTC, to 0.1 s", t -> t.observedUtc()
                .map(TimingTable::tenths)
                .orElse(null));
        text(
                draft,
                "predicted_utc",
                "Predicted",
                "time.epoch;meta.modelled",
                "predicted time, UTC, to 0.1 s",
                t -> t.predictedUtc().map(TimingTable::tenths).orElse(null));
        draft.column(
                new Column(
                        "o_minus_p_s",
                        "O-P",
                        "s",
                        "time;arith.diff",
                        "observed minus predicted, positive when later than foretold",
                        1),
                t -> t.hasTime() ? t.oMinusPS() : null);
        draft.column(
                new Column("sigma_s", "+/-", "s", "stat.error;time", "its standard error, everything together", 1),
                t -> t.hasTime() ? t.errors().totalS() : null);
    }

    private static void errors(TableDraft<Timing> draft) {
        seconds(
                draft,
                "sigma_own_s",
                "own",
                "part of it from the pick, or from the interval between two pictures",
                t -> t.errors().ownS());
        seconds(draft, "sigma_fit_s", "fit", "part of it from the fitted discs", t -> t.errors()
                .fitS());
        seconds(draft, "sigma_clock_s", "clock", "part of it from the clock, as the pictures state it", t -> t.errors()
                .clockS());
        seconds(
                draft,
                "sigma_orbit_s",
                "orbit",
                "part of it from the moon's orbit and the planet's edge",
                t -> t.errors().orbitS());
        seconds(
                draft,
                "sigma_phase_s",
                "phase",
                "part of it from where the light of the moon lies on it",
                t -> t.errors().phaseS());
        seconds(
                draft,
                "sigma_site_s",
                "site",
                "part of it from the observer's place on the Earth, where the prediction is for its centre",
                t -> t.errors().siteS());
    }

    private static void check(TableDraft<Timing> draft) {
        draft.column(
                new Column(
                        "cross_path_arcsec",
                        "Cross path",
                        "arcsec",
                        "pos.angDistance",
                        "marks' distance from the foretold way, to the left of the motion with north up and west to the right: a check",
                        3),
                t -> t.beside().map(Timing.Beside::arcsec).orElse(null));
        draft.column(
                new Column(
                        "sigma_cross_path_arcsec",
                        "+/-",
                        "arcsec",
                        "stat.error;pos.angDistance",
                        "its standard error",
                        3),
                t -> t.beside().map(Timing.Beside::sigmaArcsec).orElse(null));
        draft.column(new Column("pictures", "Pictures", "", "meta.number", "pictures it rests on", 0), t ->
                (long) t.pictures().size());
        draft.column(new Column("left_out", "Left out", "", "meta.number", "marks left out as false", 0), t ->
                (long) t.leftOut());
        text(draft, "not_before_utc", "Not before", "time.start", "last picture before it, UTC", t -> t.notBeforeUtc()
                .map(TimingTable::tenths)
                .orElse(null));
        text(draft, "not_after_utc", "Not after", "time.end", "first picture after it, UTC", t -> t.notAfterUtc()
                .map(TimingTable::tenths)
                .orElse(null));
        text(draft, "names", "Names", "meta.file", "names of the pictures", t -> String.join(" ; ", t.pictures()));
        text(draft, "doubts", "Doubts", "meta.note", "why it may be wrong", t -> String.join("; ", t.doubts()));
    }

    /** One row per night and observer: mean of observed minus predicted as the error of the clock. */
    public static ReportTable nights(PlanetModel planet, List<NightClock> nights, String ephemeris) {
        TableDraft<NightClock> draft = new TableDraft<>("Clocks by the moons of " + planet.label());
        facts(draft, planet, ephemeris);
        draft.column(new Column("night", "Night", "", "time.start;obs", "date of the evening", -1), n -> n.night()
                .toString());
        draft.column(
                new Column("observer", "Observer", "", "obs.observer", "whose clock it was", -1), NightClock::observer);
        draft.column(
                new Column(
                        "clock_fast_s",
                        "Clock fast",
                        "s",
                        "time;arith.diff",
                        "mean of observed minus predicted: how far the clock was fast, negative when slow",
                        1),
                NightClock::fastS);
        draft.column(
                new Column(
                        "sigma_s",
                        "+/-",
                        "s",
                        "stat.error;time",
                        "its standard error, the stated one of the clock left out",
                        1),
                NightClock::sigmaS);
        draft.column(
                new Column(
                        "stated_sigma_s",
                        "Stated",
                        "s",
                        "stat.error;time",
                        "uncertainty the pictures state for their times",
                        1),
                NightClock::statedSigmaS);
        draft.column(
                new Column("timings", "Timings", "", "meta.number", "timings it rests on", 0), n -> (long) n.timings());
        draft.column(
                new Column("moons", "Moons", "", "meta.id", "moons it rests on", -1), n -> String.join(" ", n.moons()));
        draft.column(
                new Column("verdict", "Verdict", "", "meta.code", "agrees, undecided or differs", -1),
                n -> n.verdict().name().toLowerCase(java.util.Locale.ROOT));
        draft.column(
                new Column("doubts", "Doubts", "", "meta.note", "what speaks against it", -1),
                n -> String.join("; ", n.doubts()));
        return draft.rows(nights);
    }

    private static Instant tenths(Instant time) {
        return Instant.ofEpochMilli(Math.round(time.toEpochMilli() / (double) TENTHS_MS) * TENTHS_MS);
    }

    /** What can be said of a contact known from one side only, e.g. "before 21:03:10"; empty otherwise. */
    public static Optional<String> limit(Timing timing) {
        if (timing.hasTime()) {
            return Optional.empty();
        }
        return timing.notBeforeUtc().map(t -> "after " + clock(t)).or(() -> timing.notAfterUtc()
                .map(t -> "before " + clock(t)));
    }

    private static String clock(Instant time) {
        return tenths(time).toString().substring(11, 19);
    }
}
