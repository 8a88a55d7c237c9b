/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.SeenState;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.Trust;
import oblate.sky.PlanetModel;

/**
 * Finds what an archive says of a planet's moons: places from marks of a centre; states from what was seen in pictures and looks, and from marks whose {@code what} is
 * one, such as "clear", "on disc" or "eclipse: gone". Belongs to one thread.
 */
public final class ArchiveMoons {
    private static final String CENTRE = "centre";

    private final Archive archive;
    private final PlanetModel planet;
    private final Shots shots;
    private final Map<Long, ArchivedPicture> pictures = new HashMap<>();
    private final Map<Long, Optional<StoredFit>> fits = new HashMap<>();

    /**
     * @param archive an open archive
     * @param planet the planet
     */
    public ArchiveMoons(Archive archive, PlanetModel planet) {
        this.archive = archive;
        this.planet = planet;
        shots = new Shots(archive);
    }

    /**
     * What was found.
     *
     * @param places marked moons and shadows
     * @param states states said
     * @param remarks what was passed over, one sentence each
     */
    public record Found(List<PlaceMark> places, List<StateSaid> states, List<String> remarks) {

        /** Copies the lists. */
        public Found {
            places = List.copyOf(places);
            states = List.copyOf(states);
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * Looks at all current marks of moons and shadows, and all states seen.
     *
     * @param moons ids of the moons wanted; empty for all
     * @param from pictures not before
     * @param to pictures before
     */
    public Found find(Set<String> moons, Optional<Instant> from, Optional<Instant> to) {
        Map<Long, MoonSubject> subjects = new HashMap<>();
        for (Feature feature : archive.features(planet.id())) {
            MoonSubject.of(planet, feature)
                    .filter(s -> moons.isEmpty() || moons.contains(s.moon().id()))
                    .ifPresent(s -> subjects.put(feature.id(), s));
        }
        List<PlaceMark> places = new ArrayList<>();
        List<StateSaid> states = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        MarkSearch search =
                new MarkSearch(Optional.of(planet.id()), Optional.empty(), Optional.empty(), from, to, false);
        for (StoredMark mark : archive.marks(search)) {
            MoonSubject subject = mark.mark().featureId().map(subjects::get).orElse(null);
            if (subject == null) {
                continue;
            }
            String what = mark.mark().what();
            if (what.equals(CENTRE)) {
                place(mark, subject)
                        .ifPresentOrElse(
                                places::add,
                                () -> remarks.add("mark " + mark.id() + ", " + subject.words() + ": its picture "
                                        + picture(mark).name() + " has no disc fit; run: oblate fit"));
            } else {
                state(mark, subject, what)
                        .ifPresentOrElse(
                                states::add,
                                () -> remarks.add("mark " + mark.id() + ", " + subject.words() + ": \"" + what
                                        + "\" is neither its centre nor a state that is known, and is passed over"));
            }
        }
        for (SeenState seen : archive.seenStates(planet.id())) {
            said(seen, moons)
                    .filter(s -> from.map(f -> !s.shot().midUtc().isBefore(f)).orElse(true))
                    .filter(s -> to.map(t -> s.shot().midUtc().isBefore(t)).orElse(true))
                    .ifPresent(states::add);
        }
        return new Found(places, states, remarks);
    }

    private ArchivedPicture picture(StoredMark mark) {
        return picture(mark.mark().pictureId());
    }

    private ArchivedPicture picture(long pictureId) {
        return pictures.computeIfAbsent(pictureId, id -> archive.picture(id).orElseThrow());
    }

    /** What a kept state says; empty for another moon, and for a picture that has lost its time since. */
    private Optional<StateSaid> said(SeenState seen, Set<String> moons) {
        Optional<Shot> shot = seen.pictureId().map(id -> shots.of(picture(id))).orElseGet(() -> seen.look()
                .map(shots::of));
        return planet.moons().stream()
                .filter(m -> m.id().equals(seen.moonId()) && (moons.isEmpty() || moons.contains(m.id())))
                .findFirst()
                .flatMap(moon -> shot.map(s -> {
                    Phenomenon phenomenon = Phenomenon.valueOf(seen.phenomenon().toUpperCase(Locale.ROOT));
                    MoonState state = MoonState.valueOf(seen.state().toUpperCase(Locale.ROOT));
                    return new StateSaid(
                            s, moon, Optional.of(phenomenon), state, phenomenon == Phenomenon.SHADOW_TRANSIT);
                }));
    }

    private Optional<PlaceMark> place(StoredMark mark, MoonSubject subject) {
        Optional<StoredFit> fit = fits.computeIfAbsent(mark.mark().pictureId(), id -> archive.currentFit(id));
        return fit.flatMap(f -> shots.of(picture(mark))
                .map(shot -> new PlaceMark(
                        shot,
                        subject,
                        f.fit().placement(),
                        f.fit().covariance(),
                        mark.mark().pixel(),
                        mark.mark().pickSigmaPx(),
                        f.fit().trust() == Trust.DOUBTFUL
                                ? Optional.of("the disc's fit is doubtful")
                                : Optional.empty())));
    }

    /** "clear", or with the phenomenon before a colon. */
    private Optional<StateSaid> state(StoredMark mark, MoonSubject subject, String what) {
        int colon = what.indexOf(':');
        Optional<Phenomenon> phenomenon = colon < 0 ? Optional.empty() : Phenomenon.known(what.substring(0, colon));
        if (colon >= 0 && phenomenon.isEmpty()) {
            return Optional.empty();
        }
        Optional<Phenomenon> about = subject.shadow() ? Optional.of(Phenomenon.SHADOW_TRANSIT) : phenomenon;
        return MoonState.of(what.substring(colon + 1))
                .map(s -> subject.shadow() && s == MoonState.GONE ? MoonState.NOT_SEEN : s)
                .map(s -> !subject.shadow() && s == MoonState.NOT_SEEN ? MoonState.GONE : s)
                .filter(s -> about.isEmpty() || s.belongsTo(about.get()))
                .flatMap(s -> shots.of(picture(mark))
                        .map(shot -> new StateSaid(shot, subject.moon(), about, s, subject.shadow())));
    }
}
