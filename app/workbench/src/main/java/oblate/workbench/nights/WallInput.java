/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import oblate.archive.ArchivedPicture;
import oblate.workbench.PanelContext;

/** Mouse and keys of the wall: choosing one picture or several, opening, zooming. */
final class WallInput extends MouseAdapter {
    private final PictureWall wall;
    private final PanelContext context;
    private final ChosenPictures chosen;
    private final LongConsumer whenOpened;

    WallInput(PictureWall wall, PanelContext context, ChosenPictures chosen, LongConsumer whenOpened) {
        this.wall = wall;
        this.context = context;
        this.chosen = chosen;
        this.whenOpened = whenOpened;
    }

    void install() {
        wall.addMouseListener(this);
        wall.addMouseMotionListener(this);
        wall.addMouseWheelListener(this);
        step("LEFT", -1, 0);
        step("RIGHT", 1, 0);
        step("UP", 0, -1);
        step("DOWN", 0, 1);
        key("HOME", () -> wall.wallLayout().first().ifPresent(this::only));
        key("END", () -> wall.wallLayout().last().ifPresent(this::only));
        key("shift HOME", () -> wall.wallLayout().first().ifPresent(this::upTo));
        key("shift END", () -> wall.wallLayout().last().ifPresent(this::upTo));
        key("ENTER", () -> context.selection().pictureId().ifPresent(whenOpened::accept));
        key("ctrl A", this::all);
        key("ctrl PLUS", () -> wall.zoom(1));
        key("ctrl EQUALS", () -> wall.zoom(1));
        key("ctrl ADD", () -> wall.zoom(1));
        key("ctrl MINUS", () -> wall.zoom(-1));
        key("ctrl SUBTRACT", () -> wall.zoom(-1));
    }

    private void step(String key, int dx, int dy) {
        key(key, () -> beside(dx, dy).ifPresent(this::only));
        key("shift " + key, () -> beside(dx, dy).ifPresent(this::upTo));
    }

    private Optional<WallLayout.Tile> beside(int dx, int dy) {
        return wall.wallLayout().beside(context.selection().pictureId().orElse(-1L), dx, dy);
    }

    private void key(String stroke, Runnable deed) {
        wall.getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(stroke), stroke);
        wall.getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    private void only(WallLayout.Tile tile) {
        chosen.only(tile.picture().id());
    }

    private void upTo(WallLayout.Tile tile) {
        long to = tile.picture().id();
        List<Long> range = wall.wallLayout().range(chosen.anchor().orElse(to), to);
        chosen.set(range.isEmpty() ? List.of(to) : range, to);
    }

    /** Chooses everything on the wall. */
    void all() {
        wall.wallLayout().first().ifPresent(first -> wall.wallLayout()
                .last()
                .ifPresent(last -> chosen.set(
                        wall.wallLayout()
                                .range(first.picture().id(), last.picture().id()),
                        context.selection().pictureId().orElse(first.picture().id()))));
    }

    @Override
    public void mousePressed(MouseEvent e) {
        wall.requestFocusInWindow();
        Optional<WallLayout.Tile> tile = wall.wallLayout().at(e.getPoint());
        boolean more = (e.getModifiersEx() & wall.getToolkit().getMenuShortcutKeyMaskEx()) != 0;
        if (tile.isPresent()) {
            if (e.isShiftDown()) {
                upTo(tile.get());
            } else if (more) {
                chosen.toggle(tile.get().picture().id());
            } else {
                only(tile.get());
            }
            return;
        }
        wall.wallLayout().headerAt(e.getPoint()).ifPresent(band -> {
            List<Long> night =
                    band.night().pictures().stream().map(ArchivedPicture::id).toList();
            Set<Long> all = new LinkedHashSet<>(more ? chosen.ids() : Set.of());
            all.addAll(night);
            chosen.set(new ArrayList<>(all), night.get(0));
        });
    }

    @Override
    public void mouseClicked(MouseEvent e) {
        if (e.getClickCount() == 2) {
            wall.wallLayout()
                    .at(e.getPoint())
                    .ifPresent(t -> whenOpened.accept(t.picture().id()));
        }
    }

    @Override
    public void mouseMoved(MouseEvent e) {
        wall.hover(wall.wallLayout().at(e.getPoint()).map(t -> t.picture().id()));
    }

    @Override
    public void mouseExited(MouseEvent e) {
        wall.hover(Optional.empty());
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
        if ((e.getModifiersEx() & wall.getToolkit().getMenuShortcutKeyMaskEx()) != 0) {
            wall.zoom(e.getWheelRotation() < 0 ? 1 : -1);
        } else if (wall.getParent() != null) {
            wall.getParent().dispatchEvent(javax.swing.SwingUtilities.convertMouseEvent(wall, e, wall.getParent()));
        }
    }
}
