/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;

/** Sites, observers, kits and nights. */
final class GearRows {
    private final HistoryRows history = new HistoryRows();

    void keepSite(Handle handle, Site site, Instant now) {
        Optional<Site> before =
                sites(handle).stream().filter(s -> s.name().equals(site.name())).findFirst();
        if (before.isPresent() && before.get().equals(site)) {
            return;
        }
        handle.createUpdate("""
                        insert into site (name, lat_deg, lon_deg, height_m, zone) values (:name, :lat, :lon, :height, :zone)
                        on conflict (name) do update set lat_deg = excluded.lat_deg, lon_deg = excluded.lon_deg,
                          height_m = excluded.height_m, zone = excluded.zone
                        """)
                .bind("name", site.name())
                .bind("lat", site.latDeg())
                .bind("lon", site.lonDeg())
                .bind("height", site.heightM())
                .bind("zone", site.zone().map(ZoneId::getId))
                .execute();
        logKept(handle, now, "site " + site.name(), before.map(Record::toString));
    }

    List<Site> sites(Handle handle) {
        return handle
                .createQuery("select name, lat_deg, lon_deg, height_m, zone from site")
                .map((rs, ctx) -> new Site(
                        rs.getString("name"),
                        rs.getDouble("lat_deg"),
                        rs.getDouble("lon_deg"),
                        rs.getDouble("height_m"),
                        Columns.text(rs, "zone").map(ZoneId::of)))
                .stream()
                .sorted(Comparator.comparing(Site::name)) // databases differ in how they order text
                .toList();
    }

    Optional<Long> siteId(Handle handle, String name) {
        return handle.createQuery("select id from site where name = :name")
                .bind("name", name)
                .mapTo(Long.class)
                .findOne();
    }

    void keepKit(Handle handle, Kit kit, Instant now) {
        Optional<Kit> before =
                kits(handle).stream().filter(k -> k.name().equals(kit.name())).findFirst();
        if (before.isPresent() && before.get().equals(kit)) {
            return;
        }
        handle.createUpdate("""
                        insert into kit (name, telescope, aperture_mm, focal_mm, camera, pixel_um, amplifier, corrector,
                          filter, mirrored, note)
                        values (:name, :telescope, :aperture, :focal, :camera, :pixel, :amplifier, :corrector,
                          :filter, :mirrored, :note)
                        on conflict (name) do update set telescope = excluded.telescope, aperture_mm = excluded.aperture_mm,
                          focal_mm = excluded.focal_mm, camera = excluded.camera, pixel_um = excluded.pixel_um,
                          amplifier = excluded.amplifier, corrector = excluded.corrector, filter = excluded.filter,
                          mirrored = excluded.mirrored, note = excluded.note
                        """)
                .bind("name", kit.name())
                .bind("telescope", kit.telescope())
                .bind("aperture", orNull(kit.apertureMm()))
                .bind("focal", orNull(kit.focalMm()))
                .bind("camera", kit.camera())
                .bind("pixel", orNull(kit.pixelUm()))
                .bind("amplifier", kit.amplifier())
                .bind("corrector", kit.corrector())
                .bind("filter", kit.filter())
                .bind("mirrored", kit.mirrored().map(Columns::flag))
                .bind("note", kit.note())
                .execute();
        logKept(handle, now, "kit " + kit.name(), before.map(Record::toString));
    }

    List<Kit> kits(Handle handle) {
        return handle.createQuery("select * from kit").map((rs, ctx) -> kit(rs)).stream()
                .sorted(Comparator.comparing(Kit::name))
                .toList();
    }

    /** Number of the kit with a name, which is made when there is none. */
    long kitId(Handle handle, String name, Instant now) {
        Optional<Long> id = kitId(handle, name);
        if (id.isEmpty()) {
            keepKit(handle, Kit.named(name), now);
        }
        return id.orElseGet(() -> kitId(handle, name).orElseThrow());
    }

    private static Optional<Long> kitId(Handle handle, String name) {
        return handle.createQuery("select id from kit where name = :name")
                .bind("name", name)
                .mapTo(Long.class)
                .findOne();
    }

    /** Number of the observer with a name, who is added when not there. */
    long observerId(Handle handle, String name) {
        handle.createUpdate("insert into observer (name) values (:name) on conflict (name) do nothing")
                .bind("name", name)
                .execute();
        return handle.createQuery("select id from observer where name = :name")
                .bind("name", name)
                .mapTo(Long.class)
                .one();
    }

    /** Number of a night at a site, which is added when not there. */
    long nightId(Handle handle, LocalDate evening, Optional<Long> site) {
        Optional<Long> id = handle.createQuery(
                        "select id from night where evening = :evening and coalesce(site_id, 0) = :site")
                .bind("evening", evening.toString())
                .bind("site", site.orElse(0L))
                .mapTo(Long.class)
                .findOne();
        return id.orElseGet(
                () -> handle.createQuery("insert into night (evening, site_id) values (:evening, :site) returning id")
                        .bind("evening", evening.toString())
                        .bind("site", site)
                        .mapTo(Long.class)
                        .one());
    }

    private void logKept(Handle handle, Instant now, String subject, Optional<String> before) {
        history.add(
                handle,
                now,
                before.isPresent() ? "changed" : "added",
                subject,
                before.map(b -> "before: " + b).orElse("new"));
    }

    private static Kit kit(ResultSet rs) throws SQLException {
        return new Kit(
                rs.getString("name"),
                Columns.text(rs, "telescope"),
                Columns.number(rs, "aperture_mm"),
                Columns.number(rs, "focal_mm"),
                Columns.text(rs, "camera"),
                Columns.number(rs, "pixel_um"),
                Columns.text(rs, "amplifier"),
                Columns.text(rs, "corrector"),
                Columns.text(rs, "filter"),
                Columns.flag(rs, "mirrored"),
                Columns.text(rs, "note"));
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
