/**
 * What the sky says: time scales, planet positions, rotation, and the apparent disc of a planet at an instant.
 *
 * <p>The concept a newcomer gets wrong: the disc is seen as it was one light time ago, and rotation runs on TDB, not on UTC. A longitude here is
 * planetographic as the IAU defines it per planet (west-positive for direct rotators, east-positive for Venus and Uranus) and the central
 * meridian is geometric: no phase correction. This package knows nothing of pictures.
 *
 * <pre>{@code
 * Sky sky = Sky.bundled();
 * ApparentDisc disc = sky.disc(jupiter, Instant.parse("2024-12-07T20:00:00Z"));
 * double systemIII = disc.subEarth().iauLonDeg();
 * }</pre>
 */
package oblate.sky;
