/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.base.PluginHost;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The drawing against places of moons, shadows and phases that were computed elsewhere; sources stand at the head of the tables. */
@Tag("truth")
class GeometryTest {
    private static final double PX = 100;
    private final Sky sky = Sky.bundled();
    private final List<PlanetModel> planets = PluginHost.bundledOnly().load(PlanetModel.class);

    private PlanetModel planet(String id) {
        return planets.stream().filter(p -> p.id().equals(id)).findFirst().orElseThrow();
    }

    private Scene scene(CsvRows.Row row) {
        return Scene.at(
                new Grounds(sky), Optional.empty(), planet(row.text("planet")), UtcTime.parse(row.text("time_utc")));
    }

    private static Placement placement(Scene scene, Facing facing, boolean mirrored) {
        return new Placement(facing.poleTurnDeg(scene.disc().northPolePaDeg()), mirrored, PX, 0, 0);
    }

    private static MoonPlace moon(Scene scene, String id) {
        return scene.moons().stream().filter(m -> m.id().equals(id)).findFirst().orElseThrow();
    }

    @Test
    void withTheSkysNorthUpMoonsStandWhereTheirOffsetsInRightAscensionAndDeclinationSay() {
        List<CsvRows.Row> rows = CsvRows.of("moons.csv");
        assertThat(rows).hasSizeGreaterThan(15);
        for (CsvRows.Row row : rows) {
            Scene scene = scene(row);
            MoonPlace moon = moon(scene, row.text("moon"));
            double pxPerArcsec = PX / row.number("planet_radius_arcsec");
            double east = row.number("dra_cosdec_arcsec") * pxPerArcsec;
            double north = row.number("ddec_arcsec") * pxPerArcsec;
            // 0.06 arcsec for orbit and series. Offsets in radii are lengths in space, those in arcsec angles, in which
            // a near moon stands wider;
            // and circles of declination are bent: by half the square of the offset times the tangent of the
            // declination, here up to 24 degrees.
            double arcsec = Math.hypot(row.number("dra_cosdec_arcsec"), row.number("ddec_arcsec"));
            double depth = (Math.abs(row.number("z_toward_earth_radii")) + 1)
                    * Math.toRadians(row.number("planet_radius_arcsec") / 3600);
            double bend = Math.toRadians(arcsec / 3600) * Math.tan(Math.toRadians(24));
            double bound = (0.06 + (depth + bend) * arcsec) * pxPerArcsec;
            for (boolean mirrored : new boolean[] {false, true}) {
                Point2D up =
                        placement(scene, Facing.SKY_NORTH_UP, mirrored).toScreen(moon.xWestRadii(), moon.yNorthRadii());
                assertThat(up.getX()).as(row.toString()).isCloseTo(mirrored ? east : -east, within(bound));
                assertThat(up.getY()).as(row.toString()).isCloseTo(-north, within(bound));
                Point2D down =
                        placement(scene, Facing.SKY_SOUTH_UP, mirrored).toScreen(moon.xWestRadii(), moon.yNorthRadii());
                assertThat(down.getX()).isCloseTo(-up.getX(), within(1e-6));
                assertThat(down.getY()).isCloseTo(-up.getY(), within(1e-6));
            }
        }
    }

    @Test
    void aShadowsLongitudeAndLatitudeAreDrawnWhereTheShadowIsSeen() {
        List<CsvRows.Row> rows = CsvRows.of("moons.csv").stream()
                .filter(r -> !r.text("shadow_lon_iau_deg").isEmpty())
                .toList();
        assertThat(rows).hasSize(3);
        for (CsvRows.Row row : rows) {
            Scene scene = scene(row);
            Point2D place = new GlobeView(scene.disc())
                    .place(row.number("shadow_lon_iau_deg"), row.number("shadow_lat_graphic_deg"))
                    .orElseThrow();
            assertThat(place.getX()).as(row.toString()).isCloseTo(row.number("shadow_x_west_radii"), within(0.001));
            assertThat(place.getY()).as(row.toString()).isCloseTo(row.number("shadow_y_north_radii"), within(0.001));
            Point2D px = placement(scene, Facing.SKY_NORTH_UP, false).toScreen(place.getX(), place.getY());
            double pxPerArcsec = PX / row.number("planet_radius_arcsec");
            assertThat(px.getX()).isCloseTo(-row.number("shadow_dra_cosdec_arcsec") * pxPerArcsec, within(0.3));
            assertThat(px.getY()).isCloseTo(-row.number("shadow_ddec_arcsec") * pxPerArcsec, within(0.3));
        }
    }

    @Test
    void theFarSideIsNotDrawn() {
        CsvRows.Row row = CsvRows.of("moons.csv").stream()
                .filter(r -> !r.text("shadow_lon_iau_deg").isEmpty())
                .findFirst()
                .orElseThrow();
        assertThat(new GlobeView(scene(row).disc())
                        .place(row.number("shadow_lon_iau_deg") + 180, -row.number("shadow_lat_graphic_deg")))
                .isEmpty();
    }

    @Test
    void outlineAndDefectHaveTheSizeAndPlaceOfTheTables() {
        List<CsvRows.Row> rows = CsvRows.of("phases.csv");
        assertThat(rows).hasSize(6);
        for (CsvRows.Row row : rows) {
            Scene scene = scene(row);
            GlobeView globe = new GlobeView(scene.disc());
            double ratio = row.number("diameter_polar_arcsec") / row.number("diameter_equatorial_arcsec");
            assertThat(globe.outline().getBounds2D().getWidth()).isCloseTo(2, within(1e-9));
            assertThat(globe.outline().getBounds2D().getHeight()).isCloseTo(2 * ratio, within(2e-4));
            Placement place = placement(scene, Facing.SKY_NORTH_UP, false);
            Shape unlit = place.transform().createTransformedShape(globe.unlit().orElseThrow());
            Middle middle = Middle.of(unlit);
            double share = middle.area() / (Math.PI * ratio * PX * PX);
            // The table's share is that of a sphere; flattening changes it by less than this.
            assertThat(share).isCloseTo(1 - row.number("illuminated_fraction"), within(0.0015));
            double pa = Math.toDegrees(Math.atan2(-middle.xPx(), -middle.yPx()));
            assertThat(Math.IEEEremainder(pa - row.number("defect_pa_deg"), 360))
                    .as(row.toString())
                    .isCloseTo(0, within(4.0));
        }
    }

    /** Area (px²) and middle (px) of a polygon. */
    private record Middle(double area, double xPx, double yPx) {
        static Middle of(Shape shape) {
            List<double[]> corners = new ArrayList<>();
            double[] at = new double[6];
            for (PathIterator i = new Path2D.Double(shape).getPathIterator(null, 0.01); !i.isDone(); i.next()) {
                if (i.currentSegment(at) != PathIterator.SEG_CLOSE) {
                    corners.add(new double[] {at[0], at[1]});
                }
            }
            double twice = 0;
            double x = 0;
            double y = 0;
            for (int i = 0; i < corners.size(); i++) {
                double[] a = corners.get(i);
                double[] b = corners.get((i + 1) % corners.size());
                double cross = a[0] * b[1] - b[0] * a[1];
                twice += cross;
                x += (a[0] + b[0]) * cross;
                y += (a[1] + b[1]) * cross;
            }
            return new Middle(Math.abs(twice) / 2, x / (3 * twice), y / (3 * twice));
        }
    }
}
