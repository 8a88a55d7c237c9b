package oblate.report;

import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.drift.Drift;
import oblate.archive.MarkSearch;
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
        throw new UnsupportedOperationException(archive + "" + planet + search + system);
    }

    /** Drifts: one row per fitted drift. */
    public ReportTable drifts(PlanetModel planet, List<Drift> drifts) {
        throw new UnsupportedOperationException(planet + "" + drifts);
    }
}
