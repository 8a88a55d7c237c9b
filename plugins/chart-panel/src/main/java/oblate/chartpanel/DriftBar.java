/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BorderLayout;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import oblate.report.SeriesChart;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.PanelSettings;
import oblate.workbench.look.FlowingRow;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** The choices above the charts of drifts: system, way of time, prediction, ladder, and more; kept between sessions. */
final class DriftBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(DriftBar.class);
    private final transient PanelContext context;
    private final transient Events events;
    private final JComboBox<String> systems = new JComboBox<>();
    private final JComboBox<String> ways =
            new JComboBox<>(new String[] {TEXTS.text("time.down"), TEXTS.text("time.right")});
    private final JTextField predict = new JTextField(9);
    private final JToggleButton ladder = new JToggleButton(TEXTS.text("ladder.shown"));
    private final JToggleButton alone = new JToggleButton(TEXTS.text("alone"));
    private final JCheckBoxMenuItem others = new JCheckBoxMenuItem(TEXTS.text("others"));
    private final JCheckBoxMenuItem leftward = new JCheckBoxMenuItem(TEXTS.text("leftward"));
    private String systemsOf = "";
    private boolean filling;

    /** What the choices change. */
    interface Events {
        /** Other marks or another system: everything is to be read again. */
        void sourceChanged();

        /** The same is to be drawn differently. */
        void viewChanged();

        /** The ladder is wanted, or no more. */
        void ladderChanged();

        /** What can be kept and copied is to be offered. */
        void keep(JButton from);
    }

    DriftBar(PanelContext context, Events events) {
        super(new BorderLayout());
        this.context = context;
        this.events = events;
        setOpaque(false);
        PanelSettings kept = context.settings();
        systems.setName("drift.system");
        systems.getAccessibleContext().setAccessibleName(TEXTS.text("system.name"));
        ways.setName("drift.time");
        ways.getAccessibleContext().setAccessibleName(TEXTS.text("time.name"));
        predict.setName("drift.predict");
        predict.getAccessibleContext().setAccessibleName(TEXTS.text("predict.name"));
        ladder.setName("drift.ladder");
        alone.setName("drift.alone");
        ways.setSelectedIndex(kept.flag("time.right", false) ? 1 : 0);
        ladder.setSelected(kept.flag("ladder", true));
        others.setSelected(kept.flag("others", false));
        leftward.setSelected(kept.flag("leftward", true));
        predict.setText(kept.text("predict", ""));
        predict.putClientProperty("JTextField.placeholderText", TEXTS.text("predict.example"));
        predict.setToolTipText(TEXTS.text("predict.tip"));
        ladder.setToolTipText(TEXTS.text("ladder.shown.tip"));
        alone.setToolTipText(TEXTS.text("alone.tip"));
        others.setToolTipText(TEXTS.text("others.tip"));
        leftward.setToolTipText(TEXTS.text("leftward.tip"));
        JButton view = new JButton(TEXTS.text("view"));
        view.setName("drift.view");
        view.setToolTipText(TEXTS.text("view.tip"));
        JButton keep = new JButton(TEXTS.text("keep"));
        keep.setName("drift.keep");
        keep.setToolTipText(TEXTS.text("keep.tip"));
        FlowingRow row = new FlowingRow(true);
        row.add(together(new JLabel(TEXTS.text("system.label")), systems));
        row.add(together(new JLabel(TEXTS.text("time.label")), ways));
        row.add(together(new JLabel(TEXTS.text("predict.label")), predict));
        row.add(ladder);
        row.add(alone);
        row.add(together(view, keep));
        add(row, BorderLayout.CENTER);
        JPopupMenu more = new JPopupMenu();
        more.add(others);
        more.add(leftward);
        view.addActionListener(e -> more.show(view, 0, view.getHeight()));
        keep.addActionListener(e -> events.keep(keep));
        listen();
    }

    /** Parts that stay in one line. */
    private static JPanel together(JComponent... parts) {
        JPanel group = new JPanel(new MigLayout("insets 0, gap 6"));
        group.setOpaque(false);
        for (JComponent part : parts) {
            group.add(part);
        }
        return group;
    }

    private void listen() {
        PanelSettings kept = context.settings();
        systems.addActionListener(e -> {
            if (!filling) {
                kept.keep("system." + context.planet().id(), system().id());
                events.sourceChanged();
            }
        });
        ways.addActionListener(e -> {
            kept.keep("time.right", ways.getSelectedIndex() == 1);
            events.viewChanged();
        });
        predict.addActionListener(e -> {
            boolean fine = predict.getText().isBlank() || until().isPresent();
            predict.putClientProperty("JComponent.outline", fine ? null : "error");
            if (fine) {
                kept.keep("predict", predict.getText().strip());
                events.viewChanged();
            } else {
                context.say(TEXTS.text("predict.wrong", predict.getText().strip()));
            }
        });
        ladder.addActionListener(e -> {
            kept.keep("ladder", ladder.isSelected());
            events.ladderChanged();
        });
        alone.addActionListener(e -> events.viewChanged());
        others.addActionListener(e -> {
            kept.keep("others", others.isSelected());
            events.sourceChanged();
        });
        leftward.addActionListener(e -> {
            kept.keep("leftward", leftward.isSelected());
            events.viewChanged();
        });
    }

    /** Fills in the systems of the planet looked at. */
    void fillSystems() {
        PlanetModel planet = context.planet();
        if (planet.id().equals(systemsOf)) {
            return;
        }
        systemsOf = planet.id();
        filling = true;
        systems.removeAllItems();
        String wish = context.settings()
                .text("system." + planet.id(), SystemLabel.usual(planet).id());
        planet.globe().systems().forEach(s -> systems.addItem(s.label()));
        planet.globe().system(wish).ifPresent(s -> systems.setSelectedItem(s.label()));
        filling = false;
    }

    RotationSystem system() {
        return context.planet().globe().systems().stream()
                .filter(s -> s.label().equals(systems.getSelectedItem()))
                .findFirst()
                .orElseGet(() -> SystemLabel.usual(context.planet()));
    }

    TimeCharts.Manner manner() {
        return new TimeCharts.Manner(
                ways.getSelectedIndex() == 1 ? SeriesChart.TimeAxis.RIGHT : SeriesChart.TimeAxis.DOWN,
                SeriesChart.USUAL_GAP_DAYS,
                until());
    }

    /** The instant motions are predicted up to; empty without one, or with one nobody can read. */
    Optional<Instant> until() {
        String text = predict.getText().strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    boolean wantsLadder() {
        return ladder.isSelected();
    }

    boolean alone() {
        return alone.isSelected();
    }

    boolean others() {
        return others.isSelected();
    }

    /** Colours and directions as chosen here. */
    ChartWish look(Optional<String> chosen) {
        ChartWish plain = ChartWish.of(context.palette(), List.of());
        return new ChartWish(
                "",
                system().label(),
                leftward(),
                alone() ? chosen : Optional.empty(),
                plain.ground(),
                plain.ink(),
                plain.quiet(),
                plain.font(),
                plain.colours());
    }

    boolean leftward() {
        return leftward.isSelected();
    }
}
