/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import java.time.Instant;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.PlanetMap;

/**
 * One picture's strip of a ladder: simple cylindrical, north up, planetary east to the right, the frame's zero in the middle.
 *
 * @param pictureId the picture's number in the catalog
 * @param name its name
 * @param midUtc its middle
 * @param widthPx columns
 * @param heightPx rows
 * @param rgb {@code 0xRRGGBB}, row after row from the top left, stretched by itself; dark where the picture shows nothing usable. Not copied
 * @param seen share of it the picture shows, 0…1
 */
public record LadderStrip(
        long pictureId, String name, Instant midUtc, int widthPx, int heightPx, int[] rgb, double seen) {
    /** Colour of what a picture does not show. */
    public static final int UNSEEN = 0x0B0C0E;

    /** Pixels of longitude on a strip, from one end to the other. */
    static final int COLUMNS = 360;

    private static final double DARK_SHARE = 0.01;
    private static final double BRIGHT_SHARE = 0.995;

    /** The sheet a strip is drawn on at an instant. */
    static MapFrame sheet(LadderFrame frame, Instant time) {
        double cell = frame.widthDeg() / COLUMNS;
        int rows = Math.max(1, (int) Math.round((frame.northDeg() - frame.southDeg()) / cell));
        return new MapFrame(
                frame.planet(),
                frame.system(),
                MapProjection.CYLINDRICAL,
                true,
                frame.zeroLonDegAt(time),
                (frame.northDeg() + frame.southDeg()) / 2,
                COLUMNS,
                rows,
                cell);
    }

    /** A map made visible. */
    static LadderStrip of(long pictureId, String name, Instant midUtc, PlanetMap map) {
        double[] ends = ends(map);
        double span = Math.max(1e-12, ends[1] - ends[0]);
        int[] rgb = new int[map.planes().get(0).length];
        for (int i = 0; i < rgb.length; i++) {
            boolean known = !Float.isNaN(map.planes().get(0)[i]);
            int colour = 0;
            for (int c = 0; c < 3; c++) {
                float v = map.planes().get(Math.min(c, map.planes().size() - 1))[i];
                double level = 16 + 232 * (v - ends[0]) / span;
                colour = colour << 8 | (int) Math.max(16, Math.min(255, Math.round(level)));
            }
            rgb[i] = known ? colour : UNSEEN;
        }
        return new LadderStrip(
                pictureId, name, midUtc, map.frame().widthPx(), map.frame().heightPx(), rgb, map.covered());
    }

    /** Darkest and brightest, but for a few outliers, over all colours. */
    private static double[] ends(PlanetMap map) {
        int size = map.planes().stream().mapToInt(p -> p.length).sum();
        float[] seen = new float[size];
        int n = 0;
        for (float[] plane : map.planes()) {
            for (float v : plane) {
                if (!Float.isNaN(v)) {
                    seen[n++] = v;
                }
            }
        }
        if (n == 0) {
            return new double[] {0, 1};
        }
        java.util.Arrays.sort(seen, 0, n);
        return new double[] {seen[(int) (DARK_SHARE * (n - 1))], seen[(int) (BRIGHT_SHARE * (n - 1))]};
    }
}
