/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.workbench.words.Texts;

/**
 * What the sky does over a span: the apparent size through time, oppositions and conjunctions with the Sun. Immutable.
 *
 * @param sizes apparent equatorial diameter at even steps
 * @param events oppositions and conjunctions
 */
record Season(List<Size> sizes, List<Event> events) {
    private static final Texts TEXTS = Texts.of(Season.class);
    static final String OPPOSITION = TEXTS.text("ribbon.opposition");
    static final String CONJUNCTION = TEXTS.text("ribbon.conjunction");

    /** Diameter at an instant. */
    record Size(Instant time, double diameterArcsec) {}

    /** Something to mark on the ribbon. */
    record Event(Instant time, String name) {}

    static Season none() {
        return new Season(List.of(), List.of());
    }

    /** Steps of two days over the span, at most 800; clipped to the ephemeris. */
    static Season of(Sky sky, PlanetModel planet, Instant from, Instant to) {
        Instant first = from.isBefore(sky.firstInstant()) ? sky.firstInstant() : from;
        Instant last = to.isAfter(sky.lastInstant()) ? sky.lastInstant() : to;
        if (!first.isBefore(last)) {
            return none();
        }
        long stepS = Math.max(2 * 86_400L, Duration.between(first, last).toSeconds() / 800);
        List<Size> sizes = new ArrayList<>();
        List<Double> elongations = new ArrayList<>();
        for (Instant t = first; !t.isAfter(last); t = t.plusSeconds(stepS)) {
            ApparentDisc disc = sky.disc(planet, t);
            sizes.add(new Size(t, disc.diameterEquatorialArcsec()));
            elongations.add(disc.elongationDeg());
        }
        return new Season(List.copyOf(sizes), events(sizes, elongations));
    }

    private static List<Event> events(List<Size> sizes, List<Double> elongations) {
        List<Event> events = new ArrayList<>();
        for (int i = 1; i + 1 < elongations.size(); i++) {
            double before = elongations.get(i - 1);
            double here = elongations.get(i);
            double after = elongations.get(i + 1);
            if (here > 165 && here >= before && here > after) {
                events.add(new Event(sizes.get(i).time(), OPPOSITION));
            } else if (here < 15 && here <= before && here < after) {
                events.add(new Event(sizes.get(i).time(), CONJUNCTION));
            }
        }
        return List.copyOf(events);
    }

    /** Apparent equatorial diameter at an instant within the span (arcsec), between the steps along a straight line. */
    Optional<Double> diameterArcsec(Instant at) {
        for (int i = 1; i < sizes.size(); i++) {
            Size before = sizes.get(i - 1);
            Size after = sizes.get(i);
            if (!at.isBefore(before.time()) && !at.isAfter(after.time())) {
                double share = Duration.between(before.time(), at).toMillis()
                        / (double) Duration.between(before.time(), after.time()).toMillis();
                return Optional.of(
                        before.diameterArcsec() + share * (after.diameterArcsec() - before.diameterArcsec()));
            }
        }
        return Optional.empty();
    }
}
