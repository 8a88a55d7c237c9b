/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.Color;
import java.util.EnumMap;
import java.util.Map;

/**
 * The colours of a theme, for what is painted by hand. Immutable.
 *
 * @param ground background of the main area
 * @param raised background of cards and bars
 * @param line thin separating lines
 * @param ink text
 * @param quietInk text of second rank, still readable on {@code ground} and {@code raised} (WCAG AA)
 * @param accent the one accent
 * @param alarm what needs a look
 * @param night background behind pictures
 * @param nightInk text on {@code night}
 * @param inks overlay colours
 * @param picturesRed whether pictures are shown in red too
 */
public record Palette(
        Color ground,
        Color raised,
        Color line,
        Color ink,
        Color quietInk,
        Color accent,
        Color alarm,
        Color night,
        Color nightInk,
        Map<Ink, Color> inks,
        boolean picturesRed) {
    /** Copies the map. */
    public Palette {
        inks = Map.copyOf(inks);
    }

    /** Colour of an overlay line. */
    public Color of(Ink which) {
        return inks.get(which);
    }

    /** The Okabe–Ito set (M. Okabe and K. Ito, Color Universal Design, 2008), readable for every kind of colour vision. */
    static Map<Ink, Color> okabeIto() {
        Map<Ink, Color> inks = new EnumMap<>(Ink.class);
        inks.put(Ink.OUTLINE, new Color(0x56B4E9));
        inks.put(Ink.GRID, new Color(0xE8E4DA));
        inks.put(Ink.MERIDIAN, new Color(0xF0E442));
        inks.put(Ink.TERMINATOR, new Color(0x009E73));
        inks.put(Ink.RING, new Color(0x56B4E9));
        inks.put(Ink.MARK, new Color(0xFF7A2F));
        inks.put(Ink.CHOSEN, new Color(0xF0E442));
        inks.put(Ink.EXPECTED, new Color(0xE79AC4));
        inks.put(Ink.ERROR, new Color(0xE69F00));
        return inks;
    }

    /** One hue for all: patterns and shapes carry the difference. */
    static Map<Ink, Color> reds() {
        Map<Ink, Color> inks = new EnumMap<>(Ink.class);
        for (Ink ink : Ink.values()) {
            inks.put(ink, new Color(0xC83222));
        }
        inks.put(Ink.GRID, new Color(0xC4402F));
        inks.put(Ink.CHOSEN, new Color(0xFF5A44));
        inks.put(Ink.MARK, new Color(0xE84434));
        return inks;
    }
}
