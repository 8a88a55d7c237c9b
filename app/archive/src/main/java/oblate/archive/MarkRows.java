/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import oblate.disc.ErrorBudget;
import oblate.disc.PixelPoint;
import oblate.disc.SurfacePoint;
import org.jdbi.v3.core.Handle;

/** Marks: added, superseded, withdrawn, and read. */
final class MarkRows {
    private static final String SELECT = """
            select m.*, p.mid_utc, f.name as feature_name, w.reason as withdrawn_reason,
              (select x.id from mark x where x.supersedes = m.id) as superseded_by
            from mark m
              join picture p on p.id = m.picture_id
              left join feature f on f.id = m.feature_id
              left join mark_withdrawal w on w.mark_id = m.id
            """;

    private static final String IN_ORDER_OF_TIME = " order by p.mid_utc, m.id";

    private static final String CURRENT =
            "w.mark_id is null and not exists (select 1 from mark x where x.supersedes = m.id)";

    private static final String INSERT = """
            insert into mark (picture_id, fit_id, feature_id, x_px, y_px, pick_sigma_px, lon_iau_deg, lat_graphic_deg,
              lat_centric_deg, emission_deg, incidence_deg, from_meridian_deg, has_errors, pick_lon_deg, pick_lat_deg,
              centre_lon_deg, centre_lat_deg, scale_lon_deg, scale_lat_deg, angle_lon_deg, angle_lat_deg, time_lon_deg,
              total_lon_deg, total_lat_deg, what, measurer, made_utc, supersedes, supersede_reason)
            values (:picture, :fit, :feature, :x, :y, :pickSigma, :lonIau, :latGraphic,
              :latCentric, :emission, :incidence, :fromMeridian, :hasErrors, :pickLon, :pickLat,
              :centreLon, :centreLat, :scaleLon, :scaleLat, :angleLon, :angleLat, :timeLon,
              :totalLon, :totalLat, :what, :measurer, :made, :supersedes, :reason)
            returning id
            """;

    private final Dialect dialect;

    MarkRows(Dialect dialect) {
        this.dialect = dialect;
    }

    /** What a mark replaces, and why. */
    record Replacing(long markId, String reason) {}

    long add(Handle handle, NewMark mark, Map<String, Double> longitudes, Optional<Replacing> replacing, Instant now) {
        Optional<SurfacePoint> point = mark.point();
        Optional<ErrorBudget> errors = mark.errors();
        long id = handle.createQuery(INSERT)
                .bind("picture", mark.pictureId())
                .bind("fit", mark.fitId())
                .bind("feature", mark.featureId())
                .bind("x", Columns.orNull(mark.pixel().xPx()))
                .bind("y", Columns.orNull(mark.pixel().yPx()))
                .bind("pickSigma", Columns.orNull(mark.pickSigmaPx()))
                .bind("lonIau", point.map(SurfacePoint::lonIauDeg))
                .bind("latGraphic", point.map(SurfacePoint::latGraphicDeg))
                .bind("latCentric", point.map(SurfacePoint::latCentricDeg))
                .bind("emission", point.map(SurfacePoint::emissionDeg))
                .bind("incidence", point.map(SurfacePoint::incidenceDeg))
                .bind("fromMeridian", point.map(SurfacePoint::fromMeridianDeg))
                .bind("hasErrors", Columns.flag(errors.isPresent()))
                .bind("pickLon", number(errors.map(ErrorBudget::pickLonDeg)))
                .bind("pickLat", number(errors.map(ErrorBudget::pickLatDeg)))
                .bind("centreLon", number(errors.map(ErrorBudget::centreLonDeg)))
                .bind("centreLat", number(errors.map(ErrorBudget::centreLatDeg)))
                .bind("scaleLon", number(errors.map(ErrorBudget::scaleLonDeg)))
                .bind("scaleLat", number(errors.map(ErrorBudget::scaleLatDeg)))
                .bind("angleLon", number(errors.map(ErrorBudget::angleLonDeg)))
                .bind("angleLat", number(errors.map(ErrorBudget::angleLatDeg)))
                .bind("timeLon", number(errors.map(ErrorBudget::timeLonDeg)))
                .bind("totalLon", number(errors.map(ErrorBudget::totalLonDeg)))
                .bind("totalLat", number(errors.map(ErrorBudget::totalLatDeg)))
                .bind("what", mark.what())
                .bind("measurer", mark.measurer())
                .bind("made", UtcText.of(now))
                .bind("supersedes", replacing.map(Replacing::markId))
                .bind("reason", replacing.map(Replacing::reason))
                .mapTo(Long.class)
                .one();
        longitudes.forEach((system, deg) -> handle.createUpdate(
                        "insert into mark_longitude (mark_id, system_id, lon_deg) values (:mark, :system, :deg)")
                .bind("mark", id)
                .bind("system", system)
                .bind("deg", deg)
                .execute());
        return id;
    }

