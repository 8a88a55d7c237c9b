/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Contrast by the formula of WCAG 2.1, success criterion 1.4.3: 4.5 to 1 for body text. */
class ThemeTest {
    private static double channel(int value) {
        double c = value / 255.0;
        return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double luminance(Color c) {
        return 0.2126 * channel(c.getRed()) + 0.7152 * channel(c.getGreen()) + 0.0722 * channel(c.getBlue());
    }

    private static double contrast(Color a, Color b) {
        double light = Math.max(luminance(a), luminance(b));
        double dark = Math.min(luminance(a), luminance(b));
        return (light + 0.05) / (dark + 0.05);
    }

    @Test
    void theFormulaGivesItsOwnKnownEnds() {
        assertThat(contrast(Color.BLACK, Color.WHITE)).isEqualTo(21, org.assertj.core.data.Offset.offset(1e-9));
    }

    @Tag("truth")
    @ParameterizedTest
    @EnumSource(
            value = Theme.class,
            names = {"DAY", "DUSK"})
    void textReadsOnEveryBackground(Theme theme) {
        Palette p = theme.palette();
        for (Color ground : new Color[] {p.ground(), p.raised()}) {
            assertThat(contrast(p.ink(), ground)).as("ink").isGreaterThan(7);
            assertThat(contrast(p.quietInk(), ground)).as("quiet ink").isGreaterThan(4.5);
            assertThat(contrast(p.alarm(), ground)).as("alarm").isGreaterThan(4.5);
            assertThat(contrast(p.accent(), ground)).as("accent").isGreaterThan(4.5);
        }
        assertThat(contrast(p.nightInk(), p.night())).isGreaterThan(4.5);
    }

    @Test
    void theDimRedThemeIsRedAndDim() {
        Palette p = Theme.RED.palette();
        for (Color c : new Color[] {
            p.ground(), p.raised(), p.line(), p.ink(), p.quietInk(), p.accent(), p.alarm(), p.night(), p.nightInk()
        }) {
            assertThat(c.getRed()).isGreaterThanOrEqualTo(Math.max(c.getGreen(), c.getBlue()));
            assertThat(luminance(c)).as(c.toString()).isLessThan(0.26);
            assertThat(c.getGreen() + c.getBlue()).as(c.toString()).isLessThan(150);
        }
        for (Ink ink : Ink.values()) {
            assertThat(luminance(p.of(ink))).as(ink.name()).isLessThan(0.32);
        }
        assertThat(contrast(p.ink(), p.ground())).isGreaterThan(3);
    }

    @Test
    void aPictureUnderRedLightHasNoBrightGreenOrBlueAndKeepsItsOrder() {
        BufferedImage grey = new BufferedImage(3, 1, BufferedImage.TYPE_INT_ARGB);
        grey.setRGB(0, 0, 0xFFFFFFFF);
        grey.setRGB(1, 0, 0xFF808080);
        grey.setRGB(2, 0, 0xFF00FF00);
        BufferedImage red = RedLight.on(grey);
        for (int x = 0; x < 3; x++) {
            Color c = new Color(red.getRGB(x, 0));
            assertThat(Math.max(c.getGreen(), c.getBlue())).isLessThan(30);
        }
        assertThat(new Color(red.getRGB(0, 0)).getRed()).isGreaterThan(new Color(red.getRGB(1, 0)).getRed());
        assertThat(new Color(red.getRGB(2, 0)).getRed()).isBetween(100, 140);
    }
}
