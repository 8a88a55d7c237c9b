/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.LongConsumer;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import oblate.archive.ArchivedPicture;

/** Mouse and keys of the season ribbon. */
final class RibbonInput extends MouseAdapter {
    private static final int STILL_PX = 3;
    private static final double STEP = 1.4;
    /** Room on both sides of a night in a span chosen by keys. */
    private static final Duration ROOM = Duration.ofHours(2);

    private final SeasonRibbon ribbon;
    private final Selection selection;
    private final LongConsumer whenClicked;
    private int pressedX;
    private int lastX;
    private boolean moved;
    private boolean moving;

    RibbonInput(SeasonRibbon ribbon, Selection selection, LongConsumer whenClicked) {
        this.ribbon = ribbon;
        this.selection = selection;
        this.whenClicked = whenClicked;
    }

    void install() {
        ribbon.addMouseListener(this);
        ribbon.addMouseMotionListener(this);
        ribbon.addMouseWheelListener(this);
        key("LEFT", () -> night(-1));
        key("RIGHT", () -> night(1));
        key("shift LEFT", () -> spanTo(-1));
        key("shift RIGHT", () -> spanTo(1));
        key("HOME", () -> end(0));
        key("END", () -> end(ribbon.ticks().pictures().size() - 1));
        key("ESCAPE", () -> selection.chooseSpan(Optional.empty()));
        key("ENTER", () -> ribbon.chosen().ifPresent(p -> whenClicked.accept(p.id())));
        for (String plus : new String[] {"PLUS", "shift EQUALS", "EQUALS", "ADD"}) {
            key(plus, () -> zoom(STEP));
        }
        for (String minus : new String[] {"MINUS", "SUBTRACT"}) {
            key(minus, () -> zoom(1 / STEP));
        }
        key("0", ribbon::showAll);
        key("NUMPAD0", ribbon::showAll);
    }

    private void key(String stroke, Runnable deed) {
        ribbon.getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(stroke), stroke);
        ribbon.getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    private void night(int step) {
        ribbon.ticks().nightBeside(ribbon.chosen(), step).ifPresent(this::choose);
    }

    private void end(int index) {
        if (index >= 0 && index < ribbon.ticks().pictures().size()) {
            choose(ribbon.ticks().pictures().get(index));
        }
    }

    private void choose(ArchivedPicture picture) {
        selection.choosePicture(picture.id());
        bringIntoView(picture);
    }

    private void bringIntoView(ArchivedPicture picture) {
        double x = ribbon.scale().xPx(picture.time().orElseThrow().midUtc());
        double width = ribbon.scale().widthPx();
        if (x < 0 || x > width) {
            ribbon.setScale(ribbon.scale().movedBy(x - width / 2));
        }
    }

    /** Takes in the next night, or gives up the last one taken in. */
    private void spanTo(int step) {
        Optional<ArchivedPicture> here = ribbon.chosen();
        if (here.isEmpty()) {
            return;
        }
        Instant now = here.get().time().orElseThrow().midUtc();
        Selection.Span before = selection
                .span()
                .filter(s -> s.contains(now))
                .orElse(new Selection.Span(now.minus(ROOM), now.plus(ROOM)));
        ribbon.ticks().nightBeside(here, step).ifPresent(next -> {
            Instant to = next.time().orElseThrow().midUtc();
            boolean fromLeft = Duration.between(before.from(), now).compareTo(Duration.between(now, before.to())) >= 0;
            boolean wasPoint = Duration.between(before.from(), before.to()).compareTo(ROOM.multipliedBy(3)) < 0;
            Instant fixed =
                    wasPoint ? (step > 0 ? before.from() : before.to()) : fromLeft ? before.from() : before.to();
            selection.chooseSpan(Optional.of(
                    new Selection.Span(fixed, to.isAfter(fixed) ? to.plus(Duration.ofHours(14)) : to.minus(ROOM))));
            choose(next);
        });
    }

    private void zoom(double factor) {
        double x = ribbon.chosen()
                .map(p -> ribbon.scale().xPx(p.time().orElseThrow().midUtc()))
                .filter(at -> at >= 0 && at <= ribbon.scale().widthPx())
                .orElse(ribbon.scale().widthPx() / 2);
        ribbon.setScale(ribbon.scale().zoomedAt(x, factor));
    }

    @Override
    public void mousePressed(MouseEvent e) {
        ribbon.requestFocusInWindow();
        pressedX = e.getX();
        lastX = e.getX();
        moved = false;
        moving = e.isShiftDown()
                || !SwingUtilities.isLeftMouseButton(e)
                || e.getY() > ribbon.getHeight() - RibbonPainter.AXIS_PX;
    }

    @Override
    public void mouseDragged(MouseEvent e) {
        if (!moved && Math.abs(e.getX() - pressedX) <= STILL_PX) {
            return;
        }
        moved = true;
        if (moving) {
            ribbon.setScale(ribbon.scale().movedBy(lastX - e.getX()));
            lastX = e.getX();
        } else {
            ribbon.drag(Optional.of(span(e)));
        }
    }

    private Selection.Span span(MouseEvent e) {
        return new Selection.Span(
                ribbon.scale().instantAt(pressedX), ribbon.scale().instantAt(e.getX()));
    }

    @Override
    public void mouseReleased(MouseEvent e) {
        ribbon.drag(Optional.empty());
        if (moved && !moving) {
            selection.chooseSpan(Optional.of(span(e)));
        }
    }

    @Override
    public void mouseClicked(MouseEvent e) {
        if (e.getClickCount() == 2) {
            ribbon.showAll();
        } else if (!moved) {
            ribbon.nearest(e.getX()).ifPresent(p -> whenClicked.accept(p.id()));
        }
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
        if (e.isShiftDown()) {
            ribbon.setScale(ribbon.scale().movedBy(60 * e.getPreciseWheelRotation()));
        } else {
            ribbon.setScale(ribbon.scale().zoomedAt(e.getX(), Math.pow(1.2, -e.getPreciseWheelRotation())));
        }
    }
}
