/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.util.Optional;
import java.util.Set;
import oblate.archive.MarkSearch;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * Which table is wanted and how it is to be written.
 *
 * @param drifts one row per feature rather than one per mark
 * @param planet planet
 * @param search which marks
 * @param system system of the longitudes; empty for each feature's own
 * @param format how it is written
 * @param leftOut names of columns to leave out
 */
record PageWish(
        boolean drifts,
        PlanetModel planet,
        MarkSearch search,
        Optional<RotationSystem> system,
        ReportFormat format,
        Set<String> leftOut) {}
