/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import oblate.drift.Drift;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import oblate.report.Reports;
import oblate.sky.PlanetModel;

/** The table of drifts as text for the clipboard, as reports write it. Stateless. */
final class DriftCopy {
    private DriftCopy() {}

    static String of(PlanetModel planet, List<Fitted> fits, List<ReportFormat> formats) {
        List<Drift> drifts = fits.stream().flatMap(f -> f.drift().stream()).toList();
        ReportTable table = new Reports().drifts(planet, drifts);
        Optional<ReportFormat> csv =
                formats.stream().filter(f -> f.id().equals("csv")).findFirst();
        ReportFormat format = csv.or(() -> formats.stream().findFirst())
                .orElseThrow(() -> new IllegalStateException("no way to write a table"));
        StringWriter out = new StringWriter();
        try {
            format.write(table, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }
}
