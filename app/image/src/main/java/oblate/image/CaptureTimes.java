/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import oblate.base.ProblemException;

/**
 * Finds when a picture was taken: the user's word, FITS, Exif and XMP, the file's name, a text note beside it, in this order. Stateless.
 *
 * <p>The dates the file system keeps are never looked at: copying changes them.
 */
public final class CaptureTimes {
    /** What the middle may be off when only start or end and no length is known (s): captures last up to about two minutes. */
    private static final double UNKNOWN_LENGTH_S = 60;

    /**
     * Looks at every source and decides.
     *
     * @param file the picture; its name and the note beside it are looked at
     * @param header its facts
     * @param wish what the user says
     * @throws ProblemException {@link ImageProblem#BAD_TIME} when the user's own time or pattern cannot be read; what is wrong with a
     *     time of any other source is told in the finding instead
     */
    public TimeFinding find(Path file, PictureHeader header, TimeWish wish) {
        List<Testimony> testimonies = List.of(
                usersWord(file, wish),
                FitsTimes.of(header),
                ExifTimes.of(header),
                NameTimes.of(file, wish.namePattern()),
                NoteTimes.of(file));
        OptionalDouble exposureS = testimonies.stream()
                .map(Testimony::exposureS)
                .filter(OptionalDouble::isPresent)
                .findFirst()
                .orElse(
                        wish.exposureS().isPresent() && wish.exposureS().getAsDouble() > 0
                                ? wish.exposureS()
                                : OptionalDouble.empty());
        List<TimeClaim> claims = new ArrayList<>();
        List<List<ReadTime>> all = new ArrayList<>();
        Set<String> remarks = new LinkedHashSet<>();
        for (Testimony testimony : testimonies) {
            List<ReadTime> readings = new ArrayList<>();
            for (Statement statement : testimony.statements()) {
                claims.add(statement.claim());
                readings.add(ReadTime.of(statement, wish.zone()));
            }
            all.add(readings);
            remarks.addAll(testimony.remarks());
        }
        refuseUsersWord(file, all.get(0));
        for (List<ReadTime> readings : all) {
            Optional<ReadTime> first =
                    readings.stream().filter(r -> r.instant().isPresent()).findFirst();
            if (first.isPresent()) {
                return new Decision(wish, exposureS, first.get(), readings).finding(all, claims, remarks);
            }
        }
        all.forEach(readings -> readings.forEach(r -> r.why().ifPresent(remarks::add)));
        return new TimeFinding(Optional.empty(), claims, List.of(), Optional.of(whyNone(file, remarks)));
    }

    private static Testimony usersWord(Path file, TimeWish wish) {
        if (wish.statedTime().isEmpty()) {
            return Testimony.none();
        }
        String text = wish.statedTime().get();
        IsoTime time = IsoTimes.whole(text)
                .orElseThrow(() -> new ProblemException(
                        ImageProblem.BAD_TIME, file, text, "the time given for it", "it is no ISO 8601 date and time"));
        if (time.fault().isPresent()) {
            throw new ProblemException(
                    ImageProblem.BAD_TIME,
                    file,
                    text,
                    "the time given for it",
                    time.fault().get());
        }
        return new Testimony(
                List.of(Testimony.statement(
                        time, TimeSource.USER, "the time given", TimeMeaning.UNSTATED, OptionalDouble.empty())),
                List.of(),
                OptionalDouble.empty());
    }

    /** The user's word is never passed over: if it cannot be used, that is a problem. */
    private static void refuseUsersWord(Path file, List<ReadTime> readings) {
        for (ReadTime reading : readings) {
            if (reading.why().isPresent()) {
                String why = reading.claim().offset().isEmpty()
                                && !reading.why().get().contains("(clocks")
                        ? "it has no zone"
                        : reading.why().get().replaceAll("\\.$", "");
                throw new ProblemException(
                        ImageProblem.BAD_TIME, file, reading.claim().originalText(), "the time given for it", why);
            }
        }
    }

    private static String whyNone(Path file, Set<String> remarks) {
        String found = remarks.isEmpty()
                ? "nothing in the file, its name or a note beside it says when"
                : String.join(" ", remarks);
        return file + ": its capture time is not known (" + found.replaceAll("\\.$", "")
                + "); give it as 2031-03-24T21:05:30Z, put it into the file's name as 20310324T210530Z, or write it into a note beside the"
                + " file with the same name and the ending .txt";
    }

    /**
     * The statement believed, and what follows from it.
     *
     * @param wish what the user says
     * @param exposureS length of the capture, from whichever source (s)
     * @param chosen the statement believed
     * @param siblings all of its source
     */
    private record Decision(TimeWish wish, OptionalDouble exposureS, ReadTime chosen, List<ReadTime> siblings) {

