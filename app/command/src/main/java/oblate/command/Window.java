/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.workbench.FirstRun;
import oblate.workbench.Workbench;

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
     * @param named the archive to open; null for the last one, or to ask when there is none
     * @return the exit status
     */
    int open(Path named) {
        // The look is made ready while the archive is being opened.
        Workbench.prepare(services.settingsFolder(), services.unpacked());
        boolean first = named == null && last().isEmpty();
        Optional<Path> folder = Optional.ofNullable(named).or(this::last).or(() -> asked(""));
        while (folder.isPresent()) {
            try {
                folder = show(folder.get(), first);
                first = false;
            } catch (ProblemException e) {
                if (named != null) {
                    throw e;
                }
                folder = asked(e.getMessage());
            }
        }
        return 0;
    }

    private Optional<Path> show(Path folder, boolean first) {
        Archive archive = services.archiveToOpen(folder, console);
        Workbench.Opening opening = Workbench.begin(services.workbenchOn(archive));
        // The event thread makes the window meanwhile.
        try {
            archive.ensureOpen();
        } catch (ProblemException e) {
            opening.abandon();
            throw e;
        }
        Workbench workbench = opening.show();
        remember(folder);
        workbench.sayLater(() -> services.skyData().warnings().stream().findFirst());
        if (first) {
            workbench.walkThrough();
        }
        return switch (workbench.awaitClose()) {
            case DONE -> Optional.empty();
            case ANOTHER_ARCHIVE -> asked("").or(() -> Optional.of(folder));
            case SAMPLE_SEASON -> sample().or(() -> Optional.of(folder));
        };
    }

    /** Asks a person; a wish that cannot be met is asked again. */
    private Optional<Path> asked(String problem) {
        Optional<FirstRun.Choice> choice = FirstRun.ask(usual(), services.settingsFolder(), problem);
        if (choice.isEmpty()) {
            return Optional.empty();
        }
        return choice.get() instanceof FirstRun.InFolder there ? Optional.of(there.folder()) : sample();
    }

    /** The archive of the sample season, made when it is not there; what was made before a stop is gone on from the next time. */
    private Optional<Path> sample() {
        Path home = usual().resolveSibling("Oblate sample season");
        try {
            return FirstRun.prepare(progress -> made(home, progress));
        } catch (ProblemException e) {
            console.say(e.getMessage());
            return Optional.empty();
        }
    }

    private Path made(Path home, Progress progress) {

        Demo demo = new Demo(services, console.watchedBy(progress), home);
        if (demo.isUnfinished()) {
            demo.run();
        }
        return demo.archiveFolder();
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
