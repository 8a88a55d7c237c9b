/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import oblate.image.CaptureTime;
import oblate.image.TimeClaim;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Enters a picture with all that hangs on it. */
final class PictureEntering {
    private static final String INSERT = """
            insert into picture (sha256, size_bytes, relative_path, file_name, original_name, format_id,
              width_px, height_px, channels, planet_id, mid_utc, exposure_s, time_source, time_place, time_text,
              time_meaning, meaning_assumed, zone_assumed, time_sigma_s, night_id, site_id, observer_id, kit_id,
              filter, filter_words, seeing_value, seeing_scale, transparency_value, transparency_scale, notes,
              words, filed_utc)
            values (:sha256, :size, :path, :fileName, :originalName, :format,
              :width, :height, :channels, :planet, :mid, :exposure, :source, :place, :text,
              :meaning, :meaningAssumed, :zoneAssumed, :sigma, :night, :site, :observer, :kit,
              :filter, :filterWords, :seeing, :seeingScale, :transparency, :transparencyScale, :notes,
              :words, :filed)
            on conflict (sha256) do nothing
            returning id
            """;

    private final GearRows gear = new GearRows();
    private final HistoryRows history = new HistoryRows();

    /** Enters a picture; empty when its bytes are in the catalog already. */
    Optional<Long> enter(Handle handle, PictureEntry entry, Instant now) {
        FilingFacts facts = entry.facts();
        Optional<Long> site = facts.site().map(name -> gear.siteId(handle, name)
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_SITE, name)));
        Optional<Long> night = entry.night().map(date -> gear.nightId(handle, date, site));
        String fileName = entry.relativePath().substring(entry.relativePath().lastIndexOf('/') + 1);
        var insert = handle.createQuery(INSERT)
                .bind("sha256", entry.sha256())
                .bind("size", entry.sizeBytes())
                .bind("path", entry.relativePath())
                .bind("fileName", fileName)
                .bind("originalName", entry.originalName())
                .bind("format", entry.header().formatId())
                .bind("width", entry.header().widthPx())
                .bind("height", entry.header().heightPx())
                .bind("channels", entry.header().channels())
                .bind("planet", entry.planetId())
                .bind("night", night)
                .bind("site", site)
                .bind("observer", facts.observer().map(name -> gear.observerId(handle, name)))
                .bind("kit", facts.kit().map(name -> gear.kitId(handle, name, now)))
                .bind("filter", facts.filter())
                .bind("filterWords", facts.filter().map(Words::joined))
                .bind("seeing", facts.seeing().map(Rating::value))
                .bind("seeingScale", facts.seeing().map(Rating::scale))
                .bind("transparency", facts.transparency().map(Rating::value))
                .bind("transparencyScale", facts.transparency().map(Rating::scale))
                .bind("notes", facts.notes())
                .bind("words", words(entry, fileName))
                .bind("filed", UtcText.of(now));
        Optional<CaptureTime> time = entry.time();
        Optional<Long> id = insert.bind("mid", time.map(t -> UtcText.of(t.midUtc())))
                .bind(
                        "exposure",
                        time.map(CaptureTime::exposureS)
                                .filter(e -> e.isPresent())
                                .map(e -> e.getAsDouble()))
                .bind("source", time.map(t -> t.source().name()))
                .bind("place", time.map(CaptureTime::place))
                .bind("text", time.map(CaptureTime::originalText))
                .bind("meaning", time.map(t -> t.statedMeaning().name()))
                .bind("meaningAssumed", time.map(t -> Columns.flag(t.meaningAssumed())))
                .bind("zoneAssumed", time.map(t -> Columns.flag(t.zoneAssumed())))
                .bind("sigma", time.map(CaptureTime::uncertaintyS))
                .mapTo(Long.class)
                .findOne();
        id.ifPresent(picture -> enterRest(handle, picture, entry, now));
        return id;
    }

    private void enterRest(Handle handle, long picture, PictureEntry entry, Instant now) {
        entry.centralMeridians().forEach((system, deg) -> handle.createUpdate(
                        "insert into picture_meridian (picture_id, system_id, cm_deg) values (:picture, :system, :deg)")
                .bind("picture", picture)
                .bind("system", system)
                .bind("deg", Angle.turn(deg))
                .execute());
        enterSentences(handle, picture, "conflict", entry.conflicts());
        enterSentences(
                handle,
                picture,
                "time note",
                entry.time().map(CaptureTime::notes).orElse(List.of()));
        enterClaims(handle, picture, entry.claims());
        history.add(handle, now, "filed", "picture " + picture, entry.originalName() + " as " + entry.relativePath());
    }

    private static void enterSentences(Handle handle, long picture, String kind, List<String> sentences) {
        for (int i = 0; i < sentences.size(); i++) {
            handle.createUpdate("""
                            insert into picture_sentence (picture_id, kind, ordinal, sentence)
                            values (:picture, :kind, :ordinal, :sentence)
                            """)
                    .bind("picture", picture)
                    .bind("kind", kind)
                    .bind("ordinal", i)
                    .bind("sentence", sentences.get(i))
                    .execute();
        }
    }

    private static void enterClaims(Handle handle, long picture, List<TimeClaim> claims) {
        if (claims.isEmpty()) {
            return;
        }
        PreparedBatch batch = handle.prepareBatch("""
                insert into time_claim (picture_id, ordinal, source, place, original_text, stated, offset_s, meaning,
                  exposure_s, precision_s)
                values (:picture, :ordinal, :source, :place, :text, :stated, :offset, :meaning, :exposure, :precision)
                """);
        for (int i = 0; i < claims.size(); i++) {
            TimeClaim c = claims.get(i);
            batch.bind("picture", picture)
                    .bind("ordinal", i)
                    .bind("source", c.source().name())
                    .bind("place", c.place())
                    .bind("text", c.originalText())
                    .bind("stated", c.stated().toString())
                    .bind("offset", c.offset().map(o -> o.getTotalSeconds()))
                    .bind("meaning", c.meaning().name())
                    .bind("exposure", c.exposureS().isPresent() ? c.exposureS().getAsDouble() : null)
                    .bind("precision", c.precisionS())
                    .add();
        }
        batch.execute();
    }

    private static String words(PictureEntry entry, String fileName) {
        FilingFacts facts = entry.facts();
        return Stream.of(
                        Optional.of(fileName),
                        Optional.of(entry.originalName()),
                        entry.planetId(),
                        facts.site(),
                        facts.observer(),
                        facts.kit(),
                        facts.filter(),
                        facts.notes())
                .flatMap(Optional::stream)
                .flatMap(text -> Words.of(text).stream())
                .distinct()
                .collect(Collectors.joining(" "));
    }
}
