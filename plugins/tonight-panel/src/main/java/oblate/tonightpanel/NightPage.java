/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Point;
import java.awt.Rectangle;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanItem;
import oblate.sky.ApparentDisc;
import oblate.sky.GroundView;
import oblate.sky.RotationSystem;
import oblate.sky.UtcTime;
import oblate.workbench.look.Figures;
import oblate.workbench.look.NightName;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** One night: head, sky, rows, and what has no time. */
final class NightPage extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NightPage.class);
    private static final int SKY_PX = 250;
    private final transient Supplier<Palette> palette;
    private final transient NightPointer pointer;
    private final JLabel title = new JLabel(" ");
    private final JLabel window = new JLabel(" ");
    private final JLabel readout = new JLabel(" ");
    private final JButton next = new JButton();
    private final SmearBar smear;
    private final SkyPlot sky;
    private final RowsPlot rows;
    private final Sentences notes;
    private transient Optional<NightSheet> sheet = Optional.empty();
    private final JScrollPane scroll;
    private transient Optional<LocalDate> nextDate = Optional.empty();

    NightPage(
            Supplier<Palette> palette,
            NightPointer pointer,
            Supplier<Instant> now,
            SmearBar smear,
            Consumer<LocalDate> goTo) {
        super(new BorderLayout());
        this.palette = palette;
        this.pointer = pointer;
        this.smear = smear;
        setOpaque(false);
        sky = new SkyPlot(palette, pointer, now);
        sky.setPreferredSize(new Dimension(600, SKY_PX));
        rows = new RowsPlot(palette, pointer, now);
        notes = new Sentences("tonight.notes", palette, "4 16 10 16");
        title.setName("tonight.title");
        title.putClientProperty("FlatLaf.styleClass", "h3");
        window.setName("tonight.window");
        readout.setName("tonight.readout");
        next.setName("tonight.next");
        next.setToolTipText(TEXTS.text("next.tip"));
        next.addActionListener(e -> nextDate.ifPresent(goTo));
        add(head(), BorderLayout.NORTH);
        Below below = new Below();
        below.add(rows, BorderLayout.NORTH);
        below.add(notes, BorderLayout.CENTER);
        scroll = new JScrollPane(below);
        scroll.setColumnHeaderView(sky);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.getViewport().setOpaque(false);
        scroll.getColumnHeader().setOpaque(false);
        scroll.setOpaque(false);
        scroll.getVerticalScrollBar().setUnitIncrement(RowLayout.ROW_PX);
        add(scroll, BorderLayout.CENTER);
        pointer.whenChanged(this::read);
        read();
    }

    /** Rows and notes: as wide as there is room, and scrolled up and down. */
    private static final class Below extends JPanel implements Scrollable {
        private static final long serialVersionUID = 1L;

        Below() {
            super(new BorderLayout());
            setOpaque(false);
        }

        @Override
        public Dimension getPreferredScrollableViewportSize() {
            return getPreferredSize();
        }

        @Override
        public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
            return RowLayout.ROW_PX;
        }

        @Override
        public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
            return Math.max(RowLayout.ROW_PX, visible.height - RowLayout.ROW_PX);
        }

        @Override
        public boolean getScrollableTracksViewportWidth() {
            return true;
        }

        @Override
        public boolean getScrollableTracksViewportHeight() {
            return false;
        }
    }

    private JPanel head() {
        JPanel head = new JPanel(new MigLayout("insets 4 16 4 16, gap 12 2, fillx, hidemode 3", "[][grow,fill][]"));
        head.setOpaque(false);
        head.add(title);
        head.add(window, "wmin 0");
        head.add(next);
        readout.setFont(Theme.figureFont(-1));
        head.add(readout, "newline, span 3, wmin 0, growx");
        return head;
    }

    void show(NightSheet shown) {
        boolean another = sheet.isEmpty()
                || !sheet.get().night().date().equals(shown.night().date());
        sheet = Optional.of(shown);
        Plan plan = shown.plan();
        title.setText(TEXTS.text(
                "title",
                plan.wish().planet().label(),
                NightName.of(shown.night().date())));
        window.setText(TEXTS.text(
                shown.night().windows().isEmpty() ? "window.said.none" : "window.said", Say.windows(shown.night())));
        window.setForeground(
                shown.night().windows().isEmpty()
                        ? palette.get().alarm()
                        : palette.get().ink());
        nextDate = plan.nextWindow();
        next.setText(nextDate.map(d -> TEXTS.text("next", d)).orElse(""));
        next.setVisible(nextDate.isPresent());
        smear.say(
                shown.night().longestCaptureS().isPresent()
                        ? TEXTS.text(
                                "longest",
                                Say.length(shown.night().longestCaptureS().getAsDouble()))
                        : TEXTS.text("longest.none"));
        keepChosen(shown);
        sky.show(sheet);
        rows.show(sheet);
        notes.show(untimed(plan), Palette::ink);
        notes.add(outside(shown), Palette::quietInk);
        notes.add(plan.remarks(), Palette::quietInk);
        readout.setFont(Theme.figureFont(-1));
        read();
        if (another) {
            SwingUtilities.invokeLater(() -> scroll.getViewport().setViewPosition(new Point()));
        }
    }

    /** A newer plan of the night has the same thing under the same key, perhaps at another time. */
    private void keepChosen(NightSheet shown) {
        Optional<PlanItem> same = pointer.chosen().flatMap(c -> shown.night().items().stream()
                .filter(i -> i.key().equals(c.key()))
                .findFirst());
        pointer.choose(same);
    }

    private static List<String> untimed(Plan plan) {
        List<String> said = new ArrayList<>();
        plan.untimed().forEach(u -> said.add(TEXTS.text("untimed", u.feature(), u.why())));
        return said;
    }

    /** Features that cross the meridian only while the Sun is up, and so are not drawn. */
    private static List<String> outside(NightSheet shown) {
        String said = shown.outside().stream()
                .map(i -> i.subject() + " " + Say.clock(i.time()) + " (" + i.whyNot() + ")")
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? List.of() : List.of(TEXTS.text("outside", said));
    }

    void showProblem(String sentence) {
        sheet = Optional.empty();
        title.setText(" ");
        window.setText(" ");
        next.setVisible(false);
        smear.say(" ");
        sky.show(sheet);
        rows.show(sheet);
        notes.show(List.of(sentence), Palette::alarm);
        read();
    }

    Optional<NightSheet> sheet() {
        return sheet;
    }

    void repaintNow() {
        sky.repaint();
        rows.repaint();
    }

    /** Time, altitude, dispersion and central meridians under the pointer. */
    private void read() {
        Optional<UtcTime> time = pointer.hover();
        readout.setForeground(
                time.isPresent() ? palette.get().ink() : palette.get().quietInk());
        readout.setText(
                sheet.isEmpty()
                        ? " "
                        : time.map(t -> under(sheet.get(), t)).orElseGet(() -> TEXTS.text("readout.none")));
    }

    private static String under(NightSheet night, UtcTime time) {
        GroundView view = night.wish().ground().view(night.wish().planet(), time);
        ApparentDisc disc = night.wish().ground().sky().disc(night.wish().planet(), time);
        List<String> said = new ArrayList<>();
        said.add(Say.clock(time) + " UTC");
        said.add(TEXTS.text("readout.altitude", Figures.fixed(view.altitudeDeg(), 1)));
        double dispersion = view.dispersionArcsec(Asked.SHORT_NM, Asked.LONG_NM);
        said.add(TEXTS.text("readout.dispersion", Figures.fixed(dispersion, 2)));
        for (RotationSystem system : disc.planet().globe().systems()) {
            said.add(TEXTS.text(
                    "readout.cm", SystemLabel.brief(system), Figures.longitude(disc.centralMeridianDeg(system))));
        }
        said.add(TEXTS.text(
                "readout.sun",
                Figures.fixed(view.sunAltitudeDeg(), 0),
                TEXTS.text("sky." + view.twilight().word())));
        return String.join("   ", said);
    }
}