    void withdraw(Handle handle, long markId, String reason, Instant now) {
        handle.createUpdate("insert into mark_withdrawal (mark_id, reason, withdrawn_utc) values (:mark, :reason, :at)")
                .bind("mark", markId)
                .bind("reason", reason)
                .bind("at", UtcText.of(now))
                .execute();
    }

    Optional<StoredMark> byId(Handle handle, long id) {
        return find(handle, new Condition().and("m.id = :id", "id", id)).stream()
                .findFirst();
    }

    List<StoredMark> find(Handle handle, MarkSearch search) {
        Condition c = new Condition();
        search.planetId().ifPresent(v -> c.and("p.planet_id = :planet", "planet", v));
        search.pictureId().ifPresent(v -> c.and("m.picture_id = :picture", "picture", v));
        search.featureName().ifPresent(v -> c.and("f.name = :feature", "feature", v));
        search.from().ifPresent(v -> c.and("p.mid_utc >= :from", "from", UtcText.of(v)));
        search.to().ifPresent(v -> c.and("p.mid_utc < :to", "to", UtcText.of(v)));
        if (!search.history()) {
            c.and(CURRENT);
        }
        return find(handle, c);
    }

    private List<StoredMark> find(Handle handle, Condition condition) {
        List<StoredMark> bare = condition
                .bind(handle.createQuery(condition.sql(SELECT, IN_ORDER_OF_TIME)))
                .map((rs, ctx) -> mark(rs))
                .list();
        if (bare.isEmpty()) {
            return List.of();
        }
        String ids = bare.stream().map(m -> Long.toString(m.id())).collect(Collectors.joining(","));
        Map<Long, Map<String, Double>> longitudes = new HashMap<>();
        handle.createQuery(dialect.longitudesOf())
                .bind("ids", ids)
                .map((rs, ctx) -> longitudes
                        .computeIfAbsent(rs.getLong("mark_id"), id -> new TreeMap<>())
                        .put(rs.getString("system_id"), rs.getDouble("lon_deg")))
                .list();
        return bare.stream()
                .map(m -> new StoredMark(
                        m.id(),
                        m.mark(),
                        Map.copyOf(longitudes.getOrDefault(m.id(), Map.of())),
                        m.featureName(),
                        m.midUtc(),
                        m.madeUtc(),
                        m.supersededBy(),
                        m.withdrawnReason()))
                .toList();
    }

    private static StoredMark mark(ResultSet rs) throws SQLException {
        NewMark mark = new NewMark(
                rs.getLong("picture_id"),
                Columns.id(rs, "fit_id"),
                Columns.id(rs, "feature_id"),
                new PixelPoint(rs.getDouble("x_px"), rs.getDouble("y_px")),
                rs.getDouble("pick_sigma_px"),
                point(rs),
                errors(rs),
                rs.getString("what"),
                rs.getString("measurer"));
        return new StoredMark(
                rs.getLong("id"),
                mark,
                Map.of(),
                Columns.text(rs, "feature_name"),
                UtcText.parse(rs.getString("mid_utc")),
                UtcText.parse(rs.getString("made_utc")),
                Columns.id(rs, "superseded_by"),
                Columns.text(rs, "withdrawn_reason"));
    }

    private static Optional<SurfacePoint> point(ResultSet rs) throws SQLException {
        double lon = rs.getDouble("lon_iau_deg");
        if (rs.wasNull()) {
            return Optional.empty();
        }
        return Optional.of(new SurfacePoint(
                lon,
                rs.getDouble("lat_graphic_deg"),
                rs.getDouble("lat_centric_deg"),
                rs.getDouble("emission_deg"),
                rs.getDouble("incidence_deg"),
                rs.getDouble("from_meridian_deg")));
    }

    private static Optional<ErrorBudget> errors(ResultSet rs) throws SQLException {
        if (rs.getInt("has_errors") == 0) {
            return Optional.empty();
        }
        return Optional.of(new ErrorBudget(
                Columns.numberOrNaN(rs, "pick_lon_deg"),
                Columns.numberOrNaN(rs, "pick_lat_deg"),
                Columns.numberOrNaN(rs, "centre_lon_deg"),
                Columns.numberOrNaN(rs, "centre_lat_deg"),
                Columns.numberOrNaN(rs, "scale_lon_deg"),
                Columns.numberOrNaN(rs, "scale_lat_deg"),
                Columns.numberOrNaN(rs, "angle_lon_deg"),
                Columns.numberOrNaN(rs, "angle_lat_deg"),
                Columns.numberOrNaN(rs, "time_lon_deg"),
                Columns.numberOrNaN(rs, "total_lon_deg"),
                Columns.numberOrNaN(rs, "total_lat_deg")));
    }

    private static Double number(Optional<Double> value) {
        return value.map(Columns::orNull).orElse(null);
    }
}
