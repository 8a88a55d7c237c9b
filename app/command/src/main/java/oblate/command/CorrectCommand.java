/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureCorrections;
import oblate.archive.PictureFacts;
import oblate.archive.Rating;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate correct PICTURE… --archive DIR --reason WORDS}. */
@Command(
        name = "correct",
        mixinStandardHelpOptions = true,
        description = {
            "Corrects what an archive says of filed pictures. The files stay untouched, the old words go to the history.",
            "With another time, central meridians and marks are computed anew; with another planet or a time more than a day off, fits and marks are withdrawn."
        },
        footer = {
            "",
            "An empty word clears: --filter \"\". Only what is given is changed.",
            "Examples:  oblate correct 12 13 14 --archive season --shift 600 --reason \"the clock was ten minutes slow\"",
            "           oblate correct 12 --archive season --time 2031-03-24T21:15:30Z --reason \"read from the log\"",
            "           oblate correct 12 --archive season --withdraw-fit --reason \"the ring was taken for the limb\""
        })
final class CorrectCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PICTURE", arity = "1..*", description = "number, file name or start of the SHA-256")
    private List<String> wanted;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(names = "--reason", required = true, paramLabel = "WORDS", description = "why, for the history")
    private String reason;

    @Option(names = "--planet", paramLabel = "PLANET", description = "the planet")
    private String planet;

    @Option(
            names = {"--time", "--at-time"},
            paramLabel = "TIME",
            description = "middle of the capture, ISO 8601 with Z or an offset; for one picture only")
    private String time;

    @Option(names = "--shift", paramLabel = "SECONDS", description = "add so many seconds to each picture's time")
    private Double shiftS;

    @Option(
            names = "--time-sigma",
            paramLabel = "SECONDS",
            description = "standard uncertainty of the times (default: as before, 1 s for an undated picture)")
    private Double sigmaS;

    @Option(names = "--exposure", paramLabel = "SECONDS", description = "length of the capture")
    private Double exposureS;

    @Mixin
    private ObservationOptions observation;

    @Option(
            names = "--withdraw-fit",
            description = "take the current disc fit out of use; the one before it, if any, counts again")
    private boolean withdrawFit;

    @Mixin
    private OutputOptions output;

    CorrectCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        check();
        try (Archive open = services.openArchive(archive)) {
            PictureCorrections corrections = new PictureCorrections(open, services.sky());
            List<ArchivedPicture> done = new ArrayList<>();
            int status = 0;
            for (String word : wanted) {
                try {
                    done.add(one(open, corrections, open.pictureCalled(word)));
                } catch (ProblemException e) {
                    console.say(e.getMessage());
                    status = 1;
                }
            }
            if (!done.isEmpty()) {
                output.write(table().rows(done), services, console);
            }
            return status;
        }
    }

    private void check() {
        if (reason.isBlank()) {
            throw new UsageException("--reason is empty; say in a few words why");
        }
        if (time != null && (shiftS != null || wanted.size() > 1)) {
            throw new UsageException(
                    "--time is for one picture and not together with --shift; for several use --shift");
        }
        if (sigmaS != null && !(sigmaS > 0 && sigmaS < 1e7)) {
            throw new UsageException("--time-sigma must be above 0");
        }
        if (exposureS != null && !(exposureS >= 0 && exposureS < 1e7)) {
            throw new UsageException("--exposure must not be below 0");
        }
        if (shiftS != null && !(Math.abs(shiftS) < 1e11)) {
            throw new UsageException("--shift must be a number of seconds");
        }
    }

    private ArchivedPicture one(Archive open, PictureCorrections corrections, ArchivedPicture picture) {
        if (withdrawFit) {
            StoredFit fit = open.currentFit(picture.id())
                    .orElseThrow(() -> new ProblemException(CommandProblem.NO_FIT, picture.name()));
            open.withdrawFit(fit.id(), reason);
        }
        return corrections.correct(picture.id(), facts(picture), reason);
    }

    private PictureFacts facts(ArchivedPicture picture) {
        PictureFacts was = PictureFacts.of(picture);
        return new PictureFacts(
                planet == null
                        ? was.planetId()
                        : word(planet).map(p -> services.planet(p).id()),
                taken(picture, was.time()),
                said(observation.site(), was.site()),
                said(observation.observer(), was.observer()),
                said(observation.kit(), was.kit()),
                said(observation.filter(), was.filter()),
                rated(observation.seeing(), was.seeing()),
                rated(observation.transparency(), was.transparency()),
                said(observation.notes(), was.notes()));
    }

    private Optional<PictureFacts.Taken> taken(ArchivedPicture picture, Optional<PictureFacts.Taken> was) {
        if (time == null && shiftS == null && sigmaS == null && exposureS == null) {
            return was;
        }
        if (time == null && was.isEmpty()) {
            throw new ProblemException(CommandProblem.NO_TIME, picture.name(), "is undated; give --time TIME");
        }
        Instant mid = time == null ? was.orElseThrow().midUtc() : instant(time);
        if (shiftS != null) {
            mid = mid.plusNanos(Math.round(shiftS * 1e9));
        }
        OptionalDouble length = exposureS == null
                ? was.map(PictureFacts.Taken::exposureS).orElse(OptionalDouble.empty())
                : OptionalDouble.of(exposureS);
        double sigma = sigmaS == null ? was.map(PictureFacts.Taken::sigmaS).orElse(1.0) : sigmaS;
        return Optional.of(new PictureFacts.Taken(mid, length, sigma));
    }

    private static Instant instant(String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException e) {
            throw new UsageException(
                    "\"" + text + "\" is no instant; write it with Z or an offset, as 2031-03-24T21:05:30Z");
        }
    }

    private static Optional<String> word(String text) {
        return Optional.of(text.strip()).filter(t -> !t.isEmpty());
    }

    private static Optional<String> said(Optional<String> given, Optional<String> was) {
        return given.isEmpty() ? was : word(given.get());
    }

    private static Optional<Rating> rated(Optional<Rating> given, Optional<Rating> was) {
        return given.isEmpty()
                ? was
                : word(given.get().value())
                        .map(value -> new Rating(value, given.get().scale()));
    }

    private static TableOf<ArchivedPicture> table() {
        TableOf<ArchivedPicture> t = new TableOf<>("Corrected");
        t.text("picture", "number in the archive", ArchivedPicture::id);
        t.text("file", "file name", ArchivedPicture::name);
        t.text("planet", "planet", p -> p.planetId().orElse(null));
        t.text("mid_time_utc", "middle of the capture", p -> p.time()
                .map(c -> c.midUtc().toString())
                .orElse("undated"));
        t.number("time_sigma_s", "s", 1, "standard uncertainty of the time", p -> p.time()
                .map(c -> c.uncertaintyS())
                .orElse(null));
        t.text("night", "evening's date", p -> p.night().map(Object::toString).orElse(null));
        t.text("site", "site", p -> p.site().orElse(null));
        t.text("kit", "kit", p -> p.kit().orElse(null));
        t.text("filter", "filter", p -> p.filter().orElse(null));
        t.text("fit", "whether it has a current disc fit", p -> p.fitted() ? "fitted" : "none");
        t.text("marks", "current marks", ArchivedPicture::markCount);
        return t;
    }
}
