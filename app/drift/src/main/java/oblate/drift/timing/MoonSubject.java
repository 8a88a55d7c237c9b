/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Locale;
import java.util.Optional;
import oblate.archive.Feature;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;

/**
 * A moon, or its shadow.
 *
 * @param moon the moon
 * @param shadow whether its shadow is meant
 */
public record MoonSubject(MoonFacts moon, boolean shadow) {

    /** As a person reads it, e.g. "Io" or "Io's shadow". */
    public String words() {
        return shadow ? moon.name() + "'s shadow" : moon.name();
    }

    /**
     * What a feature of an archive is, by its kind ("moon", "shadow") and the moon's name in its own; a feature that bears just a moon's name is that moon. Empty for
     * a feature of the surface.
     */
    public static Optional<MoonSubject> of(PlanetModel planet, Feature feature) {
        String words = " " + feature.name().toLowerCase(Locale.ROOT).replaceAll("'s\\b|’s\\b|[^a-z]+", " ") + " ";
        boolean kindOfMoon = feature.kind().equals("moon") || feature.kind().equals("shadow");
        boolean shadow = feature.kind().equals("shadow") || words.contains(" shadow ");
        String bare = words.replace(" shadow ", " ").replace(" of ", " ").strip();
        return planet.moons().stream()
                .filter(m -> kindOfMoon ? words.contains(" " + m.id() + " ") : bare.equals(m.id()))
                .findFirst()
                .map(m -> new MoonSubject(m, shadow));
    }
}
