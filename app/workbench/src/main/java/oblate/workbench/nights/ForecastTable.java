/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Component;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.swing.BorderFactory;
import javax.swing.JTable;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.archive.FilingForecast;
import oblate.image.CaptureTime;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** What was understood of each file, those that want a look first. */
final class ForecastTable extends JTable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ForecastTable.class);
    private static final List<String> COLUMNS = List.of(
            TEXTS.text("forecast.file"),
            TEXTS.text("forecast.middle"),
            TEXTS.text("forecast.source"),
            TEXTS.text("forecast.planet"),
            TEXTS.text("forecast.look"));
    /** So that in a window of the usual width no date and no planet is cut. */
    private static final int[] WIDTHS = {180, 210, 96, 88, 340};
    /** In a narrow window all give way, and what is wrong is still seen. */
    private static final int[] LEAST = {80, 60, 40, 50, 160};

    private final transient PanelContext context;
    private final transient Function<String, String> planetLabel;
    private final Model model = new Model();

    ForecastTable(PanelContext context, Function<String, String> planetLabel) {
        this.context = context;
        this.planetLabel = planetLabel;
        setName("filing.table");
        setModel(model);
        setFocusable(false);
        setRowHeight(22);
        setShowGrid(false);
        getTableHeader().setReorderingAllowed(false);
        for (int i = 0; i < WIDTHS.length; i++) {
            getColumnModel().getColumn(i).setPreferredWidth(WIDTHS[i]);
            getColumnModel().getColumn(i).setMinWidth(LEAST[i]);
        }
        setDefaultRenderer(Object.class, new Cell());
    }

    void show(List<FilingForecast> forecasts) {
        model.rows = forecasts.stream()
                .sorted(Comparator.comparingInt(ForecastTable::rank))
                .toList();
        model.fireTableDataChanged();
    }

    /** Refused ones first, then those that lack something, then those with remarks. */
    private static int rank(FilingForecast f) {
        if (f.refusal().isPresent()) {
            return 0;
        }
        if (f.time().isEmpty()) {
            return 1;
        }
        if (f.planetId().isEmpty()) {
            return 2;
        }
        return f.remarks().isEmpty() ? 4 : 3;
    }

    /** What a person should know of a file, in words; empty when all is well. */
    static String look(FilingForecast f) {
        Optional<String> wrong = f.refusal().or(f::whyNoTime);
        if (wrong.isPresent()) {
            // The sentence begins with the path, which stands in the first column already.
            String sentence = wrong.get();
            String path = f.file() + ": ";
            return sentence.startsWith(path) ? sentence.substring(path.length()) : sentence;
        }
        return (f.planetId().isEmpty() ? TEXTS.text("forecast.no.planet") + " " : "") + String.join(" ", f.remarks());
    }

    private final class Model extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private transient List<FilingForecast> rows = List.of();

        @Override
        public int getRowCount() {
            return rows.size();
        }

        @Override
        public int getColumnCount() {
            return COLUMNS.size();
        }

        @Override
        public String getColumnName(int column) {
            return COLUMNS.get(column);
        }

        @Override
        public Object getValueAt(int row, int column) {
            FilingForecast f = rows.get(row);
            return switch (column) {
                case 0 ->
                    Optional.ofNullable(f.file().getFileName())
                            .map(Path::toString)
                            .orElse("");
                case 1 ->
                    f.time()
                            .map(CaptureTime::midUtc)
                            .map(t -> Figures.dayUt(t) + ", " + Figures.clockUt(t))
                            .orElse(f.refusal().isPresent() ? "" : TEXTS.text("forecast.unknown"));
                case 2 -> f.time().map(CaptureTime::place).orElse("");
                case 3 ->
                    f.planetId().map(planetLabel).orElse(f.refusal().isPresent() ? "" : TEXTS.text("forecast.unknown"));
                default -> look(f);
            };
        }
    }

    private final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focused, int row, int column) {
            super.getTableCellRendererComponent(table, value, false, false, row, column);
            FilingForecast f = model.rows.get(row);
            setBorder(BorderFactory.createEmptyBorder(0, 8, 0, 8));
            setFont(column == 1 ? Theme.figureFont(-2) : Theme.bodyFont(-1));
            boolean wrong = rank(f) <= 2 && (column == 4 || column == 0);
            setForeground(wrong ? context.palette().alarm() : context.palette().ink());
            setToolTipText(
                    column == 4 && !look(f).isEmpty() ? look(f) : f.file().toString());
            return this;
        }
    }
}
