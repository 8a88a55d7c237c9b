/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSlider;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The planet near by on the left, all moons on the right, and under them the instant that is shown. */
final class InstantPane extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(InstantPane.class);
    /** Half the width of the near drawing (equatorial radii). */
    private static final double NEAR_RADII = 1.75;
    /** The same for a planet with rings. */
    private static final double NEAR_RINGS_RADII = 2.6;
    /** Step of the slider (s). */
    private static final int SLIDER_S = 30;

    private final SystemDrawing near;
    private final SystemDrawing wide;
    private final JTextField time = new JTextField(21);
    private final JSlider slider = new JSlider(0, 1, 0);
    private final JLabel said = new JLabel(" ");
    private transient Optional<TimeSpan> span = Optional.empty();
    private boolean filling;

    /**
     * @param whenMoved gets the instant that the slider was moved to
     * @param whenTyped gets what was typed for an instant
     */
    InstantPane(Supplier<Palette> palette, Consumer<UtcTime> whenMoved, Consumer<String> whenTyped) {
        super(new MigLayout("insets 0, gap 1, fill", "[45%,fill][55%,fill]", "[grow,fill][]"));
        setOpaque(false);
        near = new SystemDrawing(
                palette,
                s -> s.disc().rings().isPresent() && s.disc().planet().rings().isPresent()
                        ? NEAR_RINGS_RADII
                        : NEAR_RADII,
                true);
        wide = new SystemDrawing(palette, Scene::reachRadii, false);
        MoonsBar.name(time, "time");
        MoonsBar.name(slider, "slider");
        MoonsBar.name(near, "near");
        MoonsBar.name(wide, "wide");
        add(near, "spany 2, wmin 0, hmin 160");
        add(wide, "wmin 0, hmin 60, wrap");
        JPanel instant = new JPanel(new MigLayout("insets 8 12 8 12, gap 8, fillx", "[][grow,fill]"));
        instant.setOpaque(false);
        followLook();
        instant.add(time, "wmin pref");
        instant.add(slider, "wmin 0");
        JLabel legend = new JLabel(TEXTS.text("legend"));
        legend.setToolTipText(legend.getText());
        instant.add(legend, "newline, span 2, wmin 0");
        said.setName("moons.said");
        instant.add(said, "newline, span 2, wmin 0");
        add(instant, "wmin 0");
        time.addActionListener(e -> whenTyped.accept(time.getText()));
        slider.addChangeListener(e -> {
            if (!filling) {
                span.ifPresent(s -> whenMoved.accept(s.from().plusClockSeconds((double) slider.getValue() * SLIDER_S)));
            }
        });
    }

    void followLook() {
        time.setFont(Theme.figureFont(-1));
    }

    /** Which stretch the slider moves through. */
    void span(TimeSpan whole) {
        filling = true;
        span = Optional.of(whole);
        slider.setMaximum((int) (whole.clockSeconds() / SLIDER_S));
        filling = false;
    }

    void instant(UtcTime moment) {
        filling = true;
        time.setText(moment.iso(0));
        span.ifPresent(s -> slider.setValue((int) Math.round(moment.clockSecondsSince(s.from()) / SLIDER_S)));
        filling = false;
    }

    void show(Scene scene) {
        near.show(scene);
        wide.show(scene);
    }

    void showNothing() {
        near.showNothing();
        wide.showNothing();
    }

    void face(Facing facing, boolean mirrored) {
        near.face(facing, mirrored);
        wide.face(facing, mirrored);
    }

    void choose(Optional<Happening> event) {
        near.choose(event.map(Happening::moonIds).orElse(java.util.Set.of()));
        wide.choose(event.map(Happening::moonIds).orElse(java.util.Set.of()));
        said.setText(event.map(Happening::sentence).orElse(TEXTS.text("said.choose")));
    }
}
