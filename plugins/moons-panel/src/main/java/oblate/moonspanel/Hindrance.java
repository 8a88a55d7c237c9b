/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import oblate.workbench.words.Texts;

/** Why an event cannot be seen. */
enum Hindrance {
    HIDDEN("hindrance.hidden"),
    LOW("hindrance.low"),
    DAYLIGHT("hindrance.daylight");

    private static final Texts TEXTS = Texts.of(Hindrance.class);

    /** Planet higher than this counts as up (deg). */
    static final double LOWEST_PLANET_DEG = 5;
    /** Sun lower than this counts as dark (deg). */
    static final double HIGHEST_SUN_DEG = -6;

    private final String key;

    Hindrance(String key) {
        this.key = key;
    }

    /** In words. */
    String words() {
        return TEXTS.text(key);
    }

    /**
     * What hinders at all of some moments; none when one of them will do.
     *
     * @param moments when there is something to see, were the planet up; none when all of it is hidden
     * @param ground the place; without one only what is hidden is told
     */
    static Optional<Hindrance> at(List<UtcTime> moments, PlanetModel planet, Optional<GroundSky> ground) {
        if (moments.isEmpty()) {
            return Optional.of(HIDDEN);
        }
        if (ground.isEmpty()) {
            return Optional.empty();
        }
        List<GroundView> up = moments.stream()
                .map(t -> ground.get().view(planet, t))
                .filter(v -> v.altitudeDeg() > LOWEST_PLANET_DEG)
                .toList();
        if (up.stream().anyMatch(v -> v.sunAltitudeDeg() < HIGHEST_SUN_DEG)) {
            return Optional.empty();
        }
        return Optional.of(up.isEmpty() ? LOW : DAYLIGHT);
    }
}
