package oblate.sample;

/**
 * An invented observing site.
 *
 * @param id short name
 * @param label words
 * @param latDeg geodetic latitude (deg, north positive)
 * @param lonEastDeg longitude (deg, east positive)
 * @param heightM height above the sea (m)
 */
public record Site(String id, String label, double latDeg, double lonEastDeg, double heightM) {}
