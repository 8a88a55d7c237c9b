/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import oblate.image.CaptureTime;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import org.jdbi.v3.core.Handle;

/** Reads pictures from the catalog. */
final class PictureRows {
    private static final String SELECT = """
            select p.*, n.evening, s.name as site, o.name as observer, k.name as kit,
              exists (select 1 from disc_fit f where f.picture_id = p.id
                 and not exists (select 1 from fit_withdrawal v where v.fit_id = f.id)) as fitted,
              (select count(*) from mark m where m.picture_id = p.id
                 and not exists (select 1 from mark x where x.supersedes = m.id)
                 and not exists (select 1 from mark_withdrawal w where w.mark_id = m.id)) as mark_count
            from picture p
              left join night n on n.id = p.night_id
              left join site s on s.id = p.site_id
              left join observer o on o.id = p.observer_id
              left join kit k on k.id = p.kit_id
            """;

    private static final String IN_ORDER_OF_TIME = " order by coalesce(p.mid_utc, '~'), p.id limit :limit";

    // Asked of the short tables and not of every picture: an archive has many more pictures than measured ones.
    private static final String FITTED = """
            p.id in (select f.picture_id from disc_fit f
               where not exists (select 1 from fit_withdrawal v where v.fit_id = f.id))
            """;

    private static final String NOT_FITTED = """
            p.id not in (select f.picture_id from disc_fit f
               where not exists (select 1 from fit_withdrawal v where v.fit_id = f.id))
            """;

    private static final String MARKED = """
            p.id in (select m.picture_id from mark m
               where not exists (select 1 from mark x where x.supersedes = m.id)
               and not exists (select 1 from mark_withdrawal w where w.mark_id = m.id))
            """;

    private static final String NOT_MARKED = """
            p.id not in (select m.picture_id from mark m
               where not exists (select 1 from mark x where x.supersedes = m.id)
               and not exists (select 1 from mark_withdrawal w where w.mark_id = m.id))
            """;

    private final Dialect dialect;

    PictureRows(Dialect dialect) {
        this.dialect = dialect;
    }

    /** Pictures that meet a search, in order of time. */
    List<ArchivedPicture> find(Handle handle, PictureSearch search) {
        Condition condition = condition(search);
        return find(handle, condition, search.limit() <= 0 ? Integer.MAX_VALUE : search.limit());
    }

    Optional<ArchivedPicture> byId(Handle handle, long id) {
        return find(handle, new Condition().and("p.id = :id", "id", id), 1).stream()
                .findFirst();
    }

    Optional<ArchivedPicture> bySha(Handle handle, String sha256) {
        return find(handle, new Condition().and("p.sha256 = :sha", "sha", sha256), 1).stream()
                .findFirst();
    }

    /** Pictures with a path, a file name, an original name or a start of a SHA-256. */
    List<ArchivedPicture> called(Handle handle, String word, boolean maybeSha) {
        Condition condition = new Condition()
                .and("""
                        p.id in (
                          select id from picture where relative_path = :word
                          union select id from picture where file_name = :word
                          union select id from picture where original_name = :word
                          union select id from picture where sha256 >= :shaLow and sha256 < :shaHigh)
                        """, "word", word)
                .with("shaLow", maybeSha ? word : "~")
                .with("shaHigh", maybeSha ? word + "~" : "~");
        return find(handle, condition, Integer.MAX_VALUE);
    }

    private List<ArchivedPicture> find(Handle handle, Condition condition, int limit) {
        List<Row> rows = condition
                .bind(handle.createQuery(condition.sql(SELECT, IN_ORDER_OF_TIME))
                        .bind("limit", limit))
                .map((rs, ctx) -> Row.of(rs))
                .list();
        if (rows.isEmpty()) {
            return List.of();
        }
        String ids = rows.stream().map(r -> Long.toString(r.id())).collect(Collectors.joining(","));
        Map<Long, Map<String, Double>> meridians = meridians(handle, ids);
        Map<Long, Sentences> sentences = sentences(handle, ids);
        return rows.stream()
                .map(r -> r.picture(
                        meridians.getOrDefault(r.id(), Map.of()), sentences.getOrDefault(r.id(), Sentences.NONE)))
                .toList();
    }

    private Map<Long, Map<String, Double>> meridians(Handle handle, String ids) {
        Map<Long, Map<String, Double>> found = new HashMap<>();
        handle.createQuery(dialect.meridiansOf())
                .bind("ids", ids)
                .map((rs, ctx) -> found.computeIfAbsent(rs.getLong("picture_id"), id -> new TreeMap<>())
                        .put(rs.getString("system_id"), rs.getDouble("cm_deg")))
                .list();
        return found;
    }

    private Map<Long, Sentences> sentences(Handle handle, String ids) {
        Map<Long, Sentences> found = new HashMap<>();
        handle.createQuery(dialect.sentencesOf())
                .bind("ids", ids)
                .map((rs, ctx) -> found.computeIfAbsent(
                                rs.getLong("picture_id"), id -> new Sentences(new ArrayList<>(), new ArrayList<>()))
                        .of(rs.getString("kind"))
                        .add(rs.getString("sentence")))
                .list();
        return found;
    }

