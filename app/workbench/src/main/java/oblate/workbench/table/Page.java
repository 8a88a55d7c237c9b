/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import oblate.archive.Archive;
import oblate.archive.StoredMark;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.report.Column;
import oblate.report.ReportTable;
import oblate.report.Reports;
import oblate.workbench.words.Texts;

/**
 * A table as it will be written.
 *
 * @param text the whole file
 * @param rows how many rows it has
 * @param columns every column there is, left out or not
 * @param worries what would embarrass, one sentence each
 * @param pictures pictures whose results are in it
 */
record Page(String text, int rows, List<Column> columns, List<String> worries, List<Long> pictures) {
    private static final Texts TEXTS = Texts.of(Page.class);

    /** Makes it. Not on the event thread. */
    static Page of(Archive archive, PageWish wish, Progress progress) {
        List<String> worries = new ArrayList<>();
        List<StoredMark> marks = archive.marks(wish.search());
        ReportTable table;
        if (wish.drifts()) {
            table = new Reports().drifts(wish.planet(), fitted(archive, wish, worries, progress));
        } else {
            table = new Reports().positions(archive, wish.planet(), wish.search(), wish.system());
            worries.addAll(new Worries(archive).of(marks));
        }
        List<String> kept = table.columns().stream()
                .map(Column::name)
                .filter(name -> !wish.leftOut().contains(name))
                .toList();
        StringWriter out = new StringWriter();
        try {
            wish.format().write(kept.isEmpty() ? table : table.only(kept), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<Long> pictures = marks.stream()
                .map(m -> m.mark().pictureId())
                .distinct()
                .sorted()
                .toList();
        return new Page(out.toString(), table.rows().size(), table.columns(), worries, pictures);
    }

    private static List<Drift> fitted(Archive archive, PageWish wish, List<String> worries, Progress progress) {
        List<Drift> fits = new ArrayList<>();
        List<LongitudeSeries> all = new MarkSeries().ofArchive(archive, wish.planet(), wish.system());
        for (LongitudeSeries series : all) {
            if (progress.isCancelled()) {
                break;
            }
            progress.report(fits.size(), all.size(), series.feature());
            try {
                Drift drift = new DriftFitter().fit(series);
                fits.add(drift);
                drift.warnings().forEach(w -> worries.add(TEXTS.text("worry.of.feature", series.feature(), w)));
            } catch (ProblemException e) {
                worries.add(e.getMessage());
            }
        }
        return fits;
    }
}
