/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Site;
import oblate.base.ProblemException;
import oblate.drift.timing.MoonState;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.Shot;
import oblate.drift.timing.ShotSite;
import oblate.drift.timing.Shots;
import oblate.drift.timing.TimingProblem;
import oblate.sky.GroundSite;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;

/** Understands states of a planet's moons, from a row of a file or from a command's words. */
final class StateReader {
    /** Uncertainty of a time that states none (s). */
    static final double ASSUMED_SIGMA_S = 1;

    private static final double LONGEST_SIGMA_S = 86_400;

    private final Services services;
    private final PlanetModel planet;
    private final Optional<Archive> archive;
    private final Optional<Shots> shots;

    /** @param archive where pictures and sites are looked up */
    StateReader(Services services, PlanetModel planet, Optional<Archive> archive) {
        this.services = services;
        this.planet = planet;
        this.archive = archive;
        shots = archive.map(Shots::new);
    }

    /**
     * What a person gave.
     *
     * @param place what to name in a refusal: file and row, or the command
     * @param picture word for a picture
     * @param time instant of a look; not looked at with a picture
     * @param sigma its uncertainty (s)
     * @param observer whose clock
     * @param site name of a site, or its coordinates
     */
    record Words(
            String place,
            Optional<String> picture,
            Optional<String> time,
            Optional<String> sigma,
            Optional<String> observer,
            Optional<String> site,
            String moon,
            String phenomenon,
            String state) {}

    /** @throws ProblemException with {@link TimingProblem}, {@link CommandProblem#BAD_STATE} or what the archive says of the picture */
    StateWord read(Words w) {
        MoonFacts moon = moon(w.moon(), w.place());
        Phenomenon phenomenon = Phenomenon.named(w.phenomenon(), w.place());
        MoonState state = MoonState.named(w.state(), phenomenon, w.place());
        if (w.picture().isPresent()) {
            ArchivedPicture picture = picture(w.picture().get(), w.place());
            Shot shot = shots.orElseThrow()
                    .of(picture)
                    .orElseThrow(() -> new ProblemException(TimingProblem.UNDATED, w.place(), picture.name()));
            return new StateWord(planet, shot, Optional.of(picture.id()), Optional.empty(), moon, phenomenon, state);
        }
        String text = w.time().orElseThrow(() -> new ProblemException(TimingProblem.NO_TIME, w.place()));
        Optional<String> name = w.site().flatMap(this::known);
        Optional<ShotSite> site = w.site().map(s -> site(s, name, w.place()));
        Shot shot =
                Shot.look(text, time(text, w.place()), sigma(w), w.observer().orElse(""), site);
        return new StateWord(planet, shot, Optional.empty(), name, moon, phenomenon, state);
    }

    /** The moon a word means. */
    MoonFacts moon(String word, String place) {
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

    private ArchivedPicture picture(String word, String place) {
        return archive.orElseThrow(() -> new UsageException(
                        place + ": names a picture, \"" + word + "\", but no archive is given; add --archive DIR"))
                .pictureCalled(word);
    }

    private static double sigma(Words w) {
        String text = w.sigma().orElse(Double.toString(ASSUMED_SIGMA_S));
        try {
            double sigma = Double.parseDouble(text);
            if (sigma >= 0 && sigma <= LONGEST_SIGMA_S) {
                return sigma;
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new ProblemException(
                CommandProblem.BAD_STATE,
                w.place(),
                "sigma_s: \"" + text + "\" is no number of seconds from 0 to 86400");
    }

    private Instant time(String text, String place) {
        try {
            Instant time = UtcTime.parse(text, services.sky().leapSeconds()).toInstant();
            services.sky().disc(planet, time);
            return time;
        } catch (ProblemException e) {
            throw new ProblemException(e, CommandProblem.BAD_STATE, place, "time_utc: " + e.getMessage());
        }
    }

    private List<String> names() {
        return archive.map(a -> a.sites().stream().map(Site::name).toList()).orElse(List.of());
    }

    private Optional<String> known(String word) {
        return names().stream().filter(n -> n.equalsIgnoreCase(word.strip())).findFirst();
    }

    private ShotSite site(String word, Optional<String> name, String place) {
        Optional<ShotSite> named = name.flatMap(n -> shots.orElseThrow().site(n));
        if (named.isPresent()) {
            return named.get();
        }
        try {
            return new ShotSite(word, GroundSite.parse(word));
        } catch (ProblemException e) {
            throw new ProblemException(
                    e,
                    CommandProblem.BAD_STATE,
                    place,
                    "site: \"" + word + "\" is neither LAT,LON,HEIGHT nor a site of the archive"
                            + (names().isEmpty() ? "" : "; " + Nearest.hint(word, names())));
        }
    }
}
