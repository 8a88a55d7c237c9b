/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Everything a season follows from. Immutable.
 *
 * @param title words
 * @param seed of all chance: textures, jitter, noise
 * @param epoch instant at which the features' longitudes are given
 * @param sites where it was
 * @param kits gear
 * @param bands belts and zones
 * @param features what drifts
 * @param nights captures
 */
record Scenario(
        String title,
        long seed,
        Instant epoch,
        List<Site> sites,
        List<Kit> kits,
        List<CloudBand> bands,
        List<Feature> features,
        List<NightPlan> nights) {

    private static final CSVFormat TABLE = CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setCommentMarker('#')
            .get();
    /** The season's opposition is on this day. */
    private static final Instant EPOCH = Instant.parse("2023-11-03T00:00:00Z");

    Scenario {
        sites = List.copyOf(sites);
        kits = List.copyOf(kits);
        bands = List.copyOf(bands);
        features = List.copyOf(features);
        nights = List.copyOf(nights);
    }

    /** The season that ships, from the tables beside this class. */
    static Scenario standard() {
        return shipped("An invented season of Jupiter", "nights.csv");
    }

    /** One evening of the same season. */
    static Scenario oneNight() {
        return shipped("An invented evening of Jupiter", "one-night.csv");
    }

    private static Scenario shipped(String title, String nights) {
        return new Scenario(
                title,
                20231103L,
                EPOCH,
                rows("sites.csv", Scenario::site),
                rows("kits.csv", Scenario::kit),
                rows("bands.csv", Scenario::band),
                rows("features.csv", Scenario::feature),
                rows(nights, Scenario::night));
    }

    Kit kit(String id) {
        return kits.stream().filter(k -> k.id().equals(id)).findFirst().orElseThrow();
    }

    Site site(String id) {
        return sites.stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
    }

    private static <T> List<T> rows(String name, Function<CSVRecord, T> maker) {
        try (InputStream in = Scenario.class.getResourceAsStream(name);
                var records = TABLE.parse(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return records.stream().map(maker).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static Optional<String> maybe(CSVRecord row, String column) {
        return Optional.of(row.get(column)).filter(s -> !s.isEmpty());
    }

    private static Site site(CSVRecord r) {
        return new Site(
                r.get("site"), r.get("label"), number(r, "lat_deg"), number(r, "lon_east_deg"), number(r, "height_m"));
    }

    private static CloudBand band(CSVRecord r) {
        return new CloudBand(
                r.get("name"),
                number(r, "south_deg"),
                number(r, "north_deg"),
                number(r, "red"),
                number(r, "green"),
                number(r, "blue"),
                number(r, "texture"),
                number(r, "wave_deg"),
                Integer.parseInt(r.get("system")),
                number(r, "rate_deg_per_day"));
    }

    static Feature feature(CSVRecord r) {
        return new Feature(
                r.get("feature"),
                r.get("kind"),
                Feature.Tone.valueOf(r.get("tone").toUpperCase(Locale.ROOT)),
                r.get("system"),
                number(r, "lon_deg"),
                number(r, "rate_deg_per_day"),
                maybe(r, "change_day")
                        .map(day -> new Feature.Change(Double.parseDouble(day), number(r, "rate_after_deg_per_day"))),
                number(r, "lat_graphic_deg"),
                number(r, "semi_lon_deg"),
                number(r, "semi_lat_deg"),
                new Feature.Look(
                        number(r, "red"),
                        number(r, "green"),
                        number(r, "blue"),
                        number(r, "strength"),
                        r.get("colour")));
    }

    private static Kit kit(CSVRecord r) {
        return new Kit(
                r.get("kit"),
                r.get("label"),
                new Kit.Gear(
                        r.get("telescope"),
                        number(r, "aperture_mm"),
                        number(r, "focal_length_mm"),
                        number(r, "pixel_um"),
                        r.get("camera"),
                        r.get("filter"),
                        r.get("mount")),
                r.get("site"),
                r.get("observer"),
                FileKind.valueOf(r.get("file_kind")),
                TimeCarrier.valueOf(r.get("carrier")),
                ZoneOffset.of(r.get("zone")),
                new Kit.Optics(
                        number(r, "scale_arcsec_per_px"),
                        Integer.parseInt(r.get("width_px")),
                        Integer.parseInt(r.get("height_px")),
                        number(r, "turn_deg"),
                        r.get("mirrored").equals("yes"),
                        r.get("altazimuth").equals("yes")),
                number(r, "capture_s"),
                new Kit.Processing(
                        number(r, "dispersion_left"),
                        number(r, "seeing_floor_arcsec"),
                        number(r, "sharpen_fine"),
                        number(r, "sharpen_coarse"),
                        number(r, "noise"),
                        number(r, "black"),
                        number(r, "gamma")));
    }

    private static NightPlan night(CSVRecord r) {
        return new NightPlan(
                LocalDate.parse(r.get("evening")),
                r.get("kit"),
                Instant.parse(r.get("first_mid_utc")),
                number(r, "step_s"),
                Integer.parseInt(r.get("count")),
                Integer.parseInt(r.get("seeing_antoniadi")),
                number(r, "transparency_mag"),
                Integer.parseInt(r.get("clock_error_s")),
                maybe(r, "file_kind").map(FileKind::valueOf),
                maybe(r, "carrier").map(TimeCarrier::valueOf));
    }
}
