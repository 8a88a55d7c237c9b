/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.KeyStroke;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.SurfacePoint;
import oblate.sky.Spheroid;
import oblate.workbench.MeasureTool;
import oblate.workbench.ToolContext;
import oblate.workbench.ToolInHand;
import oblate.workbench.ToolPicture;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Pattern;
import oblate.workbench.measure.Drawn;

/** Measures how far apart two clicked places are. */
public final class DistanceTool implements MeasureTool {
    @Override
    public String id() {
        return "surface-distance";
    }

    @Override
    public String label() {
        return "Distance";
    }

    @Override
    public String hint() {
        return "Click two places: how far apart they are on the globe";
    }

    @Override
    public Optional<KeyStroke> key() {
        return Optional.of(
                KeyStroke.getKeyStroke(KeyEvent.VK_D, InputEvent.CTRL_DOWN_MASK | InputEvent.SHIFT_DOWN_MASK));
    }

    @Override
    public ToolInHand take(ToolContext context) {
        return new Hand(context);
    }

    /** The tool while it is in use: no place, one place, or two. */
    private static final class Hand implements ToolInHand {
        private static final int PIECES = 60;
        private final ToolContext context;
        private final List<PixelPoint> places = new ArrayList<>();

        Hand(ToolContext context) {
            this.context = context;
            context.tell("Click the first place");
        }

        @Override
        public void clicked(PixelPoint at) {
            Optional<DiscFrame> frame = context.picture().flatMap(ToolPicture::frame);
            if (frame.isEmpty()) {
                context.tell("Fit the disc first (F5)");
                return;
            }
            if (frame.get().locate(at.xPx(), at.yPx()).isEmpty()) {
                context.tell("Beside the disc");
                return;
            }
            if (places.size() == 2) {
                places.clear();
            }
            places.add(at);
            tell();
        }

        private void tell() {
            if (places.size() < 2) {
                context.tell(places.isEmpty() ? "Click the first place" : "Click the second place");
                return;
            }
            ToolPicture picture = context.picture().orElseThrow();
            Optional<Distance> distance = Distance.between(
                    picture.frame().orElseThrow(),
                    picture.fit().orElseThrow().fit().covariance(),
                    places.get(0),
                    places.get(1),
                    picture.pickSigmaPx());
            context.tell(distance.map(d -> Figures.withSigma(d.km(), d.sigmaKm(), "km") + ", "
                            + Figures.withSigma(d.deg(), d.sigmaDeg(), "°") + " of great circle")
                    .orElse("Too near the limb"));
        }

        @Override
        public void pictureChanged() {
            places.clear();
            tell();
        }

        @Override
        public List<Drawn> overlay() {
            Optional<DiscFrame> frame = context.picture().flatMap(ToolPicture::frame);
            if (frame.isEmpty()) {
                return List.of();
            }
            List<Drawn> drawn = new ArrayList<>();
            for (PixelPoint place : places) {
                drawn.add(new Drawn.Spot(Ink.CHOSEN, Pattern.SOLID, place, "", 5));
            }
            if (places.size() == 2) {
                drawn.add(new Drawn.Line(Ink.CHOSEN, Pattern.SOLID, line(frame.get()), false));
            }
            return drawn;
        }

        private List<PixelPoint> line(DiscFrame frame) {
            SurfacePoint a = frame.locate(places.get(0).xPx(), places.get(0).yPx()).orElseThrow();
            SurfacePoint b = frame.locate(places.get(1).xPx(), places.get(1).yPx()).orElseThrow();
            Spheroid figure = frame.disc().planet().globe().figure();
            List<PixelPoint> points = new ArrayList<>();
            for (double[] place : SurfaceLine.along(
                    figure,
                    a.latGraphicDeg(),
                    b.latGraphicDeg(),
                    b.fromMeridianDeg() - a.fromMeridianDeg(),
                    PIECES)) {
                frame.place(a.lonIauDeg() + place[1], place[0]).ifPresent(points::add);
            }
            return points;
        }
    }
}
