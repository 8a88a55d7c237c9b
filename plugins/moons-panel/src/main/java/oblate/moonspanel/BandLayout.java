/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.sky.MoonFacts;
import oblate.sky.TimeSpan;
import oblate.workbench.timeline.TimeAxis;
import oblate.workbench.words.Texts;

/**
 * Where the bands and the events in them come to lie: a band for each moon, and one for what moons do to each other when there is something. Immutable.
 *
 * @param axis the time
 * @param names of the bands from the top
 * @param events in the same order, band by band
 */
record BandLayout(TimeAxis axis, List<String> names, List<List<Happening>> events) {
    private static final Texts TEXTS = Texts.of(BandLayout.class);
    /** Height of a band (px). */
    static final int BAND_PX = 20;
    /** Room over the first band for the ticks of pictures (px). */
    static final int TOP_PX = 10;
    /** Room for names at the left (px). */
    static final int LEFT_PX = 104;
    /** Room under the bands for the hours (px). */
    static final int FOOT_PX = 22;

    private static final int RIGHT_PX = 44;
    private static final double LANE_PX = 7;
    private static final double LEAST_PX = 3;
    private static final double NEAR_PX = 4;

    BandLayout {
        names = List.copyOf(names);
        events = events.stream().map(List::copyOf).toList();
    }

    /** For what was found, over a width (px). */
    static BandLayout of(Found found, int widthPx) {
        List<String> names = new ArrayList<>();
        List<List<Happening>> bands = new ArrayList<>();
        for (MoonFacts moon : found.wish().planet().moons()) {
            names.add(moon.name());
            bands.add(found.events().stream()
                    .filter(e -> e instanceof MoonEvent && e.moonIds().contains(moon.id()))
                    .toList());
        }
        List<Happening> meetings =
                found.events().stream().filter(MoonMeeting.class::isInstance).toList();
        if (!meetings.isEmpty()) {
            names.add(TEXTS.text("band.meetings"));
            bands.add(meetings);
        }
        TimeSpan span = found.wish().span();
        return new BandLayout(new TimeAxis(span, LEFT_PX, Math.max(LEFT_PX + 50, widthPx - RIGHT_PX)), names, bands);
    }

    /** Lower edge of the last band (px). */
    int bottomPx() {
        return TOP_PX + BAND_PX * names.size();
    }

    /** Middle of a band (px). */
    double middle(int band) {
        return TOP_PX + BAND_PX * (band + 0.5);
    }

    /** What the Earth sees move lies in the upper lane of its band, what the Sun would see (shadows, eclipses) in the lower. */
    Rectangle2D box(int band, Happening event) {
        double left = axis.x(event.from());
        double width = axis.x(event.to()) - left;
        double widen = Math.max(0, (LEAST_PX - width) / 2);
        double y = event.kind().fromSun() ? middle(band) + 1 : middle(band) - LANE_PX - 1;
        return new Rectangle2D.Double(left - widen, y, width + 2 * widen, LANE_PX);
    }

    /** The event under a point (px), or near it in time. */
    Optional<Happening> at(double x, double y) {
        int band = (int) Math.floor((y - TOP_PX) / BAND_PX);
        if (band < 0 || band >= events.size()) {
            return Optional.empty();
        }
        return events.get(band).stream()
                .filter(e -> x >= box(band, e).getMinX() - NEAR_PX
                        && x <= box(band, e).getMaxX() + NEAR_PX)
                .min(Comparator.comparingDouble(
                                (Happening e) -> Math.abs(box(band, e).getCenterY() - y))
                        .thenComparingDouble(e -> Math.abs(box(band, e).getCenterX() - x)));
    }
}
