/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.disc.Placement;
import oblate.disc.SurfacePoint;
import oblate.report.ReportTable;

/** The table of {@code oblate marks}. */
final class MarkTable {
    private final Services services;
    private final Archive archive;
    private final Map<Long, ArchivedPicture> pictures = new HashMap<>();
    private final Map<Long, Optional<Placement>> placements = new HashMap<>();

    MarkTable(Services services, Archive archive) {
        this.services = services;
        this.archive = archive;
    }

    ReportTable of(List<StoredMark> marks) {
        TableOf<StoredMark> t = new TableOf<>("Marks");
        t.fact("latitudes", "planetographic; lon_sys columns are planetographic longitudes at the picture's mid-time");
        t.fact("offsets", "x to celestial west along the equator as seen, y north, in equatorial radii");
        t.text("mark", "number", m -> m.id());
        t.text("feature", "feature", m -> m.featureName().orElse(null));
        t.text("mid_time_utc", "picture's mid-time", m -> m.midUtc().toString());
        t.text("picture", "picture", m -> picture(m).name());
        for (String id : List.of("1", "2", "3", "iau")) {
            t.number("lon_" + (id.equals("iau") ? id : "sys" + id) + "_deg", "deg", 2, "longitude", m -> m.longitudes()
                    .get(id));
        }
        point(t, "lat_graphic_deg", SurfacePoint::latGraphicDeg);
        t.number("sigma_lon_deg", "deg", 2, "standard error", m -> m.mark()
                .errors()
                .map(ErrorBudget::totalLonDeg)
                .orElse(null));
        t.number("sigma_lat_deg", "deg", 2, "standard error", m -> m.mark()
                .errors()
                .map(ErrorBudget::totalLatDeg)
                .orElse(null));
        point(t, "from_meridian_deg", SurfacePoint::fromMeridianDeg);
        point(t, "emission_deg", SurfacePoint::emissionDeg);
        t.number("x_px", "px", 2, "right", m -> m.mark().pixel().xPx());
        t.number("y_px", "px", 2, "down", m -> m.mark().pixel().yPx());
        t.number("x_west_radii", "", 3, "offset from the disc's centre", m -> offset(m)
                .map(o -> o[0])
                .orElse(null));
        t.number("y_north_radii", "", 3, "offset from the disc's centre", m -> offset(m)
                .map(o -> o[1])
                .orElse(null));
        t.text("what", "what was measured", m -> m.mark().what());
        t.text("measurer", "who measured", m -> m.mark().measurer());
        t.text("state", "current, or what became of it", MarkTable::state);
        return t.rows(marks);
    }

    private static void point(TableOf<StoredMark> t, String name, Function<SurfacePoint, Double> value) {
        t.number(name, "deg", 2, name, m -> m.mark().point().map(value).orElse(null));
    }

    private ArchivedPicture picture(StoredMark mark) {
        return pictures.computeIfAbsent(
                mark.mark().pictureId(), id -> archive.picture(id).orElseThrow());
    }

    private Optional<double[]> offset(StoredMark mark) {
        return placements
                .computeIfAbsent(
                        mark.mark().pictureId(),
                        id -> archive.currentFit(id).map(StoredFit::fit).map(f -> f.placement()))
                .map(p -> offset(p, mark));
    }

    private static double[] offset(Placement p, StoredMark mark) {
        double a = Math.toRadians(p.poleAngleDeg());
        double dx = (mark.mark().pixel().xPx() - p.centreXPx()) / p.equatorialRadiusPx();
        double dy = (mark.mark().pixel().yPx() - p.centreYPx()) / p.equatorialRadiusPx();
        double west = dx * Math.cos(a) - dy * Math.sin(a);
        return new double[] {p.mirrored() ? -west : west, -dx * Math.sin(a) - dy * Math.cos(a)};
    }

    private static String state(StoredMark mark) {
        return mark.supersededBy()
                .map(by -> "superseded by " + by)
                .or(() -> mark.withdrawnReason().map(why -> "withdrawn: " + why))
                .orElse("current");
    }
}
