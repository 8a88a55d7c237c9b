/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;

/** The lists an observer keeps beside the pictures: {@code kits.csv}, {@code sites.csv}, {@code season.csv}, and a word about what the folder is. */
final class SeasonTables {
    private SeasonTables() {}

    static void write(Scenario scenario, List<Night> nights, Path folder) throws IOException {
        try (CSVPrinter out = TruthTables.printer(
                folder.resolve("sites.csv"), "site", "label", "lat_deg", "lon_east_deg", "height_m", "note")) {
            for (Site s : scenario.sites()) {
                out.printRecord(s.id(), s.label(), s.latDeg(), s.lonEastDeg(), s.heightM(), "invented");
            }
        }
        writeKits(scenario, nights, folder);
        writeNights(nights, folder);
        Files.writeString(
                folder.resolve("README.txt"),
                scenario.title() + "\n\n"
                        + "Everything here is invented and drawn by a program: pictures, features, sites, observers, kits, weather.\n"
                        + "Nothing here is an observation; do not report it anywhere.\n\n"
                        + "pictures/    the files as an observer would have them before filing\n"
                        + "sites.csv    where it was    kits.csv    gear    season.csv    evenings with seeing and transparency\n"
                        + "truth/       what is true about each picture, feature and mark; not for the archive\n");
    }

    private static void writeKits(Scenario scenario, List<Night> nights, Path folder) throws IOException {
        try (CSVPrinter out = TruthTables.printer(
                folder.resolve("kits.csv"),
                "kit",
                "label",
                "telescope",
                "aperture_mm",
                "focal_length_mm",
                "pixel_um",
                "camera",
                "filter",
                "mount",
                "site",
                "observer",
                "mirrored",
                "clock_zone",
                "capture_s",
                "note")) {
            for (Kit k : scenario.kits()) {
                if (nights.stream().noneMatch(n -> n.kitId().equals(k.id()))) {
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

    private static void writeNights(List<Night> nights, Path folder) throws IOException {
        try (CSVPrinter out = TruthTables.printer(
                folder.resolve("season.csv"),
                "evening",
                "site",
                "observer",
                "kit",
                "pictures",
                "seeing",
                "seeing_scale",
                "transparency",
                "transparency_scale")) {
            for (Night n : nights) {
                out.printRecord(
                        n.evening(),
                        n.siteId(),
                        n.observer(),
                        n.kitId(),
                        n.pictures(),
                        n.seeing(),
                        "Antoniadi",
                        n.transparencyMag(),
                        "limiting magnitude");
            }
        }
    }
}
