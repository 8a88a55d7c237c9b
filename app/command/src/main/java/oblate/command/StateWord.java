/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Optional;
import oblate.archive.SeenState;
import oblate.drift.timing.MoonState;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.Shot;
import oblate.drift.timing.StateSaid;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;

/**
 * A state of a moon as a person gives it.
 *
 * @param planet the moon's planet
 * @param shot the picture or look
 * @param pictureId number of the picture; empty for a look
 * @param site the archive's name for the place of a look; empty for a picture, and for a place given by its coordinates
 * @param moon the moon
 * @param phenomenon what it is about
 * @param state what was seen
 */
record StateWord(
        PlanetModel planet,
        Shot shot,
        Optional<Long> pictureId,
        Optional<String> site,
        MoonFacts moon,
        Phenomenon phenomenon,
        MoonState state) {

    StateSaid said() {
        return new StateSaid(shot, moon, Optional.of(phenomenon), state, phenomenon == Phenomenon.SHADOW_TRANSIT);
    }

    /**
     * As an archive keeps it.
     *
     * @param place what to name in a refusal
     * @throws UsageException for a look from a place that the archive has no name for
     */
    SeenState seen(String by, String place) {
        if (pictureId.isPresent()) {
            return SeenState.in(pictureId.get(), planet.id(), moon.id(), phenomenon.id(), state.id(), by);
        }
        if (shot.site().isPresent() && site.isEmpty()) {
            throw new UsageException(place + ": a look is kept with the name of a site of the archive; add it with"
                    + " oblate site add, and name it in place of its coordinates");
        }
        SeenState.Look look = new SeenState.Look(
                shot.midUtc(), shot.sigmaS(), Optional.of(shot.observer()).filter(o -> !o.isBlank()), site);
        return SeenState.in(look, planet.id(), moon.id(), phenomenon.id(), state.id(), by);
    }
}
