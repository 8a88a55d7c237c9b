/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.fonts.inter.FlatInterFont;
import com.formdev.flatlaf.fonts.jetbrains_mono.FlatJetBrainsMonoFont;
import java.awt.Color;
import java.awt.Font;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.LookAndFeel;
import javax.swing.UIManager;
import oblate.workbench.words.Texts;

/** The three looks of the window: day, dusk, and a dim red one that spares dark-adapted eyes. */
public enum Theme {
    /** Light. */
    DAY(DayLaf::new) {
        @Override
        public Palette palette() {
            return new Palette(
                    new Color(0xF6F5F2),
                    new Color(0xFFFFFF),
                    new Color(0xDCD9D2),
                    new Color(0x1F2328),
                    new Color(0x5B6169),
                    new Color(0x0B6E8F),
                    new Color(0xB23A00),
                    new Color(0x000000),
                    new Color(0xC9CDD3),
                    Palette.okabeIto(),
                    false);
        }
    },
    /** Dark. */
    DUSK(DuskLaf::new) {
        @Override
        public Palette palette() {
            return new Palette(
                    new Color(0x1B1E23),
                    new Color(0x23272E),
                    new Color(0x343A43),
                    new Color(0xE4E6EA),
                    new Color(0x9BA3AE),
                    new Color(0x57B8D4),
                    new Color(0xF0935A),
                    new Color(0x000000),
                    new Color(0xB8BEC7),
                    Palette.okabeIto(),
                    false);
        }
    },
    /** Shades of red only, below a low luminance. */
    RED(RedLaf::new) {
        @Override
        public Palette palette() {
            return new Palette(
                    new Color(0x0E0403),
                    new Color(0x180706),
                    new Color(0x3A100C),
                    new Color(0xC2392B),
                    new Color(0x9E3428),
                    new Color(0xD8402F),
                    new Color(0xF05040),
                    new Color(0x000000),
                    new Color(0xA83226),
                    Palette.reds(),
                    true);
        }
    };

    private static final Texts TEXTS = Texts.of(Theme.class);
    private final Supplier<FlatLaf> laf;

    Theme(Supplier<FlatLaf> laf) {
        this.laf = laf;
    }

    /** What a person reads. */
    public String label() {
        return TEXTS.word("theme", this);
    }

    /** Colours for what is painted by hand. */
    public abstract Palette palette();

    /** Makes this the look of every component made from now on, unless it is. On the event thread. */
    public void install() {
        FlatLaf fresh = laf.get();
        LookAndFeel now = UIManager.getLookAndFeel();
        if (now != null && now.getClass() == fresh.getClass()) {
            return;
        }
        Faces.install(Optional.empty());
        FlatLaf.setPreferredFontFamily(FlatInterFont.FAMILY);
        FlatLaf.setPreferredMonospacedFontFamily(FlatJetBrainsMonoFont.FAMILY);
        FlatLaf.setup(fresh);
    }

    /** The face of figures, with digits of one width, {@code delta} points off the body size. */
    public static Font figureFont(float delta) {
        Font base = UIManager.getFont("monospaced.font");
        if (base == null) {
            base = new Font(Font.MONOSPACED, Font.PLAIN, 13);
        }
        return base.deriveFont(bodyFont(0).getSize2D() + delta);
    }

    /** The face of words, {@code delta} points off the body size. */
    public static Font bodyFont(float delta) {
        Font base = UIManager.getFont("defaultFont");
        if (base == null) {
            base = new Font(Font.SANS_SERIF, Font.PLAIN, 13);
        }
        return base.deriveFont(base.getSize2D() + delta);
    }

    /** The face of headings, {@code delta} points off the body size. */
    public static Font headFont(float delta) {
        return bodyFont(delta).deriveFont(Font.BOLD);
    }
}
