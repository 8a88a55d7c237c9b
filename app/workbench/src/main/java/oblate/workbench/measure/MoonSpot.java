/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.sky.ApparentDisc;
import oblate.sky.MoonPlace;
import oblate.sky.ShadowPlace;
import oblate.sky.Sky;
import oblate.workbench.words.Texts;

/**
 * Where a moon, or its shadow on the globe, is expected in a picture.
 *
 * @param moon its name
 * @param shadow the shadow, not the moon
 * @param at its middle
 * @param radiusPx radius of the moon (px), positive
 * @param sigmaPx standard error of {@code at} along any one direction, from the moon's own place, the fit and the picture's time (px)
 * @param state in words: in transit, behind the planet, in eclipse, "shadow" or empty for a moon in plain view
 */
public record MoonSpot(String moon, boolean shadow, PixelPoint at, double radiusPx, double sigmaPx, String state) {
    private static final Texts TEXTS = Texts.of(MoonSpot.class);
    private static final String BEHIND = TEXTS.text("moon.behind");
    private static final String IN_ECLIPSE = TEXTS.text("moon.eclipse");
    private static final double STEP_S = 60;

    /** What it is called as a feature. */
    String featureName() {
        return shadow ? "shadow of " + moon : moon;
    }

    /** What kind of feature it is. */
    String kind() {
        return shadow ? "shadow" : "moon";
    }

    /** Whether it could be seen. */
    boolean isVisible() {
        return !state.equals(BEHIND) && !state.equals(IN_ECLIPSE);
    }

    /** Moons at an instant and a minute later; empty where they are not known. */
    record Places(List<MoonPlace> now, List<MoonPlace> later) {
        Places {
            now = List.copyOf(now);
            later = List.copyOf(later);
        }

        static Places none() {
            return new Places(List.of(), List.of());
        }

        static Places of(Sky sky, ApparentDisc disc) {
            if (disc.planet().moons().isEmpty()) {
                return none();
            }
            try {
                return new Places(
                        sky.moons(disc.planet(), disc.time()),
                        sky.moons(disc.planet(), disc.time().plusClockSeconds(STEP_S)));
            } catch (ProblemException e) {
                // Outside the span of their motion nothing is predicted.
                return none();
            }
        }
    }

    /** All moons and shadows of a placed disc. */
    static List<MoonSpot> of(Places places, DiscFrame frame, StoredFit fit, double timeSigmaS) {
        double radiusPx = frame.placement().equatorialRadiusPx();
        Map<String, MoonPlace> later = new HashMap<>();
        places.later().forEach(m -> later.put(m.id(), m));
        List<MoonSpot> spots = new ArrayList<>();
        for (MoonPlace moon : places.now()) {
            MoonPlace next = later.getOrDefault(moon.id(), moon);
            double pxPerArcsec = radiusPx / moon.planetRadiusArcsec();
            double radii = Math.hypot(moon.xWestRadii(), moon.yNorthRadii());
            double moved = Math.hypot(next.xWestRadii() - moon.xWestRadii(), next.yNorthRadii() - moon.yNorthRadii())
                    * radiusPx
                    / STEP_S
                    * timeSigmaS;
            double sigma = together(
                    moon.offsetSigmaArcsec() * pxPerArcsec,
                    moved,
                    fit.fit().covariance().sigmaCentrePx(),
                    fit.fit().covariance().sigmaRadiusPx() * radii,
                    Math.toRadians(fit.fit().covariance().sigmaPoleAngleDeg()) * radii * radiusPx);
            double size = moon.diameterArcsec() / 2 * pxPerArcsec;
            PixelPoint at = frame.placeOffset(moon.xWestRadii(), moon.yNorthRadii());
            spots.add(new MoonSpot(moon.name(), false, at, size, sigma, state(moon)));
            moon.shadow().ifPresent(s -> spots.add(shadow(moon, s, frame, size, sigma)));
        }
        return List.copyOf(spots);
    }

    private static MoonSpot shadow(MoonPlace moon, ShadowPlace s, DiscFrame frame, double size, double sigma) {
        PixelPoint at = frame.placeOffset(s.xWestRadii(), s.yNorthRadii());
        return new MoonSpot(moon.name(), true, at, size, sigma, "shadow");
    }

    private static double together(double... sigmas) {
        double sum = 0;
        for (double sigma : sigmas) {
            sum += sigma * sigma;
        }
        return Math.sqrt(sum);
    }

    private static String state(MoonPlace moon) {
        if (moon.occulted()) {
            return BEHIND;
        }
        if (moon.eclipsed()) {
            return IN_ECLIPSE;
        }
        return moon.inTransit() ? TEXTS.text("moon.transit") : "";
    }
}
