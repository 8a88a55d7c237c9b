/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.CardLayout;
import java.awt.event.ActionEvent;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import oblate.archive.StoredMark;
import oblate.disc.SurfacePoint;
import oblate.workbench.PanelContext;

/** The middle of the desk: one picture, two in one frame, or one place through the season. On the event thread only. */
final class DeskCards extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final String ONE = "one";
    private static final String TWO = "two";
    private static final String SEASON = "season";
    private final transient PanelContext context;
    private final transient Desk desk;
    private final DiscCanvas canvas;
    private final ComparePane compare;
    private final SeasonPane season;
    private final transient Consumer<Boolean> whenShown;
    private String shown = ONE;

    /**
     * @param whenShown told whether something else than the one picture is shown
     */
    DeskCards(PanelContext context, Desk desk, DiscCanvas canvas, Consumer<Boolean> whenShown) {
        super(new CardLayout());
        this.context = context;
        this.desk = desk;
        this.canvas = canvas;
        this.whenShown = whenShown;
        compare = new ComparePane(context, desk, this::showOne);
        season = new SeasonPane(context, desk, this::showOne);
        setOpaque(false);
        add(canvas, ONE);
        add(compare, TWO);
        add(season, SEASON);
    }

    /** Shows two pictures, or one again. */
    void toggleCompare() {
        if (shown.equals(TWO)) {
            showOne();
            return;
        }
        show(TWO);
        compare.begin().ifPresent(why -> {
            context.say(why);
            showOne();
        });
    }

    /** Shows a mark's place, or the pointer's, through the season, or one picture again. */
    void toggleSeason(Optional<StoredMark> mark) {
        if (shown.equals(SEASON)) {
            showOne();
            return;
        }
        Optional<SurfacePoint> place = mark.flatMap(m -> m.mark().point()).or(() -> canvas.pointed()
                .flatMap(p -> desk.open().flatMap(OpenPicture::frame).flatMap(f -> f.locate(p.xPx(), p.yPx()))));
        Optional<String> why = season.begin(place, mark.flatMap(StoredMark::featureName));
        if (why.isPresent()) {
            context.say(why.get());
        } else {
            show(SEASON);
        }
    }

    /** Shows the one picture on the desk. */
    void showOne() {
        show(ONE);
    }

    /** The window's way up or its theme has changed. */
    void refresh() {
        compare.refresh();
    }

    private void show(String name) {
        if (shown.equals(name)) {
            return;
        }
        if (shown.equals(TWO)) {
            compare.leave();
        } else if (shown.equals(SEASON)) {
            season.leave();
        }
        shown = name;
        ((CardLayout) getLayout()).show(this, name);
        // Without this the focus would go wherever it finds a place, and with it the keys.
        switch (name) {
            case TWO -> compare.requestFocusInWindow();
            case SEASON -> season.requestFocusInWindow();
            default -> canvas.requestFocusInWindow();
        }
        whenShown.accept(!name.equals(ONE));
    }

    /** Makes the keys that open a view work in it too, where they close it, and Esc. */
    void bind(MeasureActions actions) {
        for (JComponent view : List.of(compare, season)) {
            actions.deed("compare").bind(view, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
            actions.deed("season").bind(view, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
            view.getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke("ESCAPE"), "one");
            view.getActionMap().put("one", new AbstractAction() {
                private static final long serialVersionUID = 1L;

                @Override
                public void actionPerformed(ActionEvent e) {
                    showOne();
                }
            });
        }
    }
}
