/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.disc.DiscFit;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.disc.Witness;
import org.jdbi.v3.core.Handle;

/** Disc fits: added, and read with the chain of what superseded what. */
final class FitRows {
    private static final String SELECT = """
            select f.*, w.reason as withdrawn_reason,
              (select min(x.id) from disc_fit x where x.picture_id = f.picture_id and x.id > f.id
                 and not exists (select 1 from fit_withdrawal v where v.fit_id = x.id)) as superseded_by
            from disc_fit f left join fit_withdrawal w on w.fit_id = f.id
            where f.picture_id = :picture order by f.id
            """;

    private static final String INSERT = """
            insert into disc_fit (picture_id, centre_x_px, centre_y_px, equatorial_radius_px, pole_angle_deg, mirrored,
              var_x_px2, cov_x_y_px2, cov_x_radius_px2, cov_x_angle_px_deg, var_y_px2, cov_y_radius_px2,
              cov_y_angle_px_deg, var_radius_px2, cov_radius_angle_px_deg, var_angle_deg2,
              trust, method, channel, rms_px, edge_points, ephemeris, software, made_utc, supersedes)
            values (:picture, :x, :y, :radius, :angle, :mirrored,
              :c00, :c01, :c02, :c03, :c11, :c12, :c13, :c22, :c23, :c33,
              :trust, :method, :channel, :rms, :points, :ephemeris, :software, :made, :supersedes)
            returning id
            """;

    private final HistoryRows history = new HistoryRows();

    /** Adds a fit that supersedes the picture's current one. */
    StoredFit add(Handle handle, NewFit added, Instant now) {
        long pictureId = added.pictureId();
        DiscFit fit = added.fit();
        List<StoredFit> earlier = ofPicture(handle, pictureId);
        Optional<StoredFit> before =
                earlier.stream().filter(StoredFit::isCurrent).findFirst();
        // The chain of fits has no forks: a new one follows the newest, be that withdrawn or not.
        Optional<Long> newest = earlier.isEmpty()
                ? Optional.empty()
                : Optional.of(earlier.get(earlier.size() - 1).id());
        Placement at = fit.placement();
        var insert = handle.createQuery(INSERT)
                .bind("picture", pictureId)
                .bind("x", at.centreXPx())
                .bind("y", at.centreYPx())
                .bind("radius", at.equatorialRadiusPx())
                .bind("angle", at.poleAngleDeg())
                .bind("mirrored", Columns.flag(at.mirrored()))
                .bind("trust", fit.trust().name())
                .bind("method", fit.method())
                .bind("channel", fit.channel())
                .bind("rms", Columns.orNull(fit.rmsPx()))
                .bind("points", fit.edgePoints())
                .bind("ephemeris", added.ephemeris())
                .bind("software", added.software())
                .bind("made", UtcText.of(now))
                .bind("supersedes", newest);
        for (int row = 0; row < 4; row++) {
            for (int column = row; column < 4; column++) {
                insert.bind("c" + row + column, fit.covariance().get(row, column));
            }
        }
        long id = insert.mapTo(Long.class).one();
        addLists(handle, id, fit);
        String subject = "picture " + pictureId;
        history.add(
                handle,
                now,
                "fitted",
                subject,
                "fit " + id + ", " + fit.trust().name().toLowerCase(Locale.ROOT) + ", " + fit.method());
        before.ifPresent(b -> history.add(handle, now, "superseded", "fit " + b.id(), "by fit " + id));
        return current(handle, pictureId).orElseThrow();
    }

    private static void addLists(Handle handle, long id, DiscFit fit) {
        for (int i = 0; i < fit.reasons().size(); i++) {
            handle.createUpdate("insert into fit_reason (fit_id, ordinal, sentence) values (:fit, :ordinal, :sentence)")
                    .bind("fit", id)
                    .bind("ordinal", i)
                    .bind("sentence", fit.reasons().get(i))
                    .execute();
        }
        for (int i = 0; i < fit.witnesses().size(); i++) {
            Witness w = fit.witnesses().get(i);
            handle.createUpdate("""
                            insert into fit_witness (fit_id, ordinal, quantity, source, value, sigma)
                            values (:fit, :ordinal, :quantity, :source, :value, :sigma)
                            """)
                    .bind("fit", id)
                    .bind("ordinal", i)
                    .bind("quantity", w.quantity())
                    .bind("source", w.source())
                    .bind("value", Columns.orNull(w.value()))
                    .bind("sigma", Columns.orNull(w.sigma()))
                    .execute();
        }
    }