    private Condition condition(PictureSearch search) {
        Condition c = new Condition();
        search.planetId().ifPresent(v -> c.and("p.planet_id = :planet", "planet", v));
        search.night()
                .ifPresent(v -> c.and(
                        "p.night_id in (select id from night where evening = :evening)", "evening", v.toString()));
        search.from().ifPresent(v -> c.and("coalesce(p.mid_utc, '~') >= :from", "from", UtcText.of(v))
                .and("p.mid_utc is not null"));
        search.to().ifPresent(v -> c.and("coalesce(p.mid_utc, '~') < :to", "to", UtcText.of(v)));
        search.meridian().ifPresent(v -> meridian(c, v));
        search.observer()
                .ifPresent(
                        v -> c.and("p.observer_id = (select id from observer where name = :observer)", "observer", v));
        search.kit().ifPresent(v -> c.and("p.kit_id = (select id from kit where name = :kit)", "kit", v));
        search.filter().ifPresent(v -> c.and("p.filter_words like :filter", "filter", "%" + Words.joined(v) + "%"));
        search.words().ifPresent(v -> words(c, v));
        search.fitted().ifPresent(v -> c.and(v ? FITTED : NOT_FITTED));
        search.marked().ifPresent(v -> c.and(v ? MARKED : NOT_MARKED));
        return c;
    }

    private void words(Condition c, String text) {
        List<String> words = Words.of(text);
        if (!words.isEmpty()) {
            c.and(dialect.wordsCondition(), "words", dialect.wordsQuery(words));
        } else if (!text.isBlank()) {
            c.and("1 = 0");
        }
    }

    private static void meridian(Condition c, PictureSearch.MeridianRange range) {
        double from = Angle.turn(range.fromDeg());
        double to = Angle.turn(range.toDeg());
        if (Math.abs(range.toDeg() - range.fromDeg()) >= 360) {
            from = 0;
            to = 360;
        }
        String sql = from <= to ? """
                  p.id in (select picture_id from picture_meridian
                           where system_id = :system and cm_deg >= :cmFrom and cm_deg <= :cmTo)
                  """ : """
                  p.id in (select picture_id from picture_meridian where system_id = :system and cm_deg >= :cmFrom
                           union all
                           select picture_id from picture_meridian where system_id = :system and cm_deg <= :cmTo)
                  """;
        c.and(sql, "system", range.systemId()).with("cmFrom", from).with("cmTo", to);
    }

    private record Sentences(List<String> conflicts, List<String> timeNotes) {
        static final Sentences NONE = new Sentences(List.of(), List.of());

        List<String> of(String kind) {
            return kind.equals("conflict") ? conflicts : timeNotes;
        }
    }

    /** A row of the main query; what hangs on it comes from two more queries. */
    private record Row(ArchivedPicture bare) {
        long id() {
            return bare.id();
        }

        static Row of(ResultSet rs) throws SQLException {
            return new Row(new ArchivedPicture(
                    rs.getLong("id"),
                    rs.getString("sha256"),
                    rs.getString("relative_path"),
                    rs.getString("original_name"),
                    rs.getString("format_id"),
                    rs.getInt("width_px"),
                    rs.getInt("height_px"),
                    rs.getInt("channels"),
                    Columns.text(rs, "planet_id"),
                    time(rs),
                    Columns.text(rs, "evening").map(LocalDate::parse),
                    Map.of(),
                    Columns.text(rs, "site"),
                    Columns.text(rs, "observer"),
                    Columns.text(rs, "kit"),
                    Columns.text(rs, "filter"),
                    rating(rs, "seeing_value", "seeing_scale"),
                    rating(rs, "transparency_value", "transparency_scale"),
                    Columns.text(rs, "notes"),
                    List.of(),
                    UtcText.parse(rs.getString("filed_utc")),
                    rs.getBoolean("fitted"),
                    rs.getInt("mark_count")));
        }

        ArchivedPicture picture(Map<String, Double> meridians, Sentences sentences) {
            ArchivedPicture b = bare;
            return new ArchivedPicture(
                    b.id(),
                    b.sha256(),
                    b.relativePath(),
                    b.originalName(),
                    b.formatId(),
                    b.widthPx(),
                    b.heightPx(),
                    b.channels(),
                    b.planetId(),
                    b.time().map(t -> withNotes(t, sentences.timeNotes())),
                    b.night(),
                    meridians,
                    b.site(),
                    b.observer(),
                    b.kit(),
                    b.filter(),
                    b.seeing(),
                    b.transparency(),
                    b.notes(),
                    sentences.conflicts(),
                    b.filedUtc(),
                    b.fitted(),
                    b.markCount());
        }

        private static Optional<Rating> rating(ResultSet rs, String value, String scale) throws SQLException {
            String given = rs.getString(value);
            return given == null ? Optional.empty() : Optional.of(new Rating(given, rs.getString(scale)));
        }

        private static Optional<CaptureTime> time(ResultSet rs) throws SQLException {
            String mid = rs.getString("mid_utc");
            if (mid == null) {
                return Optional.empty();
            }
            OptionalDouble exposure = Columns.number(rs, "exposure_s");
            return Optional.of(new CaptureTime(
                    UtcText.parse(mid),
                    exposure,
                    TimeSource.valueOf(rs.getString("time_source")),
                    rs.getString("time_place"),
                    rs.getString("time_text"),
                    TimeMeaning.valueOf(rs.getString("time_meaning")),
                    rs.getInt("meaning_assumed") != 0,
                    rs.getInt("zone_assumed") != 0,
                    rs.getDouble("time_sigma_s"),
                    List.of()));
        }

        private static CaptureTime withNotes(CaptureTime t, List<String> notes) {
            return new CaptureTime(
                    t.midUtc(),
                    t.exposureS(),
                    t.source(),
                    t.place(),
                    t.originalText(),
                    t.statedMeaning(),
                    t.meaningAssumed(),
                    t.zoneAssumed(),
                    t.uncertaintyS(),
                    notes);
        }
    }
}
