/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import oblate.base.ProblemException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/** The truth as three CSV files (RFC 4180, lower-case columns with the unit at the end). */
final class TruthTables {
    static final String PICTURES = "truth/pictures.csv";
    static final String FEATURES = "truth/features.csv";
    static final String MARKS = "truth/marks.csv";

    private static final CSVFormat READING =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    private static final String[] PICTURE_COLUMNS = {
        "file",
        "planet",
        "mid_time_utc",
        "stated_mid_time_utc",
        "carrier",
        "clock_error_s",
        "wrong_clock",
        "kit",
        "evening",
        "seeing_antoniadi",
        "file_kind",
        "width_px",
        "height_px",
        "channels",
        "cx",
        "cy",
        "re_px",
        "pole_angle_deg",
        "mirrored",
        "cm1_deg",
        "cm2_deg",
        "cm3_deg",
        "sub_earth_lat_graphic_deg",
        "capture_s",
        "seeing_arcsec",
        "blur_px",
        "red_shift_x_px",
        "red_shift_y_px"
    };
    private static final String[] FEATURE_COLUMNS = {
        "feature",
        "kind",
        "tone",
        "system",
        "lon_deg",
        "epoch_utc",
        "rate_deg_per_day",
        "change_day",
        "rate_after_deg_per_day",
        "lat_graphic_deg",
        "semi_lon_deg",
        "semi_lat_deg",
        "red",
        "green",
        "blue",
        "strength",
        "colour"
    };
    private static final String[] MARK_COLUMNS = {
        "picture",
        "feature",
        "kind",
        "x",
        "y",
        "lon_sys1_deg",
        "lon_sys2_deg",
        "lon_sys3_deg",
        "lat_graphic_deg",
        "emission_deg"
    };

    private TruthTables() {}

    static void write(SampleTruth truth, Path folder) throws IOException {
        Files.createDirectories(folder.resolve("truth"));
        try (CSVPrinter out = printer(folder.resolve(PICTURES), PICTURE_COLUMNS)) {
            for (SampleTruth.Picture p : truth.pictures()) {
                writePicture(p, out);
            }
        }
        try (CSVPrinter out = printer(folder.resolve(FEATURES), FEATURE_COLUMNS)) {
            for (Feature f : truth.features()) {
                writeFeature(f, truth.epoch(), out);
            }
        }
        try (CSVPrinter out = printer(folder.resolve(MARKS), MARK_COLUMNS)) {
            for (SampleTruth.Mark m : truth.marks()) {
                writeMark(m, out);
            }
        }
    }

    /** Opens a table with its head written; lines end in CR LF as RFC 4180 wants. */
    static CSVPrinter printer(Path file, String... columns) throws IOException {
        CSVPrinter printer = new CSVPrinter(Files.newBufferedWriter(file), CSVFormat.RFC4180);
        printer.printRecord((Object[]) columns);
        return printer;
    }

    private static void writePicture(SampleTruth.Picture p, CSVPrinter out) throws IOException {
        out.printRecord(
                p.file(),
                p.planet(),
                p.mid(),
                p.stated().map(Instant::toString).orElse(""),
                p.carrier().name().toLowerCase(Locale.ROOT),
                p.clockErrorS(),
                p.wrongClock(),
                p.kitId(),
                p.evening(),
                p.seeing(),
                p.fileKind().name().toLowerCase(Locale.ROOT),
                p.widthPx(),
                p.heightPx(),
                p.channels(),
                fixed(p.cxPx(), 4),
                fixed(p.cyPx(), 4),
                fixed(p.rePx(), 4),
                fixed(p.poleAngleDeg(), 4),
                p.mirrored() ? "yes" : "no",
                fixed(p.cm1Deg(), 4),
                fixed(p.cm2Deg(), 4),
                fixed(p.cm3Deg(), 4),
                fixed(p.subEarthLatGraphicDeg(), 4),
                fixed(p.captureS(), 1),
                fixed(p.seeingArcsec(), 3),
                fixed(p.blurPx(), 3),
                fixed(p.redShiftXPx(), 3),
                fixed(p.redShiftYPx(), 3));
    }

    private static void writeFeature(Feature f, Instant epoch, CSVPrinter out) throws IOException {
        out.printRecord(
                f.name(),
                f.kind(),
                f.tone().name().toLowerCase(Locale.ROOT),
                f.systemId(),
                f.lonDeg(),
                epoch,
                f.rateDegPerDay(),
                f.change().map(c -> Double.toString(c.day())).orElse(""),
                f.change().map(c -> Double.toString(c.rateAfterDegPerDay())).orElse(""),
                f.latGraphicDeg(),
                f.semiLonDeg(),
                f.semiLatDeg(),
                f.look().red(),
                f.look().green(),
                f.look().blue(),
                f.look().strength(),
                f.look().words());
    }

