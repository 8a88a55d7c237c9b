package oblate.sample;

import java.time.Instant;

/**
 * How high a place of the sky stands at a site, and which way the vertical runs there; by the plain formulas of the handbooks, good to some hundredths of a degree.
 *
 * @param altitudeDeg above the horizon, no refraction (deg)
 * @param zenithPaDeg position angle of the zenith, from celestial north through east (deg): the parallactic angle
 */
record LocalSky(double altitudeDeg, double zenithPaDeg) {
    private static final Instant J2000 = Instant.parse("2000-01-01T12:00:00Z");

    static LocalSky at(Site site, Instant time, double raDeg, double decDeg) {
        double days = (time.toEpochMilli() - J2000.toEpochMilli()) / 86.4e6;
        // Mean sidereal time of Greenwich, linear part: Meeus, Astronomical Algorithms, (12.4), from memory.
        double sidereal = 280.46061837 + 360.98564736629 * days;
        double hourAngle = Math.toRadians(sidereal + site.lonEastDeg() - raDeg);
        double lat = Math.toRadians(site.latDeg());
        double dec = Math.toRadians(decDeg);
        double altitude = Math.asin(Math.sin(lat) * Math.sin(dec) + Math.cos(lat) * Math.cos(dec) * Math.cos(hourAngle));
        double zenith = Math.atan2(
                Math.cos(lat) * Math.sin(hourAngle),
                Math.sin(lat) * Math.cos(dec) - Math.cos(lat) * Math.sin(dec) * Math.cos(hourAngle));
        return new LocalSky(Math.toDegrees(altitude), Math.toDegrees(zenith));
    }
}
