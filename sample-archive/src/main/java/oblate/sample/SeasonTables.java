package oblate.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVPrinter;

/** The lists an observer keeps beside the pictures: {@code kits.csv}, {@code sites.csv}, {@code season.csv}, and a word about what the folder is. */
final class SeasonTables {
    private SeasonTables() {}

    static void write(Scenario scenario, List<Shot> shots, Path folder) throws IOException {
        try (CSVPrinter out = TruthTables.printer(
                folder.resolve("sites.csv"), "site", "label", "lat_deg", "lon_east_deg", "height_m", "note")) {
            for (Site s : scenario.sites()) {
                out.printRecord(s.id(), s.label(), s.latDeg(), s.lonEastDeg(), s.heightM(), "invented");
            }
        }
        writeKits(scenario, shots, folder);
        writeNights(shots, folder);
        Files.writeString(
                folder.resolve("README.txt"),
                scenario.title() + "\n\n"
                        + "Everything here is invented and drawn by a program: pictures, features, sites, observers, kits, weather.\n"
                        + "Nothing here is an observation; do not report it anywhere.\n\n"
                        + "pictures/    the files as an observer would have them before filing\n"
                        + "sites.csv    where it was    kits.csv    gear    season.csv    evenings with seeing and transparency\n"
                        + "truth/       what is true about each picture, feature and mark; not for the archive\n");
    }

    private static void writeKits(Scenario scenario, List<Shot> shots, Path folder) throws IOException {
        try (CSVPrinter out = TruthTables.printer(
                folder.resolve("kits.csv"),
                "kit", "label", "telescope", "aperture_mm", "focal_length_mm", "pixel_um", "camera", "filter", "mount", "site",
                "observer", "mirrored", "clock_zone", "capture_s", "note")) {
            for (Kit k : scenario.kits()) {
                if (shots.stream().noneMatch(s -> s.kit().id().equals(k.id()))) {
                    continue;
                }
                Kit.Gear gear = k.gear();
                out.printRecord(
                        k.id(),
                        k.label(),
                        gear.telescope(),
                        gear.apertureMm(),
                        gear.focalLengthMm(),
                        gear.pixelUm(),
                        gear.camera(),
                        gear.filter(),
                        gear.mount(),
                        k.siteId(),
                        k.observer(),
                        k.optics().mirrored() ? "yes" : "no",
                        k.zone(),
                        k.captureS(),
                        "invented");
            }
        }
    }

    private static void writeNights(List<Shot> shots, Path folder) throws IOException {
        Map<String, Integer> pictures = new LinkedHashMap<>();
        Map<String, Shot> first = new LinkedHashMap<>();
        for (Shot s : shots) {
            String key = s.evening() + " " + s.kit().id();
            pictures.merge(key, 1, Integer::sum);
            first.putIfAbsent(key, s);
        }
        try (CSVPrinter out = TruthTables.printer(
                folder.resolve("season.csv"),
                "evening", "site", "observer", "kit", "pictures", "seeing", "seeing_scale", "transparency",
                "transparency_scale")) {
            for (Map.Entry<String, Shot> night : first.entrySet()) {
                Shot s = night.getValue();
                out.printRecord(
                        s.evening(),
                        s.kit().siteId(),
                        s.kit().observer(),
                        s.kit().id(),
                        pictures.get(night.getKey()),
                        s.plan().seeing(),
                        "Antoniadi",
                        s.plan().transparencyMag(),
                        "limiting magnitude");
            }
        }
    }
}
