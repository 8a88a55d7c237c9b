/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import org.jdbi.v3.core.Handle;

/** Writes corrected facts of a picture over the old ones, which go to the history. The file and its claims about time stay as they were. */
final class PictureCorrecting {
    private static final String PLACE = "corrected by hand";

    private static final String FACTS = """
            update picture set planet_id = :planet, night_id = :night, site_id = :site, observer_id = :observer, kit_id = :kit,
              filter = :filter, filter_words = :filterWords, seeing_value = :seeing, seeing_scale = :seeingScale,
              transparency_value = :transparency, transparency_scale = :transparencyScale, notes = :notes, words = :words
            where id = :id
            """;

    private static final String TIME = """
            update picture set mid_utc = :mid, exposure_s = :exposure, time_source = :source, time_place = :place,
              time_text = :text, time_meaning = :meaning, meaning_assumed = :assumed, zone_assumed = :assumed,
              time_sigma_s = :sigma, night_id = :night
            where id = :id
            """;

    private final GearRows gear = new GearRows();
    private final HistoryRows history = new HistoryRows();

    /**
     * A correction.
     *
     * @param before the picture as it is
     * @param after what is right
     * @param night evening's date, there when there is a time
     * @param centralMeridians at the corrected time, by system id
     */
    record Corrected(
            ArchivedPicture before,
            PictureFacts after,
            Optional<LocalDate> night,
            Map<String, Double> centralMeridians) {

        PictureFacts was() {
            return PictureFacts.of(before);
        }

        boolean isTimeChanged() {
            return !was().time().equals(after.time());
        }

        boolean isPlanetChanged() {
            return !was().planetId().equals(after.planetId());
        }
    }