    private static void writeMark(SampleTruth.Mark m, CSVPrinter out) throws IOException {
        out.printRecord(
                m.picture(),
                m.feature(),
                m.kind(),
                fixed(m.xPx(), 4),
                fixed(m.yPx(), 4),
                m.place().map(p -> fixed(p.lon1Deg(), 4)).orElse(""),
                m.place().map(p -> fixed(p.lon2Deg(), 4)).orElse(""),
                m.place().map(p -> fixed(p.lon3Deg(), 4)).orElse(""),
                m.place().map(p -> fixed(p.latGraphicDeg(), 4)).orElse(""),
                m.place().map(p -> fixed(p.emissionDeg(), 3)).orElse(""));
    }

    static String fixed(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value + 0.0);
    }

    static SampleTruth read(Path folder) {
        List<CSVRecord> featureRows = records(folder.resolve(FEATURES));
        Instant epoch = featureRows.isEmpty()
                ? Instant.EPOCH
                : Instant.parse(featureRows.get(0).get("epoch_utc"));
        return new SampleTruth(
                epoch,
                made(folder.resolve(PICTURES), records(folder.resolve(PICTURES)), TruthTables::picture),
                made(folder.resolve(FEATURES), featureRows, Scenario::feature),
                made(folder.resolve(MARKS), records(folder.resolve(MARKS)), TruthTables::mark));
    }

    private static List<CSVRecord> records(Path file) {
        try (var reader = Files.newBufferedReader(file);
                var parser = READING.parse(reader)) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new ProblemException(e, SampleProblem.CANNOT_READ, file, e);
        }
    }

    private static <T> List<T> made(Path file, List<CSVRecord> rows, Function<CSVRecord, T> maker) {
        try {
            return rows.stream().map(maker).toList();
        } catch (IllegalArgumentException | DateTimeException e) {
            throw new ProblemException(e, SampleProblem.CANNOT_READ, file, e.getMessage());
        }
    }

    private static double number(CSVRecord r, String column) {
        return Double.parseDouble(r.get(column));
    }

    private static int whole(CSVRecord r, String column) {
        return Integer.parseInt(r.get(column));
    }

    private static SampleTruth.Picture picture(CSVRecord r) {
        return new SampleTruth.Picture(
                r.get("file"),
                r.get("planet"),
                Instant.parse(r.get("mid_time_utc")),
                Optional.of(r.get("stated_mid_time_utc"))
                        .filter(s -> !s.isEmpty())
                        .map(Instant::parse),
                TimeCarrier.valueOf(r.get("carrier").toUpperCase(Locale.ROOT)),
                whole(r, "clock_error_s"),
                r.get("wrong_clock"),
                r.get("kit"),
                LocalDate.parse(r.get("evening")),
                whole(r, "seeing_antoniadi"),
                FileKind.valueOf(r.get("file_kind").toUpperCase(Locale.ROOT)),
                whole(r, "width_px"),
                whole(r, "height_px"),
                whole(r, "channels"),
                number(r, "cx"),
                number(r, "cy"),
                number(r, "re_px"),
                number(r, "pole_angle_deg"),
                r.get("mirrored").equals("yes"),
                number(r, "cm1_deg"),
                number(r, "cm2_deg"),
                number(r, "cm3_deg"),
                number(r, "sub_earth_lat_graphic_deg"),
                number(r, "capture_s"),
                number(r, "seeing_arcsec"),
                number(r, "blur_px"),
                number(r, "red_shift_x_px"),
                number(r, "red_shift_y_px"));
    }

    private static SampleTruth.Mark mark(CSVRecord r) {
        Optional<SampleTruth.Place> place = r.get("lat_graphic_deg").isEmpty()
                ? Optional.empty()
                : Optional.of(new SampleTruth.Place(
                        number(r, "lon_sys1_deg"),
                        number(r, "lon_sys2_deg"),
                        number(r, "lon_sys3_deg"),
                        number(r, "lat_graphic_deg"),
                        number(r, "emission_deg")));
        return new SampleTruth.Mark(
                r.get("picture"), r.get("feature"), r.get("kind"), number(r, "x"), number(r, "y"), place);
    }
}
