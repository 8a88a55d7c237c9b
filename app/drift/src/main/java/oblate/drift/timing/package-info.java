/* SPDX-License-Identifier: Apache-2.0 */
/**
 * When the moons did what they were foretold to do: times of contacts and of places on a moon's way, observed minus predicted (O−P), with errors.
 *
 * <p>The concept a newcomer gets wrong: many pictures of one night do not make a time better than the clock they were all dated by. What pictures share (the
 * clock, the moon's orbit, a fit's leaning) is carried apart from what each has of its own, and is never averaged away.
 *
 * <p>Sign: O−P is positive when a thing is seen at a later time, by the pictures' clock, than foretold; a clock that is fast makes it positive.
 */
package oblate.drift.timing;
