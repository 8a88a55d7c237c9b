/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSlider;
import net.miginfocom.swing.MigLayout;
import oblate.image.PixelGrid;
import oblate.image.Tone;

/** Black, white and gamma of what is shown; the picture itself and its measuring are not touched. */
final class StretchBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private final JSlider black = new JSlider(0, 100, 0);
    private final JSlider white = new JSlider(5, 130, 100);
    private final JSlider gamma = new JSlider(30, 300, 100);
    private final transient Consumer<StretchBar> whenChanged;
    private boolean silent;

    StretchBar(Consumer<StretchBar> whenChanged) {
        super(new MigLayout("insets 0, gap 8 2, wrap 2, fillx", "[56!][grow,fill]"));
        this.whenChanged = whenChanged;
        setOpaque(false);
        row("Black", black, "Levels below are shown black");
        row("White", white, "Levels above are shown white");
        row("Gamma", gamma, "Lifts or sinks the middle tones");
        JButton reset = new JButton("As the picture is");
        reset.setToolTipText("Takes the stretch back");
        reset.addActionListener(e -> {
            silent = true;
            black.setValue(0);
            white.setValue(100);
            gamma.setValue(100);
            silent = false;
            whenChanged.accept(this);
        });
        add(reset, "skip 1, growx 0");
    }

    private void row(String name, JSlider slider, String hint) {
        slider.setToolTipText(hint + "; for the eye only");
        slider.setName("stretch." + name.toLowerCase(java.util.Locale.ROOT));
        slider.addChangeListener(e -> {
            if (!silent) {
                whenChanged.accept(this);
            }
        });
        add(new JLabel(name));
        add(slider, "wmin 0");
    }

    Tone tone(PixelGrid pixels) {
        double range = pixels.high() - pixels.low();
        double low = pixels.low() + range * black.getValue() / 100.0;
        double high = Math.max(low + range * 0.01, pixels.low() + range * white.getValue() / 100.0);
        return range > 0 ? new Tone(low, high, gamma.getValue() / 100.0) : Tone.plain(pixels);
    }
}
