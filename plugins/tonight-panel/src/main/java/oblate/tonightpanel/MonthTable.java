/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.sky.DarkWindow;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.timeline.TimeAxis;
import oblate.workbench.words.Texts;

/** The nights of a month: window, best altitude, what there is to see; a click or Enter goes to a night. */
final class MonthTable extends JTable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MonthTable.class);
    private static final String[] KEYS = {
        "month.night",
        "month.bar",
        "month.window",
        "month.hours",
        "month.best",
        "month.capture",
        "month.crossings",
        "month.moons"
    };
    private static final int[] WIDTHS = {118, 190, 150, 64, 110, 90, 84, 96};
    private static final int BAR = 1;
    private final transient Supplier<Palette> palette;
    private final Rows rows;

    MonthTable(Supplier<Palette> palette, Consumer<LocalDate> whenChosen) {
        super(new Rows());
        this.palette = palette;
        rows = (Rows) getModel();
        setName("tonight.month");
        getAccessibleContext().setAccessibleName(TEXTS.text("month.name"));
        setToolTipText(TEXTS.text("month.tip"));
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setShowGrid(false);
        setRowHeight(24);
        setFillsViewportHeight(true);
        getTableHeader().setReorderingAllowed(false);
        for (int i = 0; i < KEYS.length; i++) {
            getColumnModel().getColumn(i).setPreferredWidth(WIDTHS[i]);
            getColumnModel().getColumn(i).setCellRenderer(i == BAR ? new Bar() : new Cell(i > 0));
        }
        addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                night(rowAtPoint(e.getPoint())).ifPresent(n -> whenChosen.accept(n.date()));
            }
        });
        Deed.of(TEXTS, "month.go", () -> night(getSelectedRow()).ifPresent(n -> whenChosen.accept(n.date())))
                .bind(this, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
    }

    /** Shows these nights; what is chosen stays so when they are those shown already. */
    void show(List<PlanNight> nights) {
        if (!rows.nights.equals(nights)) {
            rows.nights = new ArrayList<>(nights);
            rows.fireTableDataChanged();
        }
    }

    /** Shows one night more. */
    void add(PlanNight night) {
        int at = rows.nights.size();
        rows.nights.add(night);
        rows.fireTableRowsInserted(at, at);
    }

    private Optional<PlanNight> night(int row) {
        return row >= 0 && row < rows.nights.size() ? Optional.of(rows.nights.get(row)) : Optional.empty();
    }

    /** Words and figures; nights without a window are dimmed. */
    private final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;
        private final boolean figure;

        Cell(boolean figure) {
            this.figure = figure;
            setHorizontalAlignment(figure ? SwingConstants.RIGHT : SwingConstants.LEFT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean isSelected, boolean hasFocus, int row, int column) {
            super.getTableCellRendererComponent(table, value, isSelected, false, row, column);
            setFont(figure ? Theme.figureFont(-1) : Theme.bodyFont(0));
            if (!isSelected) {
                boolean none = rows.nights.get(row).windows().isEmpty();
                setForeground(none ? palette.get().quietInk() : palette.get().ink());
            }
            return this;
        }
    }

    /** The windows on an axis from noon to noon by the site's longitude; midnight as a stroke. */
    private final class Bar extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;
        private transient Optional<PlanNight> night = Optional.empty();

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean isSelected, boolean hasFocus, int row, int column) {
            super.getTableCellRendererComponent(table, "", isSelected, false, row, column);
            night = night(row);
            return this;
        }

        @Override
        protected void paintComponent(Graphics g) {
            super.paintComponent(g);
            night.filter(n -> getWidth() > 20).ifPresent(n -> {
                Graphics2D g2 = (Graphics2D) g.create();
                g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
                TimeAxis axis = new TimeAxis(n.span(), 6, getWidth() - 6.0);
                double middle = getHeight() / 2.0;
                g2.setColor(palette.get().line());
                g2.fill(new Rectangle2D.Double(axis.leftPx(), middle - 1, axis.rightPx() - axis.leftPx(), 2));
                g2.fill(new Rectangle2D.Double((axis.leftPx() + axis.rightPx()) / 2, middle - 6, 1, 12));
                g2.setColor(palette.get().accent());
                for (DarkWindow window : n.windows()) {
                    double x = axis.x(window.span().from());
                    g2.fill(new Rectangle2D.Double(
                            x, middle - 4, axis.x(window.span().to()) - x, 8));
                }
                g2.dispose();
            });
        }
    }

    /** The rows. */
    private static final class Rows extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private transient List<PlanNight> nights = new ArrayList<>();

        @Override
        public int getRowCount() {
            return nights.size();
        }

        @Override
        public int getColumnCount() {
            return KEYS.length;
        }

        @Override
        public String getColumnName(int column) {
            return TEXTS.text(KEYS[column]);
        }

        @Override
        public Object getValueAt(int row, int column) {
            PlanNight night = nights.get(row);
            boolean dark = !night.windows().isEmpty();
            return switch (column) {
                case 0 ->
                    night.date().getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " "
                            + night.date().getDayOfMonth() + "/"
                            + night.date().plusDays(1).getDayOfMonth();
                case 2 -> dark ? span(night) : TEXTS.text("month.none");
                case 3 -> dark ? Say.hours(night.windowHours()) : "";
                case 4 ->
                    night.best()
                            .map(b -> Figures.fixed(b.altitudeDeg(), 0) + "°  " + Say.clock(b.time()))
                            .orElse("");
                case 5 ->
                    night.longestCaptureS().isPresent()
                            ? Say.length(night.longestCaptureS().getAsDouble())
                            : "";
                case 6 -> dark ? count(night, PlanItem.Kind.CROSSING) : "";
                case 7 -> dark ? count(night, PlanItem.Kind.MOON) : "";
                default -> "";
            };
        }

        private static String span(PlanNight night) {
            return night.windows().stream()
                    .map(w -> Say.clock(w.span().from()) + "–"
                            + Say.clock(w.span().to()))
                    .collect(java.util.stream.Collectors.joining(", "));
        }

        private static String count(PlanNight night, PlanItem.Kind kind) {
            return String.valueOf(
                    night.observable().stream().filter(i -> i.kind() == kind).count());
        }
    }
}