        /** The end stated by the same source, when the statement believed is the start. */
        private Optional<ReadTime> end() {
            if (chosen.claim().meaning() != TimeMeaning.START) {
                return Optional.empty();
            }
            return siblings.stream()
                    .filter(r -> r.claim().meaning() == TimeMeaning.END
                            && r.instant().isPresent())
                    .filter(r -> r.instant().get().isAfter(chosen.instant().orElseThrow()))
                    .findFirst();
        }

        private OptionalDouble lengthS() {
            Optional<ReadTime> end = end();
            if (end.isPresent()) {
                Duration span = Duration.between(
                        chosen.instant().orElseThrow(), end.get().instant().orElseThrow());
                return OptionalDouble.of(span.toNanos() / 1e9);
            }
            return chosen.claim().exposureS().isPresent() ? chosen.claim().exposureS() : exposureS;
        }

        TimeFinding finding(List<List<ReadTime>> all, List<TimeClaim> claims, Set<String> remarks) {
            OptionalDouble lengthS = lengthS();
            Instant middle = chosen.middle(wish, lengthS).orElseThrow();
            Set<String> notes = new LinkedHashSet<>(remarks);
            Set<String> disagreements = new LinkedHashSet<>();
            Optional<ReadTime> end = end();
            for (List<ReadTime> readings : all) {
                for (ReadTime other : readings) {
                    if (other.equals(chosen) || end.filter(other::equals).isPresent()) {
                        continue;
                    }
                    other.why().ifPresent(notes::add);
                    if (other.instant().isEmpty() && other.statement().barred().isEmpty()) {
                        notes.add(TimeQuarrels.zoneHint(other.claim(), middle, chosen.claim()));
                    }
                    quarrel(other, middle, lengthS).ifPresent(disagreements::add);
                }
            }
            return new TimeFinding(
                    Optional.of(time(middle, lengthS, notes)), claims, List.copyOf(disagreements), Optional.empty());
        }

        private Optional<String> quarrel(ReadTime other, Instant middle, OptionalDouble lengthS) {
            OptionalDouble otherLengthS =
                    other.claim().exposureS().isPresent() ? other.claim().exposureS() : lengthS;
            TimeMeaning meaning = other.meaning(wish);
            boolean edge = meaning == TimeMeaning.START || meaning == TimeMeaning.END;
            if (edge
                    && otherLengthS.isEmpty()
                    && other.claim().source() == chosen.claim().source()) {
                return Optional.empty(); // start and middle of one source, with no length to compare them by
            }
            return other.middle(wish, otherLengthS)
                    .flatMap(m -> TimeQuarrels.compare(chosen.claim(), middle, other.claim(), m, otherLengthS));
        }

        private CaptureTime time(Instant middle, OptionalDouble lengthS, Set<String> notes) {
            TimeMeaning meaning = chosen.meaning(wish);
            boolean assumed = chosen.meaningAssumed(wish);
            boolean edge = meaning == TimeMeaning.START || meaning == TimeMeaning.END;
            double variance = square(chosen.claim().precisionS() / Math.sqrt(3))
                    + square(chosen.statement().clockErrorS());
            if (assumed && lengthS.isPresent()) {
                variance += square(lengthS.getAsDouble() / 2 / Math.sqrt(3));
            }
            if (assumed && FitsTimes.startByCustom(chosen.claim())) {
                notes.add("FITS leaves open which moment " + chosen.claim().place()
                        + " is; it was taken for the start, as is the custom.");
            }
            if (edge && lengthS.isEmpty()) {
                variance += square(UNKNOWN_LENGTH_S);
                notes.add("The length of the capture is not known, so its "
                        + (meaning == TimeMeaning.START ? "start" : "end") + " stands for its middle.");
            }
            if (chosen.statement().leapSecond()) {
                variance += square(0.5);
                notes.add("The time lies in a leap second and is kept as the second after it.");
            }
            boolean span = end().isPresent();
            return new CaptureTime(
                    middle,
                    lengthS,
                    chosen.claim().source(),
                    span
                            ? chosen.claim().place() + " and "
                                    + end().get().claim().place()
                            : chosen.claim().place(),
                    span
                            ? chosen.claim().originalText() + " / "
                                    + end().get().claim().originalText()
                            : chosen.claim().originalText(),
                    assumed && !edge ? TimeMeaning.UNSTATED : meaning,
                    assumed,
                    chosen.zoneAssumed(),
                    Math.sqrt(variance),
                    List.copyOf(notes));
        }

        private static double square(double value) {
            return value * value;
        }
    }
}
