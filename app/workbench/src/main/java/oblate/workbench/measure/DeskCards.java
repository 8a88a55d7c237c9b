/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.CardLayout;
import java.util.Optional;
import javax.swing.JPanel;
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
    private String shown = ONE;

    DeskCards(PanelContext context, Desk desk, DiscCanvas canvas) {
        super(new CardLayout());
        this.context = context;
        this.desk = desk;
        this.canvas = canvas;
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
        Optional<SurfacePoint> place = mark.flatMap(m -> m.mark().point()).or(() -> canvas.pointer()
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
        if (name.equals(ONE)) {
            canvas.requestFocusInWindow();
        }
    }
}
