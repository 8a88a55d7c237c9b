/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSlider;
import net.miginfocom.swing.MigLayout;
import oblate.image.PixelGrid;
import oblate.image.Tone;
import oblate.workbench.words.Texts;

/** Black, white, gamma, colour and sharpening of what is shown; the picture itself and its measuring are not touched. */
final class StretchBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(StretchBar.class);
    private static final int WHITE = 100;
    private static final int EVEN_GAMMA = 100;
    private static final double SHARPEN_STEP = 1.0;
    private final JSlider black = new JSlider(0, 100, 0);
    private final JSlider white = new JSlider(5, 130, WHITE);
    private final JSlider gamma = new JSlider(30, 300, EVEN_GAMMA);
    private final JSlider sharpen = new JSlider(0, 3, 0);
    private final JComboBox<Look.Channel> channel = new JComboBox<>(Look.Channel.values());
    private final transient ViewSettings settings;
    private final transient Runnable whenChanged;
    private boolean silent;

    StretchBar(ViewSettings settings, Runnable whenChanged) {
        super(new MigLayout("insets 0, gap 8 2, wrap 2, fillx", "[64!][grow,fill]"));
        this.settings = settings;
        this.whenChanged = whenChanged;
        setOpaque(false);
        row("stretch.black", black);
        row("stretch.white", white);
        row("stretch.gamma", gamma);
        sharpen.setSnapToTicks(true);
        sharpen.setToolTipText(TEXTS.text("stretch.sharpen.tip"));
        sharpen.setName("stretch.sharpen");
        sharpen.addChangeListener(e -> tell(() -> settings.setSharpen(sharpen.getValue())));
        add(new JLabel(TEXTS.text("stretch.sharpen")));
        add(sharpen, "wmin 0");
        channel.setToolTipText(TEXTS.text("stretch.channel.tip"));
        channel.setName("stretch.channel");
        channel.addActionListener(e -> tell(() -> settings.setChannel((Look.Channel) channel.getSelectedItem())));
        channel.setRenderer(new WordRenderer());
        add(new JLabel(TEXTS.text("stretch.channel")));
        add(channel, "growx 0");
        JButton reset = new JButton(TEXTS.text("stretch.reset"));
        reset.setToolTipText(TEXTS.text("stretch.reset.tip"));
        reset.addActionListener(e -> reset());
        add(reset, "skip 1, growx 0");
        refresh();
    }

    private void reset() {
        silent = true;
        black.setValue(0);
        white.setValue(WHITE);
        gamma.setValue(EVEN_GAMMA);
        silent = false;
        settings.setSharpen(0);
        settings.setChannel(Look.Channel.ALL);
    }

    private void tell(Runnable deed) {
        if (!silent) {
            deed.run();
        }
    }

    private void row(String key, JSlider slider) {
        slider.setToolTipText(TEXTS.text(key + ".tip"));
        slider.setName(key);
        slider.addChangeListener(e -> tell(whenChanged));
        add(new JLabel(TEXTS.text(key)));
        add(slider, "wmin 0");
    }

    /** Shows what the settings say. */
    void refresh() {
        silent = true;
        sharpen.setValue(settings.sharpen());
        channel.setSelectedItem(settings.channel());
        silent = false;
    }

    /** Whether levels are shown otherwise than the picture has them. */
    boolean isStretched() {
        return black.getValue() != 0 || white.getValue() != WHITE || gamma.getValue() != EVEN_GAMMA;
    }

    /** How a picture is to be shown. */
    Look look(Optional<PixelGrid> pixels, boolean red) {
        return new Look(
                pixels.map(this::tone).orElse(new Tone(0, 1, 1)),
                settings.channel(),
                settings.sharpen() * SHARPEN_STEP,
                red);
    }

    private Tone tone(PixelGrid pixels) {
        double range = pixels.high() - pixels.low();
        double low = pixels.low() + range * black.getValue() / 100.0;
        double high = Math.max(low + range * 0.01, pixels.low() + range * white.getValue() / 100.0);
        return range > 0 ? new Tone(low, high, gamma.getValue() / 100.0) : Tone.plain(pixels);
    }

    /** Says a channel in words. */
    private static final class WordRenderer extends javax.swing.DefaultListCellRenderer {
        private static final long serialVersionUID = 1L;

        @Override
        public java.awt.Component getListCellRendererComponent(
                javax.swing.JList<?> of, Object value, int index, boolean selected, boolean focused) {
            String words = value instanceof Look.Channel c ? c.words() : "";
            return super.getListCellRendererComponent(of, words, index, selected, focused);
        }
    }
}
