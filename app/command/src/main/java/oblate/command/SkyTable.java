/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import oblate.report.Column;
import oblate.report.ReportTable;
import oblate.sky.ApparentDisc;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.LeapSeconds;
import oblate.sky.RingAspect;
import oblate.sky.SubPoint;

/** The table of {@code oblate sky}: one row per instant, or for reading one column per instant. */
final class SkyTable {

    private final LeapSeconds leapSeconds;
    private final Optional<GroundSky> ground;
    private final Wavelengths colours;

    SkyTable(LeapSeconds leapSeconds, Optional<GroundSky> ground, Wavelengths colours) {
        this.leapSeconds = leapSeconds;
        this.ground = ground;
        this.colours = colours;
    }

    /** One row per instant. */
    ReportTable rows(List<SkyRow> rows) {
        TableOf<SkyRow> table = new TableOf<>("Apparent discs");
        table.fact("observer", "Earth's centre")
                .fact("central meridian", "geometric, no phase correction")
                .fact("longitudes", "planetographic, counted as lon_positive says");
        rows.stream()
                .findFirst()
                .ifPresent(r -> table.fact("ephemeris", r.disc().ephemeris()));
        Discs t = new Discs(table);
        place(t);
        subPoint(t, "sub_earth", ApparentDisc::subEarth);
        subPoint(t, "sub_solar", ApparentDisc::subSolar);
        angles(t);
        t.text("leap_seconds", "table of leap seconds used", d -> leapSeconds.saidOf(d.time()));
        ground.ifPresent(g -> ground(table, g.site()));
        return table.rows(rows);
    }

    /** Columns of the disc alone. */
    private record Discs(TableOf<SkyRow> table) {
        void text(String name, String description, Function<ApparentDisc, Object> value) {
            table.text(name, description, r -> value.apply(r.disc()));
        }

        void number(String name, String unit, int decimals, String description, Function<ApparentDisc, Object> value) {
            table.number(name, unit, decimals, description, r -> value.apply(r.disc()));
        }
    }

    private void ground(TableOf<SkyRow> t, GroundSite site) {
        t.fact(
                "site",
                String.format(
                        Locale.ROOT,
                        "latitude %.4f deg, longitude %.4f deg east, height %.0f m; what the columns from altitude_deg on tell is seen from there",
                        site.latDeg(),
                        site.lonEastDeg(),
                        site.heightM()));
        t.fact("air", "standard atmosphere; no refraction is told below 5 deg");
        over(t, "altitude_deg", "deg", 4, "without refraction", GroundView::altitudeDeg);
        over(t, "altitude_refracted_deg", "deg", 4, "lifted by refraction", GroundView::refractedAltitudeDeg);
        over(t, "azimuth_deg", "deg", 4, "from north through east", GroundView::azimuthDeg);
        over(t, "parallactic_angle_deg", "deg", 4, "position angle of the zenith", GroundView::parallacticAngleDeg);
        over(t, "hour_angle_deg", "deg", 4, "west of the meridian", GroundView::hourAngleDeg);
        over(t, "air_mass", "", 3, "1 in the zenith", GroundView::airMass);
        over(
                t,
                "dispersion_arcsec",
                "arcsec",
                3,
                String.format(
                        Locale.ROOT,
                        "how much higher %.0f nm is seen than %.0f nm",
                        colours.shortNm(),
                        colours.longNm()),
                v -> v.dispersionArcsec(colours.shortNm(), colours.longNm()));
        over(t, "sun_altitude_deg", "deg", 4, "Sun's centre, without refraction", GroundView::sunAltitudeDeg);
        over(t, "sun_separation_deg", "deg", 2, "angle planet to Sun", GroundView::sunSeparationDeg);
        t.text("twilight", "day, civil, nautical, astronomical, night", r -> r.ground()
                .map(v -> v.twilight().word())
                .orElse(null));
        over(t, "ra_topocentric_deg", "deg", 6, "right ascension of date, from the site", GroundView::raDeg);
        over(t, "dec_topocentric_deg", "deg", 6, "declination of date, from the site", GroundView::decDeg);
        over(t, "distance_topocentric_au", "AU", 8, "distance from the site", GroundView::distanceAu);
    }

    private static void over(
            TableOf<SkyRow> t,
            String name,
            String unit,
            int decimals,
            String description,
            Function<GroundView, Double> value) {
        t.number(name, unit, decimals, description, r -> r.ground().map(value).orElse(null));
    }

