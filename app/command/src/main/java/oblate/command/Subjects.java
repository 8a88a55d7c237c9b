/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Kit;
import oblate.base.ProblemException;
import oblate.disc.FitHints;
import oblate.image.CaptureTime;
import oblate.image.PictureHeader;
import oblate.image.TimeFinding;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;

/** Finds planet, time and apparent disc for pictures, in files or in an archive. */
final class Subjects {
    private final Services services;
    private final Console console;

    Subjects(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    /**
     * A picture file.
     *
     * @throws ProblemException when its planet or time cannot be found
     */
    Subject ofFile(Path file, PictureOptions options) {
        PictureHeader header = services.reader().header(file);
        TimeFinding finding = services.captureTimes().find(file, header, options.timeWish());
        finding.disagreements().forEach(d -> console.say(file.getFileName() + ": " + d));
        CaptureTime time = finding.time()
                .orElseThrow(() -> new ProblemException(
                        CommandProblem.NO_TIME, file, finding.whyNone().orElse("no time was found; add --time TIME")));
        time.notes().forEach(n -> console.say(file.getFileName() + ": " + n));
        PlanetModel planet = options.planet()
                .map(services::planet)
                .or(() -> header.fact("FITS", "OBJECT").flatMap(this::planetNamed))
                .or(() -> planetNamed(file.getFileName().toString()))
                .orElseThrow(() -> new ProblemException(CommandProblem.NO_PLANET, file));
        ApparentDisc disc = services.sky().disc(planet, time.midUtc());
        return new Subject(
                file.getFileName().toString(), file, disc, time.uncertaintyS(), options.hints(), Optional.empty());
    }

    private Optional<PlanetModel> planetNamed(String text) {
        String words = " " + text.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z]+", " ") + " ";
        return services.planets().stream()
                .filter(p -> words.contains(" " + p.id() + " "))
                .findFirst();
    }

    /**
     * A picture of an archive.
     *
     * @throws ProblemException when it has no planet or no time
     */
    Subject ofArchive(Archive archive, ArchivedPicture picture, FitHints said) {
        CaptureTime time = picture.time()
                .orElseThrow(() -> new ProblemException(
                        CommandProblem.NO_TIME, picture.name(), "is undated; file it again with --time TIME"));
        PlanetModel planet = picture.planetId()
                .map(services::planet)
                .orElseThrow(() -> new ProblemException(CommandProblem.NO_PLANET, picture.name()));
        ApparentDisc disc = services.sky().disc(planet, time.midUtc());
        Optional<Boolean> mirrored =
                said.mirrored().or(() -> kitOf(archive, picture).flatMap(Kit::mirrored));
        FitHints hints = new FitHints(said.poleAngle(), mirrored, said.near());
        return new Subject(
                picture.name(), archive.fileOf(picture), disc, time.uncertaintyS(), hints, Optional.of(picture));
    }

    private static Optional<Kit> kitOf(Archive archive, ArchivedPicture picture) {
        List<Kit> kits = archive.kits();
        return picture.kit()
                .flatMap(
                        name -> kits.stream().filter(k -> k.name().equals(name)).findFirst());
    }
}
