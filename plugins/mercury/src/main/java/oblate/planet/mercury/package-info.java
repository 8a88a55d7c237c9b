/* SPDX-License-Identifier: Apache-2.0 */
/** Mercury as a plug-in: shape, pole and rotation, each value with its source. Nothing but data lives here. */
package oblate.planet.mercury;
