/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.base.ProblemException;
import oblate.drift.timing.MoonState;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.Shot;
import oblate.drift.timing.Shots;
import oblate.drift.timing.StateSaid;
import oblate.drift.timing.TimingProblem;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;

/** States of moons from a CSV file with the columns picture or time_utc, moon, phenomenon, state, and if known sigma_s, observer. */
final class StateRows {
    /** Uncertainty of a time that states none (s). */
    static final double ASSUMED_SIGMA_S = 1;

    private final Services services;
    private final PlanetModel planet;
    private final Optional<Archive> archive;
    private final List<String> remarks = new ArrayList<>();

    /** @param archive where pictures are looked up */
    StateRows(Services services, PlanetModel planet, Optional<Archive> archive) {
        this.services = services;
        this.planet = planet;
        this.archive = archive;
    }

    /** All rows; nothing is read in part. */
    List<StateSaid> read(String file, Console console) {
        List<StateSaid> states = new ArrayList<>();
        int assumed = 0;
        for (CsvRows.Row row : CsvRows.read(file, console)) {
            states.add(state(row));
            assumed += row.text("picture").isEmpty() && row.text("sigma_s").isEmpty() ? 1 : 0;
        }
        if (assumed > 0) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "%s: %d of %d rows state no sigma_s; %.0f s was taken for their times.",
                    file,
                    assumed,
                    states.size(),
                    ASSUMED_SIGMA_S));
        }
        return states;
    }

    /** What was assumed, one sentence each. */
    List<String> remarks() {
        return remarks;
    }

    private StateSaid state(CsvRows.Row row) {
        String place = row.file() + ", row " + row.row().getRecordNumber();
        MoonFacts moon = moon(row.needed("moon"), place);
        Phenomenon phenomenon = Phenomenon.named(row.needed("phenomenon"), place);
        MoonState state = MoonState.named(row.needed("state"), phenomenon, place);
        return new StateSaid(
                shot(row, place), moon, Optional.of(phenomenon), state, phenomenon == Phenomenon.SHADOW_TRANSIT);
    }

    private MoonFacts moon(String word, String place) {
        return planet.moons().stream()
                .filter(m -> m.id().equalsIgnoreCase(word) || m.name().equalsIgnoreCase(word))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        TimingProblem.NO_SUCH_MOON,
                        place,
                        word,
                        planet.label(),
                        planet.moons().stream().map(MoonFacts::id).collect(Collectors.joining(", "))));
    }

    private Shot shot(CsvRows.Row row, String place) {
        Optional<String> picture = row.text("picture");
        if (picture.isPresent()) {
            return picture(picture.get(), place);
        }
        String text = row.text("time_utc").orElseThrow(() -> new ProblemException(TimingProblem.NO_TIME, place));
        double sigma = row.text("sigma_s").map(t -> row.number("sigma_s")).orElse(ASSUMED_SIGMA_S);
        if (!(sigma >= 0 && sigma <= 86_400)) {
            throw new ProblemException(
                    CommandProblem.BAD_CSV,
                    row.file(),
                    row.row().getRecordNumber(),
                    "\"" + row.needed("sigma_s") + "\" in column sigma_s is no number of seconds from 0 to 86400");
        }
        return Shot.look(text, time(text, row), sigma, row.text("observer").orElse(""), site);
    }

    private Instant time(String text, CsvRows.Row row) {
        try {
            Instant time = UtcTime.parse(text, services.sky().leapSeconds()).toInstant();
            services.sky().disc(planet, time);
            return time;
        } catch (ProblemException e) {
            throw new ProblemException(
                    e, CommandProblem.BAD_CSV, row.file(), row.row().getRecordNumber(), "time_utc: " + e.getMessage());
        }
    }

    private Shot picture(String word, String place) {
        Archive open = archive.orElseThrow(() -> new UsageException(
                place + ": names a picture, \"" + word + "\", but no archive is given; add --archive DIR"));
        ArchivedPicture found = open.pictureCalled(word);
        return new Shots(open)
                .of(found)
                .orElseThrow(() -> new ProblemException(TimingProblem.UNDATED, place, found.name()));
    }

    /** Those of some moons and some span. */
    static List<StateSaid> within(
            List<StateSaid> states, Set<String> moons, Optional<Instant> from, Optional<Instant> to) {
        return states.stream()
                .filter(s -> moons.isEmpty() || moons.contains(s.moon().id()))
                .filter(s -> from.map(f -> !s.shot().midUtc().isBefore(f)).orElse(true))
                .filter(s -> to.map(t -> s.shot().midUtc().isBefore(t)).orElse(true))
                .toList();
    }
}
