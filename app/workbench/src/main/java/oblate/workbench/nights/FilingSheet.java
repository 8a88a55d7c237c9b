/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import oblate.archive.FilingFacts;
import oblate.archive.FilingForecast;
import oblate.sky.PlanetModel;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** Says what was understood of each file that was dropped, asks once what holds for all of them, and files them. */
final class FilingSheet extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(FilingSheet.class);
    private static final int MOST_ROWS = 8;
    private static final int ROW_PX = 22;
    private final transient PanelContext context;
    private final JLabel heading = new JLabel();
    private final JLabel understood = new JLabel(" ");
    private final JLabel trouble = new JLabel();
    private final FilingForm form;
    private final ForecastTable table;
    private final JScrollPane scroll;
    private final JButton file = new JButton(TEXTS.text("filing.them"));
    private final Timer pause;
    private transient List<Path> paths = List.of();
    private transient Optional<Job> looking = Optional.empty();

    /** What a person decided. */
    record Order(List<Path> paths, FilingFacts facts) {}

    FilingSheet(PanelContext context, Consumer<Order> whenOrdered, Runnable whenLeft) {
        super(new MigLayout("insets 12 16 12 16, gap 8 8, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        this.context = context;
        setName("filing");
        form = new FilingForm(context, this::look);
        table = new ForecastTable(context, this::planetLabel);
        pause = new Timer(250, e -> lookNow());
        pause.setRepeats(false);
        heading.setName("filing.heading");
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        understood.setName("filing.understood");
        trouble.setName("filing.trouble");
        scroll = new JScrollPane(table);
        JPanel foot = new JPanel(new MigLayout("insets 0, gap 8, fillx", "[grow,fill][][]"));
        foot.setOpaque(false);
        JButton leave = new JButton(TEXTS.text("filing.leave"));
        leave.setName("filing.leave");
        leave.setToolTipText(TEXTS.text("filing.leave.tip"));
        Runnable leaving = () -> {
            looking.ifPresent(Job::stop);
            whenLeft.run();
        };
        leave.addActionListener(e -> leaving.run());
        file.setName("file");
        file.setToolTipText(TEXTS.text("filing.them.tip"));
        file.addActionListener(e -> order(whenOrdered));
        foot.add(trouble, "wmin 0");
        foot.add(file);
        foot.add(leave);
        add(heading, "split 2, growx 0");
        add(understood, "wmin 0, gapleft 12");
        add(scroll);
        add(form);
        add(foot);
        key("enter", KeyEvent.VK_ENTER, file::doClick);
        key("leave", KeyEvent.VK_ESCAPE, leaving);
    }

    @Override
    public boolean requestFocusInWindow() {
        return file.requestFocusInWindow();
    }

    private String planetLabel(String id) {
        return context.workbench().planets().stream()
                .filter(p -> p.id().equals(id))
                .map(PlanetModel::label)
                .findFirst()
                .orElse(id);
    }

    private void key(String name, int code, Runnable deed) {
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(code, 0), name);
        getActionMap().put(name, new javax.swing.AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(java.awt.event.ActionEvent e) {
                deed.run();
            }
        });
    }

    /** Begins with files and folders. */
    void ask(List<Path> dropped) {
        paths = List.copyOf(dropped);
        heading.setText(
                dropped.size() == 1
                        ? TEXTS.text(
                                "filing.heading.one",
                                String.valueOf(dropped.get(0).getFileName()))
                        : TEXTS.text("filing.heading", Integer.toString(dropped.size())));
        table.show(List.of());
        understood.setText(TEXTS.text("filing.looking.words"));
        sayTrouble("");
        colour();
        form.begin();
        sizeTable(0);
        lookNow();
        file.requestFocusInWindow();
    }

    /** Shows again what could not be filed, with why; what was typed is still there. */
    void sayTrouble(String sentence) {
        trouble.setText(sentence.isEmpty() ? "" : "<html>" + sentence.replace("<", "&lt;") + "</html>");
        trouble.setForeground(context.palette().alarm());
    }

    /** Takes on the colours of another theme. */
    void lookChanged() {
        colour();
        trouble.setForeground(context.palette().alarm());
    }

    private void colour() {
        setBackground(context.palette().raised());
        setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, context.palette().line()));
        understood.setForeground(context.palette().quietInk());
    }

    private void look() {
        Optional<String> fault = form.fault();
        sayTrouble(fault.orElse(""));
        file.setEnabled(fault.isEmpty());
        if (fault.isEmpty()) {
            pause.restart();
        }
    }

    private void lookNow() {
        looking.ifPresent(Job::stop);
        FilingFacts facts = form.facts();
        List<Path> mine = paths;
        looking = Optional.of(context.background()
                .run(
                        TEXTS.text("filing.looking"),
                        progress -> context.workbench().filing().foresee(mine, facts, progress),
                        found -> {
                            if (mine.equals(paths)) {
                                show(found);
                            }
                        }));
    }

    private void show(List<FilingForecast> found) {
        table.show(found);
        sizeTable(found.size());
        long refused = found.stream().filter(f -> f.refusal().isPresent()).count();
        long undated = found.stream()
                .filter(f -> f.refusal().isEmpty() && f.time().isEmpty())
                .count();
        long planetless = found.stream()
                .filter(f -> f.refusal().isEmpty() && f.planetId().isEmpty())
                .count();
        boolean asUndated = form.facts().undatedAllowed();
        long ready = found.size() - refused - (asUndated ? 0 : undated);
        List<String> parts = new ArrayList<>();
        parts.add(TEXTS.counted("filing.ready", ready));
        part(parts, undated, asUndated ? "filing.part.undated" : "filing.part.undated.refused");
        part(parts, planetless, "filing.part.planetless");
        part(parts, refused, "filing.part.refused");
        understood.setText(found.isEmpty() ? TEXTS.text("filing.no.pictures") : String.join(", ", parts));
        file.setEnabled(!found.isEmpty() && form.fault().isEmpty());
        file.setText(ready == 0 ? TEXTS.text("filing.do.none") : TEXTS.counted("filing.do", ready));
    }

    private static void part(List<String> parts, long count, String key) {
        if (count > 0) {
            parts.add(TEXTS.text(key, Long.toString(count)));
        }
    }

    private void sizeTable(int rows) {
        int shown = Math.max(1, Math.min(MOST_ROWS, rows));
        scroll.setVisible(rows > 0);
        scroll.setPreferredSize(new Dimension(600, (shown + 1) * ROW_PX + 8));
        revalidate();
    }

    private void order(Consumer<Order> whenOrdered) {
        if (form.fault().isEmpty() && !paths.isEmpty()) {
            looking.ifPresent(Job::stop);
            form.keep();
            whenOrdered.accept(new Order(paths, form.facts()));
        }
    }
}
