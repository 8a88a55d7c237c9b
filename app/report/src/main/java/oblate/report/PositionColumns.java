/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.Locale;
import java.util.function.Function;
import oblate.archive.Feature;
import oblate.archive.StoredFit;
import oblate.disc.ErrorBudget;
import oblate.disc.SurfacePoint;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** The columns of the table of measured positions. */
final class PositionColumns {
    private final PlanetModel planet;

    PositionColumns(PlanetModel planet) {
        this.planet = planet;
    }

    void addTo(TableDraft<Position> draft) {
        what(draft);
        where(draft);
        seen(draft);
        how(draft);
    }

    private void what(TableDraft<Position> draft) {
        text(draft, "picture", "Picture", "meta.file", "file name in the archive", p -> p.picture()
                .name());
        text(draft, "sha256", "SHA-256", "meta.checksum", "SHA-256 of the picture's bytes", p -> p.picture()
                .sha256());
        text(draft, "planet", "Planet", "meta.id;src", "planet", p -> planet.id());
        text(draft, "mid_time_utc", "Time UTC", "time.epoch;obs", "middle of the capture, UTC", p -> p.mark()
                .midUtc());
        text(draft, "feature", "Feature", "meta.id", "name of the feature", p -> p.mark()
                .featureName()
                .orElse(null));
        text(draft, "what", "What", "meta.note", "part of the feature that was marked", p -> p.mark()
                .mark()
                .what());
        text(draft, "tone", "Tone", "meta.note", "bright or dark", p -> p.feature()
                .flatMap(Feature::tone)
                .orElse(null));
    }

    private void where(TableDraft<Position> draft) {
        draft.column(
                new Column(
                        "lon_deg", "Lon", "deg", "pos.bodyrc.lon", "planetographic longitude in the row's system", 2),
                p -> p.mark().longitudes().get(p.system().id()));
        text(draft, "system", "System", "meta.id;pos.bodyrc", "rotation system of lon_deg and cm_deg", p -> p.system()
                .label());
        for (RotationSystem each : planet.globe().systems()) {
            String description =
                    "planetographic longitude, " + each.label() + ", positive to the " + Wording.sense(planet);
            draft.column(
                    new Column(
                            Wording.lonColumn(each),
                            "Lon " + each.label().replace("System ", ""),
                            "deg",
                            "pos.bodyrc.lon",
                            description,
                            2),
                    p -> p.mark().longitudes().get(each.id()));
        }
        text(
                draft,
                "lon_positive",
                "Lon grows",
                "meta.code;pos.bodyrc.lon",
                "way longitudes grow on the planet",
                p -> Wording.sense(planet));
    }

    /** Latitudes, errors and how the place was seen. */
    private void seen(TableDraft<Position> draft) {
        point(
                draft,
                "lat_graphic_deg",
                "Lat",
                "pos.bodyrc.lat;pos.bodygraphic",
                "planetographic latitude",
                SurfacePoint::latGraphicDeg);
        point(
                draft,
                "lat_centric_deg",
                "Lat centric",
                "pos.bodyrc.lat",
                "planetocentric latitude",
                SurfacePoint::latCentricDeg);
        error(
                draft,
                "sigma_lon_deg",
                "+/- lon",
                "stat.error;pos.bodyrc.lon",
                "standard error of the longitude",
                ErrorBudget::totalLonDeg);
        error(
                draft,
                "sigma_lat_deg",
                "+/- lat",
                "stat.error;pos.bodyrc.lat",
                "standard error of the planetographic latitude",
                ErrorBudget::totalLatDeg);
        point(
                draft,
                "from_meridian_deg",
                "From CM",
                "pos.bodyrc.lon;arith.diff",
                "longitude minus central meridian",
                SurfacePoint::fromMeridianDeg);
        point(
                draft,
                "emission_deg",
                "Emission",
                "pos.emergenceAng",
                "angle between the local vertical and the line of sight",
                SurfacePoint::emissionDeg);
        draft.column(
                new Column(
                        "cm_deg", "CM", "deg", "pos.bodyrc.lon;obs.field", "central meridian in the row's system", 2),
                p -> p.picture().centralMeridians().get(p.system().id()));
    }

    private void how(TableDraft<Position> draft) {
        text(draft, "observer", "Observer", "meta.id;obs.observer", "observer", p -> p.picture()
                .observer()
                .orElse(null));
        text(draft, "site", "Site", "meta.id;instr.obsty", "place of observation", p -> p.picture()
                .site()
                .orElse(null));
        text(draft, "kit", "Kit", "meta.id;instr.tel", "gear", p -> p.picture()
                .kit()
                .orElse(null));
        text(draft, "filter", "Filter", "meta.id;instr.filter", "filter", p -> p.picture()
                .filter()
                .orElse(null));
        text(draft, "seeing", "Seeing", "meta.code.qual;obs.atmos", "seeing as given", p -> p.picture()
                .seeing()
                .map(r -> r.value())
                .orElse(null));
        text(
                draft,
                "seeing_scale",
                "Scale",
                "meta.note",
                "scale of the seeing; scales run in opposite directions",
                p -> p.picture().seeing().map(r -> r.scale()).orElse(null));
        text(draft, "time_source", "Time from", "meta.note;time", "where the time was found", p -> p.picture()
                .time()
                .map(t -> t.source().name().toLowerCase(Locale.ROOT))
                .orElse(null));
        draft.column(
                new Column("sigma_time_s", "+/- time", "s", "stat.error;time", "standard error of the time", 1),
                p -> p.picture().time().map(t -> t.uncertaintyS()).orElse(null));
        text(draft, "fit_method", "Fit", "meta.note", "how the disc was fitted", p -> p.fit()
                .map(f -> f.fit().method())
                .orElse(null));
        text(draft, "fit_trust", "Trust", "meta.code.qual", "trusted or doubtful", p -> p.fit()
                .map(f -> f.fit().trust().name().toLowerCase(Locale.ROOT))
                .orElse(null));
        text(draft, "measurer", "Measured by", "meta.id", "who measured, or which detector", p -> p.mark()
                .mark()
                .measurer());
        text(draft, "ephemeris", "Ephemeris", "meta.ref", "ephemeris the disc was computed with", p -> p.fit()
                .map(StoredFit::ephemeris)
                .orElse(null));
        text(draft, "software", "Software", "meta.software", "program and version that fitted the disc", p -> p.fit()
                .map(StoredFit::software)
                .orElse(null));
        draft.column(new Column("mark", "Mark", "", "meta.id", "number of the mark in the catalog", 0), p -> p.mark()
                .id());
    }

    private static void point(
            TableDraft<Position> draft,
            String name,
            String heading,
            String ucd,
            String description,
            Function<SurfacePoint, Double> value) {
        draft.column(new Column(name, heading, "deg", ucd, description, 2), p -> value.apply(p.point()));
    }

    private static void error(
            TableDraft<Position> draft,
            String name,
            String heading,
            String ucd,
            String description,
            Function<ErrorBudget, Double> value) {
        draft.column(
                new Column(name, heading, "deg", ucd, description, 2),
                p -> p.errors().map(value).orElse(null));
    }

    private static void text(
            TableDraft<Position> draft,
            String name,
            String heading,
            String ucd,
            String description,
            Function<Position, ?> value) {
        draft.column(new Column(name, heading, "", ucd, description, -1), value);
    }
}
