/* SPDX-License-Identifier: Apache-2.0 */
/**
 * What the moons of a planet do to one another and to the planet: transits, shadows, occultations, eclipses, and events between two moons.
 *
 * <p>The concept a newcomer gets wrong: an event has no one moment. A moon has a disc, so an edge is crossed in minutes between outer and inner
 * touch; it is seen late by the light's way, and each leg Sun, moon, planet, Earth has its own. All times handed out are those at which the
 * thing is seen from the Earth's centre, or from a place on the ground where one is asked for.
 *
 * <pre>{@code
 * MoonEvents events = MoonEvents.of(sky, jupiter);
 * List<Passage> week = events.passages(EventSearch.between(from, to));
 * }</pre>
 */
package oblate.sky.event;
