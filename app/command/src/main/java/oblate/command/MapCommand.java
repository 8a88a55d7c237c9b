/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.disc.DiscFit;
import oblate.disc.DiscFrame;
import oblate.disc.MapBuilder;
import oblate.disc.MapFormat;
import oblate.disc.PlanetMap;
import oblate.disc.Trust;
import oblate.report.ReportTable;
import oblate.sky.PlanetModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate map PICTURE… --map FILE}. */
@Command(
        name = "map",
        mixinStandardHelpOptions = true,
        description = {
            "Draws a map from one picture or several of a night.",
            "Pictures are files, whose discs are fitted first, or with --archive pictures of it with the fits kept there. Where several",
            "show a place, the one that looks down on it more steeply counts more."
        },
        footer = {
            "",
            "Examples:  oblate map 20310324T210530Z.png --planet jupiter --map jupiter.png",
            "           oblate map --archive season --night 2031-03-24 --system 2 --map night.fits",
            "           oblate map --archive season --night 2031-03-24 --strip=-30,-10 --map strip.png"
        })
final class MapCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PICTURE", arity = "0..*", description = "picture files, or pictures of the archive")
    private List<String> pictures = new ArrayList<>();

    @Option(names = "--archive", paramLabel = "DIR", description = "pictures of this archive, with the fits kept there")
    private Path archive;

    @Option(
            names = "--map",
            required = true,
            paramLabel = "FILE",
            description = "where the map goes; its ending says how: .png (16 bits) or .fits (planetary coordinates)")
    private Path map;

    @Option(
            names = "--flatten",
            paramLabel = "yes|no",
            defaultValue = "YES",
            description = "whether the darkening towards the limb is taken out (default: yes)")
    private PictureOptions.YesNo flatten;

    @Option(
            names = "--emission",
            paramLabel = "DEG",
            defaultValue = "75",
            description = "largest angle from the vertical that is used (default: ${DEFAULT-VALUE})")
    private double emissionDeg;

    @Mixin
    private MapSheetOptions sheet;

    @Mixin
    private PictureOptions options;

    @Mixin
    private SearchOptions search;

    @Mixin
    private OutputOptions output;

    MapCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        MapFormat format = format();
        if (!(emissionDeg >= 10 && emissionDeg <= 89)) {
            throw new UsageException("--emission must be between 10 and 89");
        }
        sheet.check();
        if (archive != null) {
            try (Archive open = services.openArchive(archive)) {
                return draw(format, ofArchive(open));
            }
        }
        if (pictures.isEmpty()) {
            throw new UsageException("no picture is given; name picture files, or an archive with --archive DIR");
        }
        Subjects subjects = new Subjects(services, console);
        services.sky();
        return draw(
                format,
                new ManyPictures(console)
                        .each(
                                pictures,
                                "Fitting",
                                name -> source(FitCommand.fitOne(services, subjects.ofFile(Path.of(name), options)))));
    }

    private MapFormat format() {
        String name = map.getFileName().toString().toLowerCase(Locale.ROOT);
        List<MapFormat> formats = services.plugins().load(MapFormat.class);
        return formats.stream()
                .filter(f -> name.endsWith("." + f.id()))
                .findFirst()
                .orElseThrow(() -> new UsageException("\"" + map + "\" does not end in one of "
                        + formats.stream().map(f -> "." + f.id()).toList() + ", which say how a map is written"));
    }

    private List<ManyPictures.Answer<MapBuilder.Source>> ofArchive(Archive open) {
        Subjects subjects = new Subjects(services, console);
        services.sky();
        List<ArchivedPicture> wanted = pictures.isEmpty()
                ? open.pictures(search.search(services))
                : pictures.stream().map(open::pictureCalled).toList();
        return new ManyPictures(console).each(wanted, "Reading", picture -> {
            Subject subject = subjects.ofArchive(open, picture, options.hints());
            DiscFit fit = open.currentFit(picture.id())
                    .map(StoredFit::fit)
                    .orElseThrow(() -> new ProblemException(CommandProblem.NO_FIT, picture.name()));
            return source(new FitCommand.DiscFitResult(subject, fit));
        });
    }

    private MapBuilder.Source source(FitCommand.DiscFitResult fitted) {
        Subject subject = fitted.subject();
        if (fitted.fit().trust() != Trust.TRUSTED) {
            console.say(subject.name() + ": the fit is doubtful: "
                    + String.join(" ", fitted.fit().reasons()));
        }
        return new MapBuilder.Source(
                subject.name(),
                services.reader().decode(subject.file()).pixels(),
                new DiscFrame(subject.disc(), fitted.fit().placement()));
    }

    private int draw(MapFormat format, List<ManyPictures.Answer<MapBuilder.Source>> answers) {
        List<MapBuilder.Source> sources = new ArrayList<>();
        for (ManyPictures.Answer<MapBuilder.Source> answer : answers) {
            if (answer.refusal() == null) {
                sources.add(answer.value());
            } else {
                console.say(answer.refusal());
            }
        }
        if (sources.isEmpty()) {
            console.say("No picture to draw a map from.");
            return 1;
        }
        int status = sources.size() == answers.size() ? 0 : 1;
        PlanetModel planet = sources.get(0).frame().disc().planet();
        List<MapBuilder.Source> ours = new ArrayList<>();
        for (MapBuilder.Source source : sources) {
            if (source.frame().disc().planet().id().equals(planet.id())) {
                ours.add(source);
            } else {
                console.say(source.name() + ": shows "
                        + source.frame().disc().planet().label() + " and is left out of a map of " + planet.label()
                        + "; draw it by itself.");
                status = 1;
            }
        }
        PlanetMap drawn = new MapBuilder()
                .draw(
                        sheet.frame(planet, format),
                        ours,
                        new MapBuilder.Manner(emissionDeg, flatten == PictureOptions.YesNo.YES),
                        new ConsoleProgress(console, "Drawing"));
        write(format, drawn);
        output.write(table(drawn), services, console);
        console.say(String.format(
                Locale.ROOT,
                "Wrote %s: %d x %d px, %.4f deg a pixel, %.0f %% of it known.",
                map,
                drawn.frame().widthPx(),
                drawn.frame().heightPx(),
                drawn.frame().cellDeg(),
                100 * drawn.covered()));
        return status;
    }

    /** Whole or not at all. */
    private void write(MapFormat format, PlanetMap drawn) {
        Path target = map.toAbsolutePath();
        try {
            Path temp = Files.createTempFile(target.getParent(), ".oblate", "." + format.id());
            try {
                format.write(drawn, temp);
                Files.move(temp, target, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(temp);
            }
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, map, e.getMessage());
        }
    }

    private static ReportTable table(PlanetMap drawn) {
        TableOf<PlanetMap.Contribution> t = new TableOf<>("Map");
        t.fact("planet", drawn.frame().planet().label());
        t.fact(
                "longitudes",
                drawn.frame().system().label() + ", "
                        + (drawn.frame().eastSign() > 0
                                ? "positive east, rising to the right"
                                : "positive west, falling to the right"));
        t.fact("latitudes", drawn.frame().graphic() ? "planetographic" : "planetocentric");
        t.text("picture", "picture", PlanetMap.Contribution::name);
        t.text("mid_time_utc", "middle of the capture", c -> c.time().toString());
        t.number("cm_deg", "deg", 2, "central meridian in the map's system", PlanetMap.Contribution::meridianDeg);
        t.number("covered_percent", "%", 1, "share of the sheet it shows", c -> 100 * c.covered());
        t.number("weight_percent", "%", 1, "share of the map's weight", c -> 100 * c.weight());
        t.number("gain", "", 3, "brightness was multiplied by", PlanetMap.Contribution::gain);
        t.number(
                "limb_exponent",
                "",
                3,
                "exponent of the darkening taken out",
                c -> c.law().samples() == 0 ? null : c.law().exponent());
        t.number(
                "sigma_limb_exponent",
                "",
                3,
                "its standard error",
                c -> c.law().samples() == 0 ? null : c.law().sigma());
        return t.rows(drawn.contributions());
    }
}
