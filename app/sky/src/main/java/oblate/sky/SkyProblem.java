/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import oblate.base.ProblemKind;

/** What can go wrong in this stage, each as one sentence. */
public enum SkyProblem implements ProblemKind {
    /** Not of the form of a time. */
    NOT_A_TIME("\"{0}\" is not a time in ISO 8601; write it like 2024-12-07T20:00:00Z"),
    /** A time that does not say which clock it is from. */
    NO_ZONE("\"{0}\" does not say its time zone; if it is UTC, write {0}Z"),
    /** A time with an offset from UTC. */
    NOT_UTC("\"{0}\" is not in UTC; turn it into UTC and end it with Z"),
    /** A date or a reading of the clock that never was. */
    NO_SUCH_TIME("\"{0}\" never was: {1}; correct the time"),
    /** Second 60 where no leap second was inserted. */
    NO_LEAP_SECOND("\"{0}\" never was: {1} had no leap second; correct the time"),
    /** Outside the planetary ephemeris. */
    OUTSIDE_EPHEMERIS("{0} at {1}: planet positions ({2}) reach from {3} to {4} only; choose a time in that span"),
    /** Outside the span of a theory of moons. */
    OUTSIDE_MOONS("{0} at {1}: the places of all its moons are known from {2} to {3} only; choose a time in that span"),
    /** A planet whose plug-in brings no moons. */
    NO_MOONS("{0}: no moons are known here for this planet; choose one whose plug-in brings moons"),
    /** A place on the ground that cannot be. */
    BAD_SITE(
            "\"{0}\" is not a place on the Earth: {1}; write LAT,LON,HEIGHT in degrees north, degrees east and metres, like 48.2,16.3,170"),
    /** More crossings of the meridian than anybody reads. */
    TOO_MANY_CROSSINGS("from {0} to {1} there are some {2} crossings; choose a range with {3} at most"),
    /** A drift that is no drift any more. */
    DRIFT_TOO_FAST("a drift of {0} deg per day is no drift on {1}, which turns by {2}; give it in deg per day"),
    /** A latitude that faces away. */
    LATITUDE_HIDDEN(
            "latitude {0} of {1} cannot be seen on the central meridian at {2}, when the Earth stands over latitude {3}; choose another"),
    /** A word that names no planet. */
    NO_SUCH_PLANET("there is no planet \"{0}\"; did you mean {1}? Known planets: {2}"),
    /** No planet plug-in at all. */
    NO_PLANETS("no planet is known, so \"{0}\" cannot be found; put the planet plug-ins back"),
    /** An ephemeris file that cannot be used. */
    BAD_EPHEMERIS(
            "{0}: not a usable planetary ephemeris in the JPL binary layout: {1}; fetch the file again or remove it"),
    /** A leap-second file that cannot be used. */
    BAD_LEAP_SECONDS("{0}: not a usable list of leap seconds: {1}; fetch the file again or remove it"),
    /** A series of a moon's motion that cannot be used. */
    BAD_SERIES("{0}: not a usable series of moon places: {1}; put the plug-in's own file back");

    private final String template;

    SkyProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