    private static void place(Discs t) {
        t.text("time_utc", "instant of observation, UTC", d -> d.time().iso());
        t.text("body", "planet", d -> d.planet().id());
        t.number("tt_minus_utc_s", "s", 3, "TT - UTC", ApparentDisc::ttMinusUtcS);
        t.number("ra_apparent_deg", "deg", 6, "right ascension, true equator of date", ApparentDisc::raApparentDeg);
        t.number("dec_apparent_deg", "deg", 6, "declination, true equator of date", ApparentDisc::decApparentDeg);
        t.number("distance_au", "AU", 8, "distance from the Earth", ApparentDisc::distanceAu);
        t.number("light_time_s", "s", 3, "light time", ApparentDisc::lightTimeS);
        t.number("sun_distance_au", "AU", 8, "distance from the Sun", ApparentDisc::sunDistanceAu);
        t.number("elongation_deg", "deg", 3, "angle Sun-Earth-planet", ApparentDisc::elongationDeg);
        t.number("diameter_equatorial_arcsec", "arcsec", 4, "equatorial", ApparentDisc::diameterEquatorialArcsec);
        t.number("diameter_polar_arcsec", "arcsec", 4, "short axis as seen", ApparentDisc::diameterPolarArcsec);
        t.number("phase_angle_deg", "deg", 5, "angle Sun-planet-Earth", ApparentDisc::phaseAngleDeg);
        t.number("illuminated_fraction", "", 6, "lit share of the disc", ApparentDisc::illuminatedFraction);
        t.text(
                "lon_positive",
                "way longitudes grow",
                d -> d.planet().globe().longitudePositive().name().toLowerCase(Locale.ROOT));
    }

    private static void subPoint(Discs t, String name, Function<ApparentDisc, SubPoint> point) {
        t.number(name + "_lon_deg", "deg", 5, "longitude, IAU system", d -> point.apply(d)
                .iauLonDeg());
        for (String id : List.of("1", "2", "3")) {
            t.number(name + "_lon_sys" + id + "_deg", "deg", 5, "longitude, System " + id, d -> d.planet()
                    .globe()
                    .system(id)
                    .map(s -> point.apply(d).lonDeg(s))
                    .orElse(null));
        }
        t.number(name + "_lat_centric_deg", "deg", 5, "planetocentric latitude", d -> point.apply(d)
                .latCentricDeg());
        t.number(name + "_lat_graphic_deg", "deg", 5, "planetographic latitude", d -> point.apply(d)
                .latGraphicDeg());
    }

    private static void angles(Discs t) {
        t.number(
                "north_pole_pa_deg",
                "deg",
                5,
                "position angle of the north pole, of date",
                ApparentDisc::northPolePaDeg);
        t.number("north_pole_pa_icrf_deg", "deg", 5, "the same, ICRF", ApparentDisc::northPolePaIcrfDeg);
        t.number("bright_limb_pa_deg", "deg", 5, "middle of the sunlit limb", ApparentDisc::brightLimbPaDeg);
        t.number("defect_pa_deg", "deg", 5, "greatest defect of illumination", ApparentDisc::defectPaDeg);
        ring(t, "ring_opening_earth_deg", "deg", 5, RingAspect::openingEarthDeg);
        ring(t, "ring_opening_sun_deg", "deg", 5, RingAspect::openingSunDeg);
        ring(t, "ring_outer_semi_major_arcsec", "arcsec", 4, RingAspect::outerSemiMajorArcsec);
        ring(t, "ring_outer_semi_minor_arcsec", "arcsec", 4, RingAspect::outerSemiMinorArcsec);
        t.number("equatorial_radius_km", "km", 2, "IAU 2015", d -> d.planet()
                .globe()
                .figure()
                .equatorialRadiusKm());
        t.number("polar_radius_km", "km", 2, "IAU 2015", d -> d.planet()
                .globe()
                .figure()
                .polarRadiusKm());
        t.text("ephemeris", "planetary ephemeris", ApparentDisc::ephemeris);
    }

    private static void ring(Discs t, String name, String unit, int decimals, Function<RingAspect, Double> value) {
        t.number(name, unit, decimals, "rings", d -> d.rings().map(value).orElse(null));
    }

    /** For reading: one line per quantity, one column per instant; quantities nothing has are left out. */
    ReportTable turned(List<SkyRow> instants) {
        ReportTable wide = rows(instants);
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("quantity", "quantity", "", "", "what", -1));
        columns.add(new Column("unit", "unit", "", "", "unit", -1));
        for (int i = 0; i < instants.size(); i++) {
            columns.add(
                    new Column("value_" + (i + 1), instants.get(i).disc().time().iso(), "", "", "value", -1));
        }
        List<List<Object>> lines = new ArrayList<>();
        for (int c = 1; c < wide.columns().size(); c++) {
            Column column = wide.columns().get(c);
            List<Object> line = new ArrayList<>();
            line.add(column.name());
            line.add(column.unit());
            boolean any = false;
            for (List<Object> row : wide.rows()) {
                Object value = row.get(c);
                any |= value != null;
                line.add(
                        value instanceof Double d
                                ? String.format(Locale.ROOT, "%." + column.decimals() + "f", d)
                                : value);
            }
            if (any) {
                lines.add(line);
            }
        }
        return new ReportTable(wide.title(), wide.facts(), columns, lines);
    }
}
