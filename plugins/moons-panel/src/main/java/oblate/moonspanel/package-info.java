/* SPDX-License-Identifier: Apache-2.0 */
/** A panel of the window: the events of a planet's moons and what the planet and its moons look like at an instant. */
package oblate.moonspanel;
