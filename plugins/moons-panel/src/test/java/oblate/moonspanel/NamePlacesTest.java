/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import oblate.base.PluginHost;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.workbench.look.Palette;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names keep off the limb, off each other and off the moons. */
class NamePlacesTest {
    private static final double LETTER_PX = 6.5;
    private static final double ROW_PX = 15;

    /** Five days of the moons, near and far, in a usual field and in a small one. */
    @ParameterizedTest
    @CsvSource({"true, 560, 330", "true, 420, 240", "false, 620, 180"})
    void namesOfMoonsAndShadowsStandClear(boolean closeUp, int width, int height) {
        Dimension field = new Dimension(width, height);
        Sky sky = Sky.bundled();
        Supplier<Palette> none = () -> null;
        SystemDrawing drawing = new SystemDrawing(none, closeUp ? s -> 1.75 : Scene::reachRadii, closeUp);
        int names = 0;
        int onTheWay = 0;
        try (PluginHost plugins = PluginHost.bundledOnly()) {
            PlanetModel jupiter = plugins.load(PlanetModel.class).stream()
                    .filter(p -> p.id().equals("jupiter"))
                    .findFirst()
                    .orElseThrow();
            UtcTime first = UtcTime.parse("2027-09-20T00:00:00Z");
            for (int i = 0; i < 480; i++) {
                Scene now = Scene.at(new Grounds(sky), Optional.empty(), jupiter, first.plusClockSeconds(900.0 * i));
                SystemWords words =
                        new SystemWords(now, drawing.placement(now, width, height), closeUp, Set.of(), null, field);
                List<SystemWords.Named> named = words.named();
                NamePlaces places = words.places(named);
                List<Rectangle2D> boxes = new ArrayList<>();
                for (SystemWords.Named each : named) {
                    Optional<NamePlaces.Place> place =
                            places.place(each.dot(), LETTER_PX * each.text().length(), ROW_PX);
                    assertThat(place).as("%s at %d", each.text(), i).isPresent();
                    Rectangle2D box = place.get().box();
                    assertThat(places.crossesLimb(box))
                            .as("%s over the limb at %d", each.text(), i)
                            .isFalse();
                    assertThat(boxes).noneMatch(box::intersects);
                    assertThat(new Rectangle2D.Double(0, 0, width, height).contains(box))
                            .isTrue();
                    boxes.add(box);
                    names++;
                    onTheWay += named.stream().anyMatch(n -> n.dot().intersects(box)) ? 1 : 0;
                }
            }
        }
        assertThat(names).isGreaterThan(closeUp ? 250 : 1500);
        assertThat(onTheWay).as("names over a moon").isZero();
    }

    @Test
    void aNameWithoutRoomIsLeftOutAndOneFarAwayIsLedTo() {
        Dimension field = new Dimension(200, 60);
        Rectangle2D dot = new Rectangle2D.Double(98, 28, 4, 4);
        NamePlaces crowded = new NamePlaces(field, new Rectangle2D.Double(-500, -500, 10, 10), List.of(dot));
        crowded.keepOff(new Rectangle2D.Double(0, 0, 200, 60));
        assertThat(crowded.place(dot, 40, 14)).isEmpty();
        NamePlaces places = new NamePlaces(field, new Rectangle2D.Double(-500, -500, 10, 10), List.of(dot));
        assertThat(places.place(dot, 40, 14).orElseThrow()).satisfies(p -> {
            assertThat(p.isAway()).isFalse();
            assertThat(p.box().getCenterX()).isEqualTo(100);
            assertThat(p.box().getMinY()).isEqualTo(35);
        });
        places.keepOff(new Rectangle2D.Double(50, 10, 100, 40));
        assertThat(places.place(dot, 40, 14).orElseThrow().isAway()).isTrue();
    }
}
