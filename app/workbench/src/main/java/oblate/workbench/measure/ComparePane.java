/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BorderLayout;
import java.awt.event.ActionEvent;
import java.util.List;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.workbench.Bearing;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** Two pictures in one frame: side by side, blinked, or with a slider across both. On the event thread only; drawing happens in the background. */
final class ComparePane extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ComparePane.class);
    private static final int BLINK_MS = 700;
    private static final int SETTLE_MS = 150;
    private static final int MOST_PX = 1000;
    private static final double SLIDE = 0.02;
    private final transient PanelContext context;
    private final transient Desk desk;
    private final PairCanvas canvas;
    private final JComboBox<PairCanvas.Manner> manner = new JComboBox<>(PairCanvas.Manner.values());
    private final JComboBox<SameFrame.Kind> kind = new JComboBox<>(SameFrame.Kind.values());
    private final JComboBox<Carry> carry = new JComboBox<>();
    private final JLabel other = new JLabel();
    private final Timer blink;
    private final Timer settle;
    private transient Optional<OpenPicture> second = Optional.empty();
    private transient List<ArchivedPicture> candidates = List.of();
    private long round;

    ComparePane(PanelContext context, Desk desk, Runnable leave) {
        super(new BorderLayout());
        this.context = context;
        this.desk = desk;
        setName("compare.pane");
        setOpaque(false);
        canvas = new PairCanvas(context::palette);
        blink = new Timer(BLINK_MS, e -> canvas.blink());
        settle = new Timer(SETTLE_MS, e -> draw());
        settle.setRepeats(false);
        JPanel bar = new JPanel(new MigLayout("insets 4 12 4 12, gap 4", "[][][]12[][][]push[]"));
        bar.setOpaque(false);
        bar.add(manner);
        bar.add(kind);
        bar.add(carry, "wmin 120, wmax 200");
        bar.add(button(TEXTS.text("compare.earlier"), "compare.earlier", () -> choose(-1)));
        bar.add(button(TEXTS.text("compare.later"), "compare.later", () -> choose(1)));
        bar.add(other, "wmin 0");
        bar.add(button(TEXTS.text("compare.leave"), "compare.leave", leave));
        manner.setName("compare.manner");
        kind.setName("compare.kind");
        carry.setName("compare.carry");
        manner.addActionListener(e -> mannerChosen());
        kind.addActionListener(e -> draw());
        carry.addActionListener(e -> draw());
        add(bar, BorderLayout.NORTH);
        add(canvas, BorderLayout.CENTER);
        canvas.whenResized(settle::restart);
        canvas.setFocusable(true);
        key("UP", () -> choose(-1));
        key("DOWN", () -> choose(1));
        key("LEFT", () -> canvas.slideBy(-SLIDE));
        key("RIGHT", () -> canvas.slideBy(SLIDE));
    }

    private void key(String stroke, Runnable deed) {
        canvas.getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(stroke), stroke);
        canvas.getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    @Override
    public boolean requestFocusInWindow() {
        return canvas.requestFocusInWindow();
    }

    private static JButton button(String text, String name, Runnable deed) {
        JButton button = new JButton(text);
        button.setName(name);
        button.setToolTipText(TEXTS.text(name + ".tip"));
        button.addActionListener(e -> deed.run());
        return button;
    }

    private void mannerChosen() {
        PairCanvas.Manner chosen = (PairCanvas.Manner) manner.getSelectedItem();
        canvas.setManner(chosen);
        if (chosen == PairCanvas.Manner.BLINK) {
            blink.start();
        } else {
            blink.stop();
        }
        draw();
    }

    /** Shows the picture on the desk and the fitted one nearest to it in time; says why not where it cannot. */
    Optional<String> begin() {
        Optional<OpenPicture> here = desk.open().filter(o -> o.frame().isPresent());
        if (here.isEmpty()) {
            return Optional.of(TEXTS.text("compare.fit.first"));
        }
        ArchivedPicture first = here.get().picture();
        candidates = context.shelf().pictures().stream()
                .filter(p -> p.fitted() && p.time().isPresent() && p.planetId().equals(first.planetId()))
                .toList();
        if (candidates.size() < 2) {
            return Optional.of(TEXTS.text("compare.none"));
        }
        canvas.clear();
        context.background()
                .aside(
                        () -> Carry.all(
                                context.archive(),
                                here.get().disc().orElseThrow().planet()),
                        this::offer);
        long mid = millis(first);
        ArchivedPicture near = candidates.stream()
                .filter(p -> p.id() != first.id())
                .min(java.util.Comparator.comparingLong(p -> Math.abs(millis(p) - mid)))
                .orElseThrow();
        take(near);
        if (manner.getSelectedItem() == PairCanvas.Manner.BLINK) {
            blink.start();
        }
        return Optional.empty();
    }

    private static long millis(ArchivedPicture picture) {
        return picture.time().orElseThrow().midUtc().toEpochMilli();
    }

    private void offer(List<Carry> ways) {
        Object before = carry.getSelectedItem();
        carry.removeAllItems();
        ways.forEach(carry::addItem);
        desk.open().flatMap(OpenPicture::disc).ifPresent(d -> {
            String wanted =
                    before == null ? Carry.in(SystemLabel.usual(d.planet())).label() : before.toString();
            ways.stream().filter(w -> w.label().equals(wanted)).findFirst().ifPresent(carry::setSelectedItem);
        });
    }

    /** Puts it away. */
    void leave() {
        blink.stop();
        round++;
        second = Optional.empty();
        canvas.clear();
    }

    private void choose(int step) {
        long firstId = desk.open().map(o -> o.picture().id()).orElse(-1L);
        long now = second.map(o -> o.picture().id()).orElse(firstId);
        List<Long> ids = candidates.stream().map(ArchivedPicture::id).toList();
        int to = ids.indexOf(now) + step;
        if (to >= 0 && to < ids.size() && ids.get(to) == firstId) {
            to += step;
        }
        if (to >= 0 && to < ids.size()) {
            take(candidates.get(to));
        } else {
            context.say(step > 0 ? TEXTS.text("compare.last") : TEXTS.text("compare.first"));
        }
    }

    private void take(ArchivedPicture picture) {
        long asked = ++round;
        context.background().promptly(() -> PictureOpening.of(context.workbench(), picture), opening -> {
            if (asked == round) {
                opening.trouble().ifPresent(context::say);
                second = opening.picture().filter(o -> o.frame().isPresent());
                draw();
            }
        });
    }

    private static String said(OpenPicture picture, Carry way) {
        CaptureTime time = picture.picture().time().orElseThrow();
        double meridian = picture.disc().orElseThrow().centralMeridianDeg(way.system());
        return Figures.dayUt(time.midUtc()) + "  " + Figures.clockUt(time.midUtc()) + "   "
                + TEXTS.text("compare.cm", SystemLabel.brief(way.system()), Figures.longitude(meridian));
    }

    private void draw() {
        Optional<OpenPicture> first = desk.open().filter(o -> o.frame().isPresent());
        if (!isShowing() || first.isEmpty() || second.isEmpty() || canvas.getWidth() < 40) {
            return;
        }
        OpenPicture a = first.get();
        OpenPicture b = second.get();
        Carry way = carry.getSelectedItem() instanceof Carry chosen
                ? chosen
                : Carry.in(SystemLabel.usual(a.disc().orElseThrow().planet()));
        boolean southUp = context.bearing() == Bearing.SOUTH_UP;
        SameFrame.Kind what = (SameFrame.Kind) kind.getSelectedItem();
        carry.setEnabled(what != SameFrame.Kind.AS_SEEN);
        boolean side = manner.getSelectedItem() == PairCanvas.Manner.SIDE_BY_SIDE;
        int width = Math.min(MOST_PX, Math.max(80, canvas.getWidth() / (side ? 2 : 1) - 12));
        int height = Math.min(MOST_PX, Math.max(80, canvas.getHeight() - 56));
        SameFrame frame = new SameFrame(
                a.disc().orElseThrow(),
                what,
                way,
                southUp,
                what == SameFrame.Kind.MAP ? width : Math.min(width, height * 2),
                height,
                context.palette().picturesRed());
        other.setText(b.picture().originalName());
        String words = (southUp ? TEXTS.text("view.south.up") : TEXTS.text("view.north.up")) + "   ·   "
                + TEXTS.text("sense.sky") + "   ·   " + what
                + (what == SameFrame.Kind.AS_SEEN ? "" : " " + way.label())
                + "   ·   " + TEXTS.text("compare.stretched");
        long asked = round;
        context.background().promptly(() -> List.of(frame.draw(a), frame.draw(b)), images -> {
            if (asked == round) {
                canvas.show(images.get(0), images.get(1), List.of(said(a, way), said(b, way), words));
            }
        });
    }

    /** The window's way up, the theme or the picture on the desk has changed. */
    void refresh() {
        if (isShowing()) {
            draw();
        }
    }
}
