/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.geom.Point2D;
import java.util.List;
import oblate.archive.Feature;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.workbench.PanelContext;

/** Offers names for a mark beside it on the canvas. On the event thread only. */
final class NamingDesk {
    private final PanelContext context;
    private final Desk desk;
    private final DiscCanvas canvas;
    private final NamingList list;

    NamingDesk(PanelContext context, Desk desk, DiscCanvas canvas) {
        this.context = context;
        this.desk = desk;
        this.canvas = canvas;
        list = new NamingList(context::palette, this::named, this::leaveUnnamed, this::nudge);
        canvas.add(list);
    }

    boolean isOpen() {
        return list.isVisible();
    }

    void close() {
        list.setVisible(false);
    }

    void ask(StoredMark mark) {
        OpenPicture open = desk.open().orElseThrow();
        String planet = open.picture().planetId().orElseThrow();
        context.background().quietly(() -> context.archive().features(planet), features -> {
            double sigma = mark.mark().errors().map(ErrorBudget::totalLonDeg).orElse(1.0);
            List<Offer> offers = Offer.merged(
                    Offer.ofMoons(
                            open.moonSpots(),
                            features,
                            planet,
                            mark.mark().pixel(),
                            mark.mark().pickSigmaPx()),
                    Offer.rank(
                            features,
                            open.expected(),
                            open.disc().orElseThrow(),
                            mark.mark().point(),
                            sigma));
            list.ask(offers, planet, mark.mark().point().isEmpty());
            canvas.hold(desk.hand().chosenPixel());
            place();
        });
    }

    /** Keeps the list beside its mark. */
    void place() {
        if (!isOpen()) {
            return;
        }
        desk.hand().chosenPixel().ifPresent(pixel -> {
            Point2D.Double at = canvas.view().toScreen(pixel);
            int x = (int) Math.max(8, Math.min(canvas.getWidth() - list.getWidth() - 8.0, at.x - 40));
            double below = at.y + 22;
            double y = below + list.getHeight() < canvas.getHeight() ? below : at.y - 22 - list.getHeight();
            list.setLocation(x, (int) Math.max(8, y));
            list.revalidate();
        });
    }

    private void nudge(double dx, double dy) {
        var step = canvas.view().stepInPicture(dx, dy);
        if (desk.hand().moveInHand(step.xPx(), step.yPx())) {
            canvas.hold(desk.hand().chosenPixel());
        }
    }

    private void named(Feature feature) {
        close();
        desk.hand().name(feature);
        canvas.requestFocusInWindow();
    }

    void leaveUnnamed() {
        close();
        desk.hand().settleMove();
        canvas.hold(java.util.Optional.empty());
        canvas.requestFocusInWindow();
    }
}
