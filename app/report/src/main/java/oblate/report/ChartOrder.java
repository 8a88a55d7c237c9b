/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.drift.Drift;
import oblate.drift.LongitudeSeries;

/**
 * A chart as it is wished for.
 *
 * @param kind what is drawn
 * @param features at least one, all of one planet; for {@link Kind#LONGITUDE} in one system
 * @param until instant up to which each fitted motion is predicted, with one standard error on both sides; {@link Kind#LONGITUDE} only
 * @param size of the drawing
 * @param theme colours
 * @param format of the file
 */
public record ChartOrder(
        Kind kind, List<Feature> features, Optional<Instant> until, Size size, Theme theme, Format format) {

    /** Copies the list. */
    public ChartOrder {
        features = List.copyOf(features);
        if (features.isEmpty()) {
            throw new IllegalArgumentException("no feature");
        }
    }

    /** What is drawn. */
    public enum Kind {
        /** Longitude against date. */
        LONGITUDE,
        /** Speed against planetographic latitude. */
        SPEED
    }

    /** Colours of the whole. */
    public enum Theme {
        /** On a light screen. */
        LIGHT,
        /** On a dark screen. */
        DARK,
        /** On white paper. */
        PRINT
    }

    /** Kind of file. */
    public enum Format {
        /** Pixels. */
        PNG,
        /** Lines and text. */
        SVG
    }

    /**
     * A feature.
     *
     * @param series its longitudes
     * @param drift what was fitted to them; empty when nothing could be
     */
    public record Feature(LongitudeSeries series, Optional<Drift> drift) {}

    /**
     * Size of the drawing.
     *
     * @param widthPx width before scaling (px), 200…10000
     * @param heightPx height before scaling (px), 200…10000
     * @param scale 1 or 2: how many pixels of the file make one of the drawing, each way
     */
    public record Size(int widthPx, int heightPx, int scale) {
        /** Least width and height (px). */
        public static final int LEAST_PX = 200;
        /** Most width and height (px). */
        public static final int MOST_PX = 10_000;

        /** Checks the ranges. */
        public Size {
            if (Math.min(widthPx, heightPx) < LEAST_PX
                    || Math.max(widthPx, heightPx) > MOST_PX
                    || scale < 1
                    || scale > 2) {
                throw new IllegalArgumentException(widthPx + " x " + heightPx + " x " + scale);
            }
        }
    }
}
