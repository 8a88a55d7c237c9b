/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import oblate.sky.UtcTime;

/** Times of events as the panel says them, in UTC. */
final class EventClock {
    private EventClock() {}

    /** {@code 21:07:24}. */
    static String clock(UtcTime time) {
        String iso = time.iso(0);
        return iso.substring(iso.indexOf('T') + 1).replace("Z", "");
    }

    /** {@code 03-24 21:07:24}. */
    static String day(UtcTime time) {
        String iso = time.iso(0);
        return iso.substring(iso.indexOf('-', 1) + 1).replace('T', ' ').replace("Z", "");
    }
}
