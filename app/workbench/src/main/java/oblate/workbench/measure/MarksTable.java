/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BorderLayout;
import java.awt.Component;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JPanel;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.table.JTableHeader;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.disc.SurfacePoint;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** The marks of a picture: name, longitude, latitude, distance from the meridian, each with its error. */
final class MarksTable extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MarksTable.class);
    private static final String UNNAMED = TEXTS.text("marks.unnamed");
    private static final String[] COLUMNS = {
        TEXTS.text("marks.feature"),
        TEXTS.text("marks.longitude"),
        TEXTS.text("marks.latitude"),
        TEXTS.text("marks.meridian")
    };
    private final Model model = new Model();
    private final JTable table = new JTable(model);
    private boolean following;

    MarksTable(Supplier<Palette> palette, Consumer<Optional<StoredMark>> whenChosen) {
        super(new BorderLayout());
        setOpaque(false);
        table.setName("marks");
        table.getAccessibleContext().setAccessibleName(TEXTS.text("marks.name"));
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        table.setShowGrid(false);
        table.setRowHeight(24);
        table.setFillsViewportHeight(false);
        table.setFont(Theme.figureFont(-2));
        table.setToolTipText(TEXTS.text("marks.tip"));
        JTableHeader header = table.getTableHeader();
        header.setReorderingAllowed(false);
        header.setFont(Theme.bodyFont(-2));
        for (int i = 0; i < COLUMNS.length; i++) {
            table.getColumnModel().getColumn(i).setCellRenderer(new Cell(palette, i > 0));
        }
        table.getColumnModel().getColumn(0).setPreferredWidth(88);
        table.getColumnModel().getColumn(1).setPreferredWidth(122);
        table.getColumnModel().getColumn(2).setPreferredWidth(102);
        table.getColumnModel().getColumn(3).setPreferredWidth(58);
        table.getSelectionModel().addListSelectionListener(e -> {
            if (!following && !e.getValueIsAdjusting()) {
                int row = table.getSelectedRow();
                whenChosen.accept(row < 0 ? Optional.empty() : Optional.of(model.marks.get(row)));
            }
        });
        add(header, BorderLayout.NORTH);
        add(table, BorderLayout.CENTER);
    }

    void show(List<StoredMark> marks, Optional<ApparentDisc> disc, Optional<Long> chosen) {
        following = true;
        model.marks = List.copyOf(marks);
        model.disc = disc;
        model.fireTableDataChanged();
        for (int i = 0; i < marks.size(); i++) {
            if (chosen.equals(Optional.of(marks.get(i).id()))) {
                table.setRowSelectionInterval(i, i);
            }
        }
        following = false;
        revalidate();
    }

    /** One cell's text, by the grammar of numbers. */
    static String text(StoredMark mark, Optional<ApparentDisc> disc, int column) {
        if (column == 0) {
            return mark.featureName().orElse(UNNAMED);
        }
        Optional<SurfacePoint> point = mark.mark().point();
        if (point.isEmpty() || disc.isEmpty()) {
            return column == 1 ? TEXTS.text("marks.no.longitude") : "";
        }
        double sigmaLon = mark.mark().errors().map(ErrorBudget::totalLonDeg).orElse(0.0);
        double sigmaLat = mark.mark().errors().map(ErrorBudget::totalLatDeg).orElse(0.0);
        RotationSystem system = disc.get().planet().customarySystem(point.get().latGraphicDeg());
        return switch (column) {
            case 1 ->
                SystemLabel.brief(system) + " " + Figures.longitude(point.get().lonDeg(disc.get(), system), sigmaLon);
            case 2 -> Figures.withSigma(point.get().latGraphicDeg(), sigmaLat, "°");
            default ->
                (point.get().fromMeridianDeg() > 0 ? "+" : "")
                        + Figures.fixed(point.get().fromMeridianDeg(), 1) + "°";
        };
    }

    /** Rows of marks. */
    private static final class Model extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private transient List<StoredMark> marks = List.of();
        private transient Optional<ApparentDisc> disc = Optional.empty();

        @Override
        public int getRowCount() {
            return marks.size();
        }

        @Override
        public int getColumnCount() {
            return COLUMNS.length;
        }

        @Override
        public String getColumnName(int column) {
            return COLUMNS[column];
        }

        @Override
        public Object getValueAt(int row, int column) {
            return text(marks.get(row), disc, column);
        }
    }

    /** Figures in figures' face, to the right. */
    private static final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;
        private final transient Supplier<Palette> palette;
        private final boolean figures;

        Cell(Supplier<Palette> palette, boolean figures) {
            this.palette = palette;
            this.figures = figures;
            setHorizontalAlignment(figures ? SwingConstants.RIGHT : SwingConstants.LEFT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable of, Object value, boolean selected, boolean focused, int row, int column) {
            super.getTableCellRendererComponent(of, value, selected, false, row, column);
            setBorder(javax.swing.BorderFactory.createEmptyBorder(2, 5, 2, 5));
            setFont(figures ? Theme.figureFont(-2) : Theme.bodyFont(-1));
            if (!selected) {
                setForeground(
                        value.equals(UNNAMED)
                                ? palette.get().alarm()
                                : palette.get().ink());
            }
            return this;
        }
    }
}