    void update(Handle handle, Corrected c, String reason, Instant now) {
        long id = c.before().id();
        PictureFacts f = c.after();
        Optional<Long> site = f.site().map(name -> gear.siteId(handle, name)
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_SITE, name)));
        Optional<Long> night = c.night().map(date -> gear.nightId(handle, date, site));
        if (c.isTimeChanged()) {
            time(handle, c, night);
        }
        handle.createUpdate(FACTS)
                .bind("id", id)
                .bind("planet", f.planetId())
                .bind("night", night)
                .bind("site", site)
                .bind("observer", f.observer().map(name -> gear.observerId(handle, name)))
                .bind("kit", f.kit().map(name -> gear.kitId(handle, name, now)))
                .bind("filter", f.filter())
                .bind("filterWords", f.filter().map(Words::joined))
                .bind("seeing", f.seeing().map(Rating::value))
                .bind("seeingScale", f.seeing().map(Rating::scale))
                .bind("transparency", f.transparency().map(Rating::value))
                .bind("transparencyScale", f.transparency().map(Rating::scale))
                .bind("notes", f.notes())
                .bind("words", words(c))
                .execute();
        if (c.isTimeChanged() || c.isPlanetChanged()) {
            meridians(handle, c);
        }
        history.add(handle, now, "corrected", "picture " + id, changes(c.was(), f) + "; " + reason);
    }

    private static void time(Handle handle, Corrected c, Optional<Long> night) {
        Optional<PictureFacts.Taken> time = c.after().time();
        handle.createUpdate(TIME)
                .bind("id", c.before().id())
                .bind("mid", time.map(t -> UtcText.of(t.midUtc())))
                .bind("exposure", time.map(t -> number(t.exposureS())))
                .bind("source", time.map(t -> TimeSource.USER.name()))
                .bind("place", time.map(t -> PLACE))
                .bind("text", time.map(t -> t.midUtc().toString()))
                .bind("meaning", time.map(t -> TimeMeaning.MIDDLE.name()))
                .bind("assumed", time.map(t -> 0))
                .bind("sigma", time.map(PictureFacts.Taken::sigmaS))
                .bind("night", night)
                .execute();
        // A person has decided between the sources; what each of them said stays among the claims.
        handle.createUpdate("delete from picture_sentence where picture_id = :id")
                .bind("id", c.before().id())
                .execute();
    }

    /** Takes away the sentences about disagreeing times: a person has looked at them and keeps the time. */
    void settleTime(Handle handle, ArchivedPicture picture, String reason, Instant now) {
        handle.createUpdate("delete from picture_sentence where picture_id = :id and kind = 'conflict'")
                .bind("id", picture.id())
                .execute();
        history.add(
                handle,
                now,
                "time settled",
                "picture " + picture.id(),
                "kept against: " + String.join(" ", picture.timeConflicts()) + "; " + reason);
    }

    /** Brings sentences about disagreeing times back. */
    void reopenTime(Handle handle, ArchivedPicture picture, List<String> conflicts, String reason, Instant now) {
        int ordinal = picture.timeConflicts().size();
        for (String sentence : conflicts) {
            if (!picture.timeConflicts().contains(sentence)) {
                handle.createUpdate(
                                "insert into picture_sentence (picture_id, kind, ordinal, sentence) values (:id, 'conflict', :ordinal, :sentence)")
                        .bind("id", picture.id())
                        .bind("ordinal", ordinal++)
                        .bind("sentence", sentence)
                        .execute();
            }
        }
        history.add(handle, now, "time reopened", "picture " + picture.id(), reason);
    }

    private static void meridians(Handle handle, Corrected c) {
        long id = c.before().id();
        handle.createUpdate("delete from picture_meridian where picture_id = :id")
                .bind("id", id)
                .execute();
        c.centralMeridians().forEach((system, deg) -> handle.createUpdate(
                        "insert into picture_meridian (picture_id, system_id, cm_deg) values (:id, :system, :deg)")
                .bind("id", id)
                .bind("system", system)
                .bind("deg", Angle.turn(deg))
                .execute());
    }

    private static String words(Corrected c) {
        PictureFacts f = c.after();
        return Stream.of(
                        Optional.of(c.before().name()),
                        Optional.of(c.before().originalName()),
                        f.planetId(),
                        f.site(),
                        f.observer(),
                        f.kit(),
                        f.filter(),
                        f.notes())
                .flatMap(Optional::stream)
                .flatMap(text -> Words.of(text).stream())
                .distinct()
                .collect(Collectors.joining(" "));
    }

    /** What changed, each as "filter: IR, was red". */
    static String changes(PictureFacts was, PictureFacts now) {
        List<String> changes = new ArrayList<>();
        change(changes, "planet", was.planetId(), now.planetId());
        change(
                changes,
                "time",
                was.time().map(PictureCorrecting::said),
                now.time().map(PictureCorrecting::said));
        change(changes, "site", was.site(), now.site());
        change(changes, "observer", was.observer(), now.observer());
        change(changes, "kit", was.kit(), now.kit());
        change(changes, "filter", was.filter(), now.filter());
        change(
                changes,
                "seeing",
                was.seeing().map(PictureCorrecting::said),
                now.seeing().map(PictureCorrecting::said));
        change(
                changes,
                "transparency",
                was.transparency().map(PictureCorrecting::said),
                now.transparency().map(PictureCorrecting::said));
        change(changes, "notes", was.notes(), now.notes());
        return String.join(", ", changes);
    }

    private static void change(List<String> changes, String name, Optional<String> was, Optional<String> now) {
        if (!was.equals(now)) {
            changes.add(name + ": " + now.orElse("none") + ", was " + was.orElse("none"));
        }
    }

    private static String said(PictureFacts.Taken time) {
        return time.midUtc() + " ± " + time.sigmaS() + " s"
                + (time.exposureS().isPresent() ? ", " + time.exposureS().getAsDouble() + " s long" : "");
    }

    private static String said(Rating rating) {
        return rating.value() + " " + rating.scale();
    }

    private static Double number(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
