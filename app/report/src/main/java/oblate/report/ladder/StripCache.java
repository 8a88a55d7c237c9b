/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Strips made before, the most recently used ones; about 100 kB each. Safe for many threads. */
public final class StripCache {
    private static final int MOST = 200;

    private final Map<Key, LadderStrip> strips = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, LadderStrip> eldest) {
            return size() > MOST;
        }
    };

    /**
     * What makes a strip what it is.
     *
     * @param fitId number of the fit it was made with
     * @param systemId system of the middle
     * @param middle longitude of its middle (hundredths of a degree)
     * @param widthDeg width (deg)
     * @param southDeg southern edge (deg)
     * @param northDeg northern edge (deg)
     */
    record Key(long fitId, String systemId, long middle, double widthDeg, double southDeg, double northDeg) {}

    synchronized Optional<LadderStrip> get(Key key) {
        return Optional.ofNullable(strips.get(key));
    }

    synchronized void put(Key key, LadderStrip strip) {
        strips.put(key, strip);
    }
}
