/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Point;
import java.util.Optional;
import oblate.archive.StoredMark;
import oblate.disc.PixelPoint;
import oblate.workbench.PanelContext;

/** What clicks, Enter, Esc and arrows mean, by what is open on the desk: names, an outline by hand, a plugged-in tool, a mark. On the event thread only. */
final class DeskGestures {
    private static final double HIT_PX = 9;
    private static final int PAN_PX = 40;
    private final PanelContext context;
    private final Desk desk;
    private final DiscCanvas canvas;
    private final HandOutline outline;
    private final NamingDesk naming;
    private final MeasureInspector inspector;
    private final ToolRack rack;

    @SuppressWarnings("checkstyle:ParameterNumber") // all that can be open
    DeskGestures(
            PanelContext context,
            Desk desk,
            DiscCanvas canvas,
            HandOutline outline,
            NamingDesk naming,
            MeasureInspector inspector,
            ToolRack rack) {
        this.context = context;
        this.desk = desk;
        this.canvas = canvas;
        this.outline = outline;
        this.naming = naming;
        this.inspector = inspector;
        this.rack = rack;
    }

    /** A click: closes the names, works the tool in hand, chooses the mark under it, or drops one. */
    void clicked(PixelPoint pixel, Point screen) {
        if (naming.isOpen()) {
            naming.leaveUnnamed();
            return;
        }
        if (outline.isOpen() || rack.clicked(pixel)) {
            return;
        }
        Optional<StoredMark> hit = desk.hand().shown().stream()
                .filter(m -> m.id() != ShownMarks.NOT_KEPT)
                .filter(m -> canvas.view().toScreen(m.mark().pixel()).distance(screen) <= HIT_PX)
                .findFirst();
        if (hit.isPresent()) {
            desk.hand().choose(hit.map(StoredMark::id));
        } else {
            desk.hand().drop(pixel);
        }
    }

    /** The mark being worked on. */
    Optional<StoredMark> chosenMark() {
        return desk.hand().shown().stream()
                .filter(m -> desk.hand().chosenId().equals(Optional.of(m.id())))
                .findFirst();
    }

    /** Offers names for the chosen mark. */
    void renameChosen() {
        chosenMark().ifPresent(naming::ask);
    }

    /** Drops a mark where the pointer is. */
    void markAtPointer() {
        if (!outline.isOpen()) {
            canvas.pointed().ifPresent(desk.hand()::drop);
        }
    }

    /** Enter: keeps what is drawn, or offers again what the archive did not take. */
    void enter() {
        if (outline.isOpen()) {
            inspector.keepOutline();
        } else {
            desk.fits().tryAgain();
            desk.hand().tryAgain();
        }
    }

    /** Esc: puts away what is open, then lets go of the chosen mark. */
    void escape() {
        if (outline.isOpen()) {
            outline.leave();
        } else if (!rack.layDown()) {
            desk.hand().choose(Optional.empty());
            canvas.hold(Optional.empty());
        }
    }

    /** An arrow: moves the outline by hand, else the chosen mark, else the picture. */
    void nudge(double dx, double dy) {
        PixelPoint step = canvas.view().stepInPicture(dx, dy);
        if (outline.isOpen()) {
            outline.shift(step.xPx(), step.yPx());
        } else if (desk.hand().move(step.xPx(), step.yPx())) {
            canvas.hold(desk.hand().chosenPixel());
        } else {
            canvas.pan(-Math.signum(dx) * PAN_PX, -Math.signum(dy) * PAN_PX);
        }
    }

    /** Begins an outline by hand, or puts it away. */
    void toggleHand() {
        if (outline.isOpen()) {
            outline.leave();
        } else {
            outline.begin().ifPresent(context::say);
            canvas.requestFocusInWindow();
        }
    }
}
