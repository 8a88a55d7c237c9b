/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import oblate.archive.Archive;
import oblate.drift.DriftFitter;
import oblate.drift.plan.FollowedFeatures;
import oblate.sky.PlanetModel;

/** The motions of an archive's features, fitted once until the archive changes. Safe for many threads. */
final class Followed {
    private final Archive archive;
    private final AtomicLong edition = new AtomicLong();
    private final Map<Key, FollowedFeatures> fitted = new ConcurrentHashMap<>();

    /** Which planet, of which edition of the archive. */
    private record Key(String planetId, long edition) {}

    Followed(Archive archive) {
        this.archive = archive;
    }

    /** To be called when marks may have changed. */
    void forget() {
        edition.incrementAndGet();
        fitted.clear();
    }

    FollowedFeatures of(PlanetModel planet) {
        return fitted.computeIfAbsent(
                new Key(planet.id(), edition.get()), k -> FollowedFeatures.of(archive, planet, new DriftFitter()));
    }
}
