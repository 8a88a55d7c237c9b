/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import oblate.sky.Sky;
import oblate.sky.SkyData;
import oblate.sky.SkyDataFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code oblate data}. */
@Command(
        name = "data",
        mixinStandardHelpOptions = true,
        description = {
            "Which planet positions and leap seconds are in use, how far they reach, and where to put newer ones.",
            "Exit status 1 when a file of the settings folder is refused."
        },
        footer = {"", "Example:  oblate data"})
final class DataCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Mixin
    private OutputOptions output;

    DataCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    private record Row(String kind, String fate, String name, String from, String to, String file, String note) {}

    @Override
    public Integer call() {
        SkyData data = services.skyData();
        Sky sky = data.sky();
        List<Row> rows = new ArrayList<>();
        rows.add(new Row(
                "ephemeris",
                "used",
                data.ephemeris().name(),
                sky.firstInstant().toString(),
                sky.lastInstant().toString(),
                file(data, SkyDataFile.Kind.EPHEMERIS),
                "put newer files into " + services.settingsFolder().resolve(SkyDataFile.Kind.EPHEMERIS.folder())));
        LocalDate today = services.clock().instant().atZone(ZoneOffset.UTC).toLocalDate();
        boolean isPast = !today.isBefore(data.leapSeconds().expires());
        rows.add(new Row(
                "leap seconds",
                "used",
                data.leapSeconds().origin(),
                "1960-01-01T00:00:00Z",
                data.leapSeconds().expires() + "T00:00:00Z",
                file(data, SkyDataFile.Kind.LEAP_SECONDS),
                (isPast ? "expired, the last offset is held; " : "")
                        + "put a newer list into "
                        + services.settingsFolder().resolve(SkyDataFile.Kind.LEAP_SECONDS.folder())));
        boolean refused = false;
        for (SkyDataFile file : data.files()) {
            if (file.fate() != SkyDataFile.Fate.USED) {
                refused |= file.fate() == SkyDataFile.Fate.REFUSED;
                rows.add(new Row(
                        file.kind() == SkyDataFile.Kind.EPHEMERIS ? "ephemeris" : "leap seconds",
                        file.fate().name().toLowerCase(Locale.ROOT),
                        null,
                        null,
                        null,
                        file.file().toString(),
                        file.why().orElse(null)));
            }
        }
        output.write(table().rows(rows), services, console);
        return refused ? 1 : 0;
    }

    private static String file(SkyData data, SkyDataFile.Kind kind) {
        return data.files().stream()
                .filter(f -> f.kind() == kind && f.fate() == SkyDataFile.Fate.USED)
                .findFirst()
                .map(f -> f.file().toString())
                .orElse("bundled");
    }

    private static TableOf<Row> table() {
        TableOf<Row> t = new TableOf<>("Data of the sky");
        t.fact("ephemeris", "planet positions, a file in the JPL binary layout of either byte order, plain or .gz");
        t.fact("leap seconds", "a leap-seconds.list or a Leap_Second.dat");
        t.text("kind", "ephemeris or leap seconds", Row::kind);
        t.text("state", "used, spare (another is newer), refused", Row::fate);
        t.text("name", "what results name", Row::name);
        t.text("from_utc", "reaches from", Row::from);
        t.text("to_utc", "reaches to", Row::to);
        t.text("file", "where it is", Row::file);
        t.text("note", "what to know", Row::note);
        return t;
    }
}
