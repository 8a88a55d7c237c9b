/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.MarkSearch;
import oblate.drift.Drift;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Makes the tables from an archive. Stateless. */
public final class Reports {

    /**
     * Positions: one row per current mark on the globe, in order of time, each traceable to its picture by SHA-256.
     *
     * @param system system of the column {@code lon_deg}; empty for each feature's own
     */
    public ReportTable positions(Archive archive, PlanetModel planet, MarkSearch search, Optional<RotationSystem> system) {
        return new PositionTable(archive, planet, system).of(search);
    }

    /** Drifts: one row per fitted drift. */
    public ReportTable drifts(PlanetModel planet, List<Drift> drifts) {
        return DriftTable.of(planet, drifts);
    }
}