    Optional<StoredFit> current(Handle handle, long pictureId) {
        return ofPicture(handle, pictureId).stream()
                .filter(StoredFit::isCurrent)
                .findFirst();
    }

    /** Takes a fit out of use. */
    void withdraw(Handle handle, StoredFit fit, String reason, Instant now) {
        handle.createUpdate("insert into fit_withdrawal (fit_id, reason, withdrawn_utc) values (:fit, :reason, :at)")
                .bind("fit", fit.id())
                .bind("reason", reason)
                .bind("at", UtcText.of(now))
                .execute();
        history.add(handle, now, "withdrawn", "fit " + fit.id(), "of picture " + fit.pictureId() + ": " + reason);
    }

    /** The picture a fit belongs to. */
    Optional<Long> pictureOf(Handle handle, long fitId) {
        return handle.createQuery("select picture_id from disc_fit where id = :fit")
                .bind("fit", fitId)
                .mapTo(Long.class)
                .findOne();
    }

    /** All fits of a picture, oldest first. */
    List<StoredFit> ofPicture(Handle handle, long pictureId) {
        return handle.createQuery(SELECT)
                .bind("picture", pictureId)
                .map((rs, ctx) -> fit(handle, rs))
                .list();
    }

    private static StoredFit fit(Handle handle, ResultSet rs) throws SQLException {
        long id = rs.getLong("id");
        DiscFit fit = new DiscFit(
                new Placement(
                        rs.getDouble("centre_x_px"),
                        rs.getDouble("centre_y_px"),
                        rs.getDouble("equatorial_radius_px"),
                        rs.getDouble("pole_angle_deg"),
                        rs.getInt("mirrored") != 0),
                covariance(rs),
                Trust.valueOf(rs.getString("trust")),
                handle.createQuery("select sentence from fit_reason where fit_id = :fit order by ordinal")
                        .bind("fit", id)
                        .mapTo(String.class)
                        .list(),
                rs.getString("method"),
                rs.getString("channel"),
                Columns.numberOrNaN(rs, "rms_px"),
                rs.getInt("edge_points"),
                witnesses(handle, id));
        return new StoredFit(
                id,
                rs.getLong("picture_id"),
                fit,
                rs.getString("ephemeris"),
                rs.getString("software"),
                UtcText.parse(rs.getString("made_utc")),
                Columns.id(rs, "superseded_by"),
                Columns.text(rs, "withdrawn_reason"));
    }

    private static List<Witness> witnesses(Handle handle, long fitId) {
        return handle.createQuery(
                        "select quantity, source, value, sigma from fit_witness where fit_id = :fit order by ordinal")
                .bind("fit", fitId)
                .map((rs, ctx) -> new Witness(
                        rs.getString("quantity"),
                        rs.getString("source"),
                        Columns.numberOrNaN(rs, "value"),
                        Columns.numberOrNaN(rs, "sigma")))
                .list();
    }

    private static PlacementCovariance covariance(ResultSet rs) throws SQLException {
        double xx = rs.getDouble("var_x_px2");
        double xy = rs.getDouble("cov_x_y_px2");
        double xr = rs.getDouble("cov_x_radius_px2");
        double xa = rs.getDouble("cov_x_angle_px_deg");
        double yy = rs.getDouble("var_y_px2");
        double yr = rs.getDouble("cov_y_radius_px2");
        double ya = rs.getDouble("cov_y_angle_px_deg");
        double rr = rs.getDouble("var_radius_px2");
        double ra = rs.getDouble("cov_radius_angle_px_deg");
        double aa = rs.getDouble("var_angle_deg2");
        return new PlacementCovariance(
                new double[][] {{xx, xy, xr, xa}, {xy, yy, yr, ya}, {xr, yr, rr, ra}, {xa, ya, ra, aa}});
    }

    /** A fit to be kept. */
    record NewFit(long pictureId, DiscFit fit, String ephemeris, String software) {}
}
