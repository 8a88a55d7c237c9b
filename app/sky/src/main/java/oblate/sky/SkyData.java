/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import oblate.base.ProblemException;

/**
 * What a sky is computed from: the planet positions and leap seconds that come with the program, or newer ones a person put into the settings folder.
 *
 * <p>An ephemeris from the folder is always preferred to the bundled one, the highest number among several. Of lists of leap seconds, the bundled one
 * among them, the one that expires last is used. A file that does not stand the checks is left out, and said to be.
 *
 * @param ephemeris planet positions to use
 * @param leapSeconds leap seconds to use
 * @param files what was found in the folders, and what became of it
 */
public record SkyData(Ephemeris ephemeris, LeapSeconds leapSeconds, List<SkyDataFile> files) {
    private static final int MOST_FILES = 32;

    /** Copies the list. */
    public SkyData {
        files = List.copyOf(files);
    }

    /** Only what comes with the program. */
    public static SkyData bundled() {
        return new SkyData(Ephemeris.bundled(), LeapSeconds.bundled(), List.of());
    }

    /** What comes with the program, or the newer files in the folders {@code ephemeris} and {@code leap-seconds} of the settings. */
    public static SkyData in(Path settingsFolder) {
        List<SkyDataFile> files = new ArrayList<>();
        LeapSeconds leapSeconds = newestLeapSeconds(list(settingsFolder, SkyDataFile.Kind.LEAP_SECONDS), files);
        Ephemeris ephemeris = highestEphemeris(list(settingsFolder, SkyDataFile.Kind.EPHEMERIS), files)
                .orElseGet(Ephemeris::bundled);
        return new SkyData(ephemeris, leapSeconds, files);
    }

    /** The sky. */
    public Sky sky() {
        return Sky.of(ephemeris, leapSeconds);
    }

    /** One sentence for each file that was refused, with what is used instead. */
    public List<String> warnings() {
        return files.stream()
                .filter(f -> f.fate() == SkyDataFile.Fate.REFUSED)
                .map(f -> f.why().orElseThrow() + "; until then " + inUse(f.kind()) + " are used")
                .toList();
    }

    private String inUse(SkyDataFile.Kind kind) {
        if (kind == SkyDataFile.Kind.EPHEMERIS) {
            return "the planet positions of "
                    + (ephemeris.isBundled() ? ephemeris.name() + ", bundled," : ephemeris.origin());
        }
        return "the leap seconds "
                + (leapSeconds.isBundled() ? "that come with the program" : "of " + leapSeconds.origin());
    }

    private static List<Path> list(Path settingsFolder, SkyDataFile.Kind kind) {
        Path folder = settingsFolder.resolve(kind.folder());
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> children = Files.list(folder)) {
            return children.filter(Files::isRegularFile)
                    .filter(f -> !f.getFileName().toString().startsWith("."))
                    .sorted()
                    .limit(MOST_FILES)
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    private static LeapSeconds newestLeapSeconds(List<Path> found, List<SkyDataFile> files) {
        Map<Path, LeapSeconds> read = new HashMap<>();
        LeapSeconds newest = LeapSeconds.bundled();
        for (Path file : found) {
            try {
                LeapSeconds table = LeapSeconds.read(file);
                read.put(file, table);
                newest = table.expires().isAfter(newest.expires()) ? table : newest;
            } catch (ProblemException e) {
                files.add(refused(file, SkyDataFile.Kind.LEAP_SECONDS, e));
            }
        }
        for (Path file : found) {
            LeapSeconds table = read.get(file);
            if (table == newest) {
                files.add(used(file, SkyDataFile.Kind.LEAP_SECONDS));
            } else if (table != null) {
                files.add(spare(
                        file,
                        SkyDataFile.Kind.LEAP_SECONDS,
                        "it expires on " + table.expires() + "; those in use, " + newest.origin() + ", on "
                                + newest.expires()));
            }
        }
        return newest;
    }

    private static Optional<Ephemeris> highestEphemeris(List<Path> found, List<SkyDataFile> files) {
        Map<Path, Integer> numbers = new HashMap<>();
        for (Path file : found) {
            try {
                numbers.put(file, EphemerisFile.number(file));
            } catch (ProblemException e) {
                files.add(refused(file, SkyDataFile.Kind.EPHEMERIS, e));
            }
        }
        // found is in the order of names, and sorting keeps it among equal numbers
        List<Path> byNumber = found.stream()
                .filter(numbers::containsKey)
                .sorted(Comparator.comparingInt(file -> -numbers.get(file)))
                .toList();
        Optional<Ephemeris> chosen = Optional.empty();
        for (Path file : byNumber) {
            if (chosen.isPresent()) {
                files.add(spare(
                        file,
                        SkyDataFile.Kind.EPHEMERIS,
                        "DE" + numbers.get(file) + "; " + chosen.get().origin() + " ("
                                + chosen.get().name() + ") is used"));
                continue;
            }
            try {
                chosen = Optional.of(Ephemeris.read(file));
                files.add(used(file, SkyDataFile.Kind.EPHEMERIS));
            } catch (ProblemException e) {
                files.add(refused(file, SkyDataFile.Kind.EPHEMERIS, e));
            }
        }
        return chosen;
    }

    private static SkyDataFile used(Path file, SkyDataFile.Kind kind) {
        return new SkyDataFile(file, kind, SkyDataFile.Fate.USED, Optional.empty());
    }

    private static SkyDataFile spare(Path file, SkyDataFile.Kind kind, String why) {
        return new SkyDataFile(file, kind, SkyDataFile.Fate.SPARE, Optional.of(why));
    }

    private static SkyDataFile refused(Path file, SkyDataFile.Kind kind, ProblemException e) {
        return new SkyDataFile(file, kind, SkyDataFile.Fate.REFUSED, Optional.of(e.getMessage()));
    }
}
