/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import oblate.base.PluginHost;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.workbench.look.Palette;
import org.junit.jupiter.api.Test;

/** The scale of the drawings keeps away from what is drawn. */
class ScaleBarTest {
    private static final Dimension FIELD = new Dimension(420, 240);

    @Test
    void noMoonStandsUnderTheScaleWhereACornerIsFree() {
        Graphics2D g = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
        Set<Point2D> corners = new HashSet<>();
        Sky sky = Sky.bundled();
        try (PluginHost plugins = PluginHost.bundledOnly()) {
            PlanetModel jupiter = plugins.load(PlanetModel.class).stream()
                    .filter(p -> p.id().equals("jupiter"))
                    .findFirst()
                    .orElseThrow();
            Supplier<Palette> none = () -> null;
            SystemDrawing drawing = new SystemDrawing(none, s -> 2.4, true);
            drawing.face(Facing.SKY_NORTH_UP, false);
            UtcTime first = UtcTime.parse("2027-09-20T00:00:00Z");
            for (int i = 0; i < 240; i++) {
                Scene now = Scene.at(new Grounds(sky), Optional.empty(), jupiter, first.plusClockSeconds(1800.0 * i));
                Placement place = drawing.placement(now, FIELD.width, FIELD.height);
                ScaleBar scale = ScaleBar.of(g, now, place, true, FIELD);
                corners.add(new Point2D.Double(scale.box().getX(), scale.box().getY()));
                for (MoonPlace moon : now.moons()) {
                    assertThat(scale.box().contains(SystemDrawing.screen(moon, place)))
                            .as(moon.name() + " at " + i)
                            .isFalse();
                }
            }
        }
        assertThat(corners).as("it moves out of the way").hasSizeGreaterThan(1);
        g.dispose();
    }
}
