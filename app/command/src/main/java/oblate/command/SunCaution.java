/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Locale;
import java.util.Optional;
import oblate.sky.GroundView;
import oblate.sky.PlanetModel;

/** The word of warning beside a planet that stands near the Sun by day. */
final class SunCaution {

    private SunCaution() {}

    /** The sentence, if any of the views asks for it. */
    static Optional<String> of(PlanetModel planet, Iterable<GroundView> views) {
        for (GroundView view : views) {
            if (view.isSunDangerous() && view.altitudeDeg() > 0) {
                return Optional.of(String.format(
                        Locale.ROOT,
                        "Caution: at %s the Sun is up or about to rise, %.0f deg from %s: it must never get into an unfiltered telescope or finder, not even while slewing (docs/cautions.md).",
                        view.time().iso(0),
                        view.sunSeparationDeg(),
                        planet.label()));
            }
        }
        return Optional.empty();
    }
}
