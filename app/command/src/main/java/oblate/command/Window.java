/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.disc.MoonWitness;
import oblate.image.ImageFormat;
import oblate.workbench.Workbench;
import oblate.workbench.WorkbenchContext;

/** Opens the window on an archive and waits until it is closed. */
final class Window {
    private static final String LAST_ARCHIVE = "last-archive.txt";

    private final Services services;
    private final Console console;

    Window(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    /**
     * @param named the archive to open; null for the last one
     * @return the exit status
     */
    int open(Path named) {
        Path folder = Optional.ofNullable(named).or(this::last).orElseGet(Window::usual);
        Archive archive = services.openOrMakeArchive(folder, console);
        remember(folder);
        Workbench workbench = Workbench.open(new WorkbenchContext(
                archive,
                services.sky(),
                services.planets(),
                services.plugins().load(ImageFormat.class),
                services.reader(),
                new MoonWitness(services.sky()),
                services.filing(archive),
                services.reportFormats(),
                services.plugins(),
                services.settingsFolder(),
                System.getProperty("user.name", "observer"),
                Version.text()));
        services.skyData().warnings().stream().findFirst().ifPresent(workbench::say);
        workbench.awaitClose();
        return 0;
    }

    private Optional<Path> last() {
        try {
            Path folder =
                    Path.of(Files.readString(services.settingsFolder().resolve(LAST_ARCHIVE), StandardCharsets.UTF_8)
                            .strip());
            return Optional.of(folder).filter(Files::isDirectory);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private void remember(Path folder) {
        try {
            Files.createDirectories(services.settingsFolder());
            Files.writeString(
                    services.settingsFolder().resolve(LAST_ARCHIVE),
                    folder.toAbsolutePath().normalize().toString(),
                    StandardCharsets.UTF_8);
        } catch (IOException e) {
            console.say("The settings folder cannot be written (" + e.getMessage()
                    + "); this archive will not be remembered.");
        }
    }

    private static Path usual() {
        return Path.of(System.getProperty("user.home", "."), "Oblate archive");
    }
}
