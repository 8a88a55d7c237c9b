/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.function.Consumer;
import oblate.archive.Archive;
import oblate.archive.Filing;
import oblate.base.PluginHost;
import oblate.base.ProblemException;
import oblate.disc.MoonWitness;
import oblate.image.CaptureTimes;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.SkyData;
import oblate.workbench.WorkbenchContext;

/** What commands share in one run; each part is made when first asked for. Safe for many threads. */
public final class Services implements AutoCloseable {
    private final Path settingsFolder;
    private final Clock clock;
    private PluginHost plugins;
    private List<PlanetModel> planets;
    private PictureReader reader;
    private List<ReportFormat> reportFormats;
    private final Consumer<String> words;
    private final Object skyLock = new Object();
    private SkyData skyData;
    private Sky sky;

    /**
     * @param settingsFolder the user's settings; plug-in jars are in its {@code plugins} folder, newer data of the sky in {@code ephemeris} and
     *     {@code leap-seconds}
     * @param clock for the times in an archive's history
     * @param words told what of the settings is refused
     */
    public Services(Path settingsFolder, Clock clock, Consumer<String> words) {
        this.settingsFolder = settingsFolder;
        this.clock = clock;
        this.words = words;
    }

    /** The user's settings folder; may not exist yet. */
    public Path settingsFolder() {
        return settingsFolder;
    }

    /** Clock of the run. */
    public Clock clock() {
        return clock;
    }

    /** The plug-in host. */
    public synchronized PluginHost plugins() {
        if (plugins == null) {
            plugins = PluginHost.withFolder(settingsFolder.resolve("plugins"));
        }
        return plugins;
    }

    /** Planets, nearest the Sun first as far as their number in the ephemeris says. */
    public synchronized List<PlanetModel> planets() {
        if (planets == null) {
            planets = plugins().load(PlanetModel.class).stream()
                    .sorted(java.util.Comparator.comparingInt(p -> p.globe().deBody()))
                    .toList();
        }
        return planets;
    }

    /**
     * The planet a person means.
     *
     * @throws UsageException when there is none of that name
     */
    public PlanetModel planet(String word) {
        return planets().stream()
                .filter(p -> p.id().equalsIgnoreCase(word))
                .findFirst()
                .orElseThrow(() -> new UsageException("planet \"" + word + "\" is not known; "
                        + Nearest.hint(
                                word, planets().stream().map(PlanetModel::id).toList())));
    }

    /**
     * The planet a person means, for its moons.
     *
     * @throws UsageException when there is none of that name, or its moons are not known
     */
    PlanetModel planetWithMoons(String word) {
        PlanetModel model = planet(word);
        if (model.moons().isEmpty()) {
            List<String> known = planets().stream()
                    .filter(p -> !p.moons().isEmpty())
                    .map(PlanetModel::label)
                    .toList();
            throw new UsageException("the moons of " + model.label() + " are not known here; known: those of "
                    + String.join(", ", known));
        }
        return model;
    }

    /** Reads pictures of every known format. */
    public synchronized PictureReader reader() {
        if (reader == null) {
            reader = new PictureReader(plugins().load(ImageFormat.class), PictureLimits.usual());
        }
        return reader;
    }

    /** Finds capture times. */
    public CaptureTimes captureTimes() {
        return new CaptureTimes();
    }

    /** Ways to write a table. */
    public synchronized List<ReportFormat> reportFormats() {
        if (reportFormats == null) {
            reportFormats = plugins().load(ReportFormat.class);
        }
        return reportFormats;
    }

    /** Planet positions and leap seconds: newer ones of the settings folder, or those that come with the program. */
    public SkyData skyData() {
        synchronized (skyLock) {
            if (skyData == null) {
                skyData = SkyData.in(settingsFolder);
            }
            return skyData;
        }
    }

    /** The sky; its data are read when it is first asked something, and those of the settings folder that cannot be used are told of then. */
    public synchronized Sky sky() {
        if (sky == null) {
            sky = Sky.later(() -> {
                skyData().warnings().forEach(words);
                return skyData();
            });
        }
        return sky;
    }

    /**
     * Opens an archive.
     *
     * @throws ProblemException when it is none
     */
    public Archive openArchive(Path folder) {
        return Archive.open(folder, planets(), clock);
    }

    /** Opens an archive, or makes one where there is nothing yet and says so. */
    public Archive openOrMakeArchive(Path folder, Console console) {
        if (isVacant(folder)) {
            Archive made = Archive.create(folder, planets(), clock);
            console.say("Made a new archive in " + folder + ".");
            return made;
        }
        return openArchive(folder);
    }

    private static boolean isVacant(Path folder) {
        if (!Files.exists(folder)) {
            return true;
        }
        if (!Files.isDirectory(folder)) {
            return false;
        }
        try (var children = Files.list(folder)) {
            return children.findAny().isEmpty();
        } catch (java.io.IOException e) {
            return false;
        }
    }

    /** What the window needs to work on an open archive, which it closes when it is closed itself. */
    public WorkbenchContext workbenchOn(Archive archive) {
        return new WorkbenchContext(
                archive,
                sky(),
                planets(),
                plugins().load(ImageFormat.class),
                reader(),
                new MoonWitness(sky()),
                filing(archive),
                reportFormats(),
                plugins(),
                settingsFolder,
                System.getProperty("user.name", "observer"),
                Version.text());
    }

    /** Takes pictures into an archive. */
    public Filing filing(Archive archive) {
        return new Filing(archive, reader(), captureTimes(), sky(), planets());
    }

    @Override
    public synchronized void close() {
        if (plugins != null) {
            plugins.close();
        }
    }
}
