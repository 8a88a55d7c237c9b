package oblate.sample;

import java.util.Optional;
import oblate.sky.MoonPlace;

/**
 * A moon as seen from the Earth, in the planet's equatorial radii.
 *
 * @param name lower-case name
 * @param x along the planet's equator as seen, toward celestial west (preceding)
 * @param y along the projected pole
 * @param z toward the Earth, positive on the near side
 * @param radius radius of the moon's disc
 * @param lit false when it is in the planet's shadow
 * @param shadow where the axis of its shadow meets the side of the globe that is seen
 */
record MoonSpot(String name, double x, double y, double z, double radius, boolean lit, Optional<ShadowSpot> shadow) {

    /**
     * A shadow on the globe.
     *
     * @param x along the equator as seen
     * @param y along the projected pole
     * @param penumbra half the width of its soft edge
     */
    record ShadowSpot(double x, double y, double penumbra) {}

    private static final double KM_PER_AU = 149_597_870.7;

    private static final double SUN_RADIUS_KM = 695_700;

    static MoonSpot of(MoonPlace place, double planetRadiusKm, double sunDistanceAu) {
        double fromPlanet = Math.sqrt(place.xWestRadii() * place.xWestRadii()
                + place.yNorthRadii() * place.yNorthRadii()
                + place.zTowardEarthRadii() * place.zTowardEarthRadii());
        double penumbra = Math.max(0.004, (fromPlanet - 1) * SUN_RADIUS_KM / (sunDistanceAu * KM_PER_AU));
        return new MoonSpot(
                place.id(),
                place.xWestRadii(),
                place.yNorthRadii(),
                place.zTowardEarthRadii(),
                place.moon().radiusKm() / planetRadiusKm,
                !place.eclipsed(),
                place.shadow().map(s -> new ShadowSpot(s.xWestRadii(), s.yNorthRadii(), penumbra)));
    }

    /** Brightness of the surface against a bright cloud, and its tint, after the moons' albedos in round figures. */
    double[] tint() {
        return switch (name) {
            case "io" -> new double[] {1.02, 0.92, 0.62};
            case "europa" -> new double[] {1.02, 0.98, 0.90};
            case "ganymede" -> new double[] {0.66, 0.62, 0.57};
            default -> new double[] {0.33, 0.31, 0.29};
        };
    }
}
