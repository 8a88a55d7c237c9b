/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.disc.SurfacePoint;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** The table of measured positions. Used for one table. */
final class PositionTable {
    private final Archive archive;
    private final PlanetModel planet;
    private final Optional<RotationSystem> system;
    private final Map<Long, Optional<ArchivedPicture>> pictures = new HashMap<>();
    private final Map<Long, List<StoredFit>> fits = new HashMap<>();

    PositionTable(Archive archive, PlanetModel planet, Optional<RotationSystem> system) {
        this.archive = archive;
        this.planet = planet;
        this.system = system;
    }

    ReportTable of(MarkSearch search) {
        MarkSearch ofPlanet = new MarkSearch(
                Optional.of(planet.id()), search.pictureId(), search.featureName(), search.from(), search.to(), false);
        Map<String, Feature> features = new HashMap<>();
        archive.features(planet.id()).forEach(feature -> features.put(feature.name(), feature));
        List<Position> positions = new ArrayList<>();
        for (StoredMark mark : archive.marks(ofPlanet)) {
            Optional<ArchivedPicture> picture = picture(mark.mark().pictureId());
            if (mark.isCurrent() && mark.mark().point().isPresent() && picture.isPresent()) {
                positions.add(position(mark, picture.get(), features));
            }
        }
        positions.sort(Comparator.comparing((Position p) -> p.mark().midUtc())
                .thenComparing(p -> p.mark().id()));
        TableDraft<Position> draft = new TableDraft<>("Positions on " + planet.label());
        facts(draft, positions);
        what(draft);
        where(draft);
        seen(draft);
        how(draft);
        return draft.rows(positions);
    }

    private Position position(StoredMark mark, ArchivedPicture picture, Map<String, Feature> features) {
        Optional<Feature> feature = mark.featureName().map(features::get);
        double lat = mark.mark().point().orElseThrow().latGraphicDeg();
        RotationSystem stated = system.or(() -> feature.flatMap(Feature::systemId)
                        .flatMap(id -> planet.globe().system(id)))
                .orElseGet(() -> planet.customarySystem(lat));
        return new Position(mark, picture, fit(mark), feature, stated);
    }

    private Optional<ArchivedPicture> picture(long id) {
        return pictures.computeIfAbsent(id, archive::picture);
    }

    private Optional<StoredFit> fit(StoredMark mark) {
        return mark.mark()
                .fitId()
                .flatMap(id -> fits.computeIfAbsent(mark.mark().pictureId(), archive::fitHistory).stream()
                        .filter(fit -> fit.id() == id)
                        .findFirst());
    }

    private void facts(TableDraft<Position> draft, List<Position> positions) {
        draft.fact("planet", planet.label())
                .fact("longitudes", Wording.longitudes(planet))
                .fact("systems", Wording.systems(planet))
                .fact("latitudes", "lat_graphic_deg planetographic, lat_centric_deg planetocentric, north positive")
                .fact("shape", Wording.radii(planet))
                .fact("central meridian", "geometric, no phase correction, light time removed")
                .fact("times", "UTC, middle of the capture")
                .fact(
                        "errors",
                        "one standard error, from the pick, the disc's centre, scale and pole angle, and the time, with their correlations")
                .fact(
                        "ephemeris",
                        distinct(positions.stream()
                                .flatMap(p -> p.fit().stream())
                                .map(StoredFit::ephemeris)))
                .fact(
                        "measured with",
                        distinct(positions.stream()
                                .flatMap(p -> p.fit().stream())
                                .map(StoredFit::software)))
                .fact("observers", distinct(positions.stream().flatMap(p -> p.picture().observer().stream())))
                .fact("sites", distinct(positions.stream().flatMap(p -> p.picture().site().stream())))
                .fact("kits", distinct(positions.stream().flatMap(p -> p.picture().kit().stream())))
                .fact("software", Software.nameAndVersion());
    }

    private static String distinct(Stream<String> words) {
        return words.distinct().sorted().collect(Collectors.joining(", "));
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
