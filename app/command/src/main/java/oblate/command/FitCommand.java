/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.MoonWitness;
import oblate.disc.RunOrientation;
import oblate.image.PixelGrid;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate fit PICTURE…}. */
@Command(
        name = "fit",
        mixinStandardHelpOptions = true,
        description = {
            "Fits the planet's disc: centre, radius, pole angle, mirrored or not, with standard errors.",
            "Pictures are files, or with --archive numbers or names in it; their fits are then kept there."
        },
        footer = {
            "",
            "Examples:  oblate fit 20310324T210530Z.png --planet jupiter",
            "           oblate fit --archive season --new-only"
        })
final class FitCommand implements Callable<Integer> {
    private static final long HALF_DAY_S = 43_200;

    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PICTURE", arity = "0..*", description = "picture files, or pictures of the archive")
    private List<String> pictures = new ArrayList<>();

    @Option(names = "--archive", paramLabel = "DIR", description = "fit pictures of this archive and keep the fits")
    private Path archive;

    @Mixin
    private SearchOptions search;

    @Option(names = "--new-only", description = "with --archive: only pictures not fitted yet")
    private boolean newOnly;

    @Option(
            names = "--channels",
            description = "fit red and blue too and say where their discs lie against green's: what dispersion is left")
    private boolean channels;

    @Mixin
    private PictureOptions options;

    @Mixin
    private OutputOptions output;

    FitCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if (archive != null) {
            try (Archive open = services.openArchive(archive)) {
                return fitArchived(open);
            }
        }
        if (pictures.isEmpty()) {
            throw new UsageException("no picture is given; name picture files, or an archive with --archive DIR");
        }
        Subjects subjects = new Subjects(services, console);
        services.sky();
        List<ManyPictures.Answer<FitTable.Row>> answers = new ManyPictures(console)
                .each(pictures, "Fitting", name -> fit(subjects.ofFile(Path.of(name), options)));
        return finish(answers);
    }

    private int fitArchived(Archive open) {
        Subjects subjects = new Subjects(services, console);
        services.sky();
        List<ArchivedPicture> wanted = pictures.isEmpty()
                ? open.pictures(search.search(services))
                : pictures.stream().map(open::pictureCalled).toList();
        List<ArchivedPicture> todo =
                wanted.stream().filter(p -> !newOnly || !p.fitted()).toList();
        return finish(runsTogether(
                open,
                new ManyPictures(console)
                        .each(
                                todo,
                                "Fitting",
                                picture -> kept(open, fit(subjects.ofArchive(open, picture, options.hints()))))));
    }

    private static FitTable.Row kept(Archive open, FitTable.Row row) {
        if (row.outcome() instanceof FitOutcome.Fitted fitted) {
            open.keepFit(
                    row.subject().archived().orElseThrow().id(),
                    fitted.fit(),
                    row.subject().disc().ephemeris(),
                    Version.text());
        }
        return row;
    }

    /** Where pictures of one night by one kit left north or mirror image open and the others tell, they are fitted again. */
    private List<ManyPictures.Answer<FitTable.Row>> runsTogether(
            Archive open, List<ManyPictures.Answer<FitTable.Row>> answers) {
        Map<String, List<Integer>> runs = new LinkedHashMap<>();
        for (int i = 0; i < answers.size(); i++) {
            if (answers.get(i).refusal() == null) {
                Subject subject = answers.get(i).value().subject();
                Optional<String> kit = subject.archived().flatMap(ArchivedPicture::kit);
                if (kit.isPresent()) {
                    long halfDay = subject.disc().time().toInstant().getEpochSecond() / HALF_DAY_S;
                    runs.computeIfAbsent(
                                    subject.disc().planet().id() + " " + kit.get() + " " + halfDay,
                                    k -> new ArrayList<>())
                            .add(i);
                }
            }
        }
        List<ManyPictures.Answer<FitTable.Row>> out = new ArrayList<>(answers);
        for (List<Integer> run : runs.values()) {
            List<Optional<DiscFit>> fits = run.stream()
                    .map(i -> answers.get(i).value().outcome() instanceof FitOutcome.Fitted f
                            ? Optional.of(f.fit())
                            : Optional.<DiscFit>empty())
                    .toList();
            List<Optional<FitHints>> hints = RunOrientation.hints(fits);
            List<Integer> again = new ArrayList<>();
            for (int k = 0; k < run.size(); k++) {
                if (hints.get(k).isPresent()) {
                    again.add(k);
                }
            }
            List<ManyPictures.Answer<FitTable.Row>> second = new ManyPictures(console)
                    .each(again, "Fitting runs again", k -> {
                        Subject s = answers.get(run.get(k)).value().subject();
                        console.say(
                                s.name()
                                        + ": north and mirror image are taken from the other pictures of that night with the same kit.");
                        return kept(
                                open,
                                fit(new Subject(
                                        s.name(),
                                        s.file(),
                                        s.disc(),
                                        s.timeSigmaS(),
                                        hints.get(k).orElseThrow(),
                                        s.archived())));
                    });
            for (int k = 0; k < again.size(); k++) {
                out.set(run.get(again.get(k)), second.get(k));
            }
        }
        return out;
    }

    private FitTable.Row fit(Subject subject) {
        PixelGrid pixels = services.reader().decode(subject.file()).pixels();
        MoonWitness.Heard heard =
                new MoonWitness(services.sky()).fit(pixels, subject.disc(), subject.hints(), Progress.SILENT);
        List<DiscFitter.ChannelShift> shifts = channels && heard.outcome() instanceof FitOutcome.Fitted fitted
                ? new DiscFitter().channelShifts(pixels, subject.disc(), fitted.fit())
                : List.of();
        return new FitTable.Row(subject, heard.outcome(), heard.moons(), shifts);
    }

    private int finish(List<ManyPictures.Answer<FitTable.Row>> answers) {
        int status = 0;
        List<FitTable.Row> rows = new ArrayList<>();
        for (ManyPictures.Answer<FitTable.Row> answer : answers) {
            Optional<String> refusal = Optional.ofNullable(answer.refusal());
            refusal.ifPresent(console::say);
            if (refusal.isEmpty()) {
                rows.add(answer.value());
                if (answer.value().outcome() instanceof FitOutcome.Refused refused) {
                    console.say(answer.value().subject().name() + ": " + refused.reason());
                    status = 1;
                }
            } else {
                status = 1;
            }
        }
        if (!rows.isEmpty()) {
            output.write(new FitTable(channels).of(rows), services, console);
        } else if (answers.isEmpty()) {
            console.say("No picture to fit.");
        }
        return status;
    }

    /** For callers that need one fit and nothing else. */
    static DiscFitResult fitOne(Services services, Subject subject) {
        FitOutcome outcome = new MoonWitness(services.sky())
                .fit(
                        services.reader().decode(subject.file()).pixels(),
                        subject.disc(),
                        subject.hints(),
                        Progress.SILENT)
                .outcome();
        if (outcome instanceof FitOutcome.Fitted fitted) {
            return new DiscFitResult(subject, fitted.fit());
        }
        throw new ProblemException(CommandProblem.NOT_FITTED, subject.name(), ((FitOutcome.Refused) outcome).reason());
    }

    /**
     * A picture with its fit.
     *
     * @param subject the picture
     * @param fit its fit
     */
    record DiscFitResult(Subject subject, DiscFit fit) {}
}
