/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.FitOutcome;
import oblate.disc.MoonWitness;
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
        return finish(new ManyPictures(console).each(todo, "Fitting", picture -> {
            FitTable.Row row = fit(subjects.ofArchive(open, picture, options.hints()));
            if (row.outcome() instanceof FitOutcome.Fitted fitted) {
                open.keepFit(picture.id(), fitted.fit(), row.subject().disc().ephemeris(), Version.text());
            }
            return row;
        }));
    }

    private FitTable.Row fit(Subject subject) {
        MoonWitness.Heard heard = new MoonWitness(services.sky())
                .fit(
                        services.reader().decode(subject.file()).pixels(),
                        subject.disc(),
                        subject.hints(),
                        Progress.SILENT);
        return new FitTable.Row(subject, heard.outcome(), heard.moons());
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
            output.write(new FitTable().of(rows), services, console);
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
    record DiscFitResult(Subject subject, oblate.disc.DiscFit fit) {}
}
