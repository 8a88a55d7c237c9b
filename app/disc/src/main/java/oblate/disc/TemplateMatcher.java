/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.sky.ApparentDisc;
import org.hipparchus.transform.TransformType;

/**
 * Finds the known shape in a picture: normalised correlation with a drawn template over all places, with a ladder of radii. Pixels outside the
 * frame are unknown, not black, so a clipped disc is found too.
 */
final class TemplateMatcher {
    /** Longer side of the reduced picture (px) at a first and a second look; the transforms' sides are the next powers of two that hold it and a template. */
    private static final int FIRST = 36;

    private static final int SECOND = 72;
    private static final double STEP = 1.05;
    private static final double SMALLEST = 3;
    /** Largest reach of a template in the reduced picture, as a share of its longer side. */
    private static final double LARGEST_EXTENT = 0.76;
    /** A first look at a disc smaller than this (px) does not count. */
    private static final double CLEAR = 5;

    /** The second look is for radii within this factor of the first one's. */
    private static final double NEARBY = 1.13;

    /** The template reaches this far round the shape, so that its edge counts. */
    private static final double SURROUND = 1.3;

    private static final double LEAST_INSIDE = 0.33;

    /** Points per pixel and axis that a template's brightness is averaged over. */
    private static final int SUB = 2;

    private final GlobeView view;
    private final double ringInner;
    private final double ringOuter;

    /**
     * A find.
     *
     * @param place where
     * @param correlation normalised correlation, −1…1
     * @param explained share of the picture's variance the template explains, 0…1
     */
    record Match(Placement place, double correlation, double explained) {
        /** The same in a picture whose corner lies elsewhere. */
        Match moved(int rightPx, int downPx) {
            return new Match(
                    new Placement(
                            place.centreXPx() + rightPx,
                            place.centreYPx() + downPx,
                            place.equatorialRadiusPx(),
                            place.poleAngleDeg(),
                            place.mirrored()),
                    correlation,
                    explained);
        }

        /** What is maximised: a good likeness of a large part of the picture. */
        double score() {
            return correlation * Math.pow(explained, 0.25);
        }
    }

    TemplateMatcher(ApparentDisc disc) {
        view = new GlobeView(disc);
        ringInner = view.ringInner;
        ringOuter = view.ringOuter;
    }

    /** The best place for one pole angle, over radii within a factor of each other (px of the picture); null when nothing is alike. */
    Match find(Plane picture, double angleDeg, boolean mirrored, double fromRadiusPx, double toRadiusPx) {
        return find(picture, angleDeg, mirrored, fromRadiusPx, toRadiusPx, 2);
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // the public one and how often a small disc may still be enlarged
    private Match find(
            Plane picture, double angleDeg, boolean mirrored, double fromRadiusPx, double toRadiusPx, int deeper) {
        double from = fromRadiusPx;
        double to = toRadiusPx;
        if (to > 2 * from) {
            int coarse = binning(picture, FIRST);
            Match first = search(picture.binned(coarse), FIRST, angleDeg, mirrored, from / coarse, to / coarse);
            if (first != null && first.place().equatorialRadiusPx() > CLEAR) {
                double r = first.place().equatorialRadiusPx() * coarse;
                from = Math.max(from, r / NEARBY);
                to = Math.min(to, r * NEARBY);
            }
        }
        int bin = binning(picture, SECOND);
        Match best = search(picture.binned(bin), SECOND, angleDeg, mirrored, from / bin, to / bin);
        if (best == null) {
            return null;
        }
        Match scaled = scaled(best, bin, 0, 0);
        double r = scaled.place().equatorialRadiusPx();
        double extent = Math.max(1, ringOuter);
        if (bin > 1 && deeper > 0 && best.place().equatorialRadiusPx() * extent < SECOND / 6.0) {
            int half = (int) Math.ceil(2.2 * r * extent);
            int x0 = (int) scaled.place().centreXPx() - half;
            int y0 = (int) scaled.place().centreYPx() - half;
            Match again =
                    find(picture.cut(x0, y0, 2 * half, 2 * half), angleDeg, mirrored, r * 0.7, r * 1.4, deeper - 1);
            if (again != null) {
                return new Match(scaled(again, 1, x0, y0).place(), again.correlation(), best.explained());
            }
        }
        return scaled;
    }

    private static int binning(Plane picture, int reduced) {
        return Math.max(1, (Math.max(picture.width(), picture.height()) + reduced - 1) / reduced);
    }

    private static Match scaled(Match m, int bin, int x0, int y0) {
        Placement p = m.place();
        return new Match(
                new Placement(
                        p.centreXPx() * bin + (bin - 1) / 2.0 + x0,
                        p.centreYPx() * bin + (bin - 1) / 2.0 + y0,
                        p.equatorialRadiusPx() * bin,
                        p.poleAngleDeg(),
                        p.mirrored()),
                m.correlation(),
                m.explained());
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // how far the picture is reduced, and the search
    private Match search(Plane small, int reduced, double angleDeg, boolean mirrored, double from, double to) {
        int side = Integer.highestOneBit(reduced) * 2;
        Spectrum image = new Spectrum(side);
        Spectrum known = new Spectrum(side);
        Spectrum square = new Spectrum(side);
        double sum = 0;
        double sumSquare = 0;
        int n = 0;
        for (int y = 0; y < small.height(); y++) {
            for (int x = 0; x < small.width(); x++) {
                float v = small.at(x, y);
                if (!Float.isNaN(v)) {
                    image.re[y * side + x] = v;
                    known.re[y * side + x] = 1;
                    square.re[y * side + x] = (double) v * v;
                    sum += v;
                    sumSquare += (double) v * v;
                    n++;
                }
            }
        }
        double variance = sumSquare - sum * sum / Math.max(1, n);
        if (!(variance > 1e-9)) {
            return null;
        }
        image.transform(TransformType.FORWARD);
        known.transform(TransformType.FORWARD);
        square.transform(TransformType.FORWARD);
        Match best = null;
        double largest = Math.min(to, LARGEST_EXTENT * reduced / SURROUND / Math.max(1, ringOuter));
        for (double r = Math.max(SMALLEST, from); r <= largest * 1.001; r *= STEP) {
            Template template = new Template(side, r, angleDeg, mirrored);
            Match match = best(template, image, known, square, small, variance);
            if (match != null && (best == null || match.score() > best.score())) {
                best = match;
            }
        }
        return best;
    }

    private static Match best(
            Template t, Spectrum image, Spectrum known, Spectrum square, Plane small, double variance) {
        Spectrum a = Spectrum.correlations(image, t.shape, known, t.mask);
        Spectrum b = Spectrum.correlations(image, t.mask, square, t.mask);
        Spectrum c = Spectrum.correlations(known, t.shape, known, t.squared);
        int margin = (int) Math.ceil(t.radius / 2);
        double bestScore = 0;
        Match best = null;
        for (int y = -margin; y < small.height() + margin; y++) {
            for (int x = -margin; x < small.width() + margin; x++) {
                int i = Math.floorMod(y, image.side) * image.side + Math.floorMod(x, image.side);
                double n = a.im[i];
                if (n < LEAST_INSIDE * t.area) {
                    continue;
                }
                double varianceImage = b.im[i] - b.re[i] * b.re[i] / n;
                double varianceShape = c.im[i] - c.re[i] * c.re[i] / n;
                double covariance = a.re[i] - b.re[i] * c.re[i] / n;
                if (covariance <= 0 || varianceImage < 1e-9 || varianceShape < 1e-9) {
                    continue;
                }
                double correlation = covariance / Math.sqrt(varianceImage * varianceShape);
                double explained = Math.min(1, covariance * covariance / varianceShape / variance);
                double score = correlation * Math.pow(explained, 0.25);
                if (score > bestScore) {
                    bestScore = score;
                    best = new Match(new Placement(x, y, t.radius, t.angleDeg, t.mirrored), correlation, explained);
                }
            }
        }
        return best;
    }

    /** The drawn shape round pixel (0, 0), wrapped, and its transforms. */
    private final class Template {
        final double radius;
        final double angleDeg;
        final boolean mirrored;
        final Spectrum shape;
        final Spectrum mask;
        final Spectrum squared;
        double area;

        Template(int side, double radius, double angleDeg, boolean mirrored) {
            shape = new Spectrum(side);
            mask = new Spectrum(side);
            squared = new Spectrum(side);
            this.radius = radius;
            this.angleDeg = angleDeg;
            this.mirrored = mirrored;
            double a = Math.toRadians(angleDeg);
            int hand = mirrored ? -1 : 1;
            int reach = (int) Math.ceil(radius * Math.max(1, ringOuter) * SURROUND) + 1;
            for (int dy = -reach; dy <= reach; dy++) {
                for (int dx = -reach; dx <= reach; dx++) {
                    double x = hand * (dx * Math.cos(a) - dy * Math.sin(a)) / radius;
                    double y = -(dx * Math.sin(a) + dy * Math.cos(a)) / radius;
                    double high = y / view.axisRatio;
                    boolean near =
                            x * x + high * high < SURROUND * SURROUND || brightness(x / SURROUND, y / SURROUND) > 0;
                    if (near) {
                        int i = Math.floorMod(dy, side) * side + Math.floorMod(dx, side);
                        double value = average(x, y, Math.cos(a) / radius, Math.sin(a) / radius, hand);
                        shape.re[i] = value;
                        mask.re[i] = 1;
                        squared.re[i] = value * value;
                        area++;
                    }
                }
            }
            shape.transform(TransformType.FORWARD);
            mask.transform(TransformType.FORWARD);
            squared.transform(TransformType.FORWARD);
        }
    }

    /** Brightness over a pixel; cosine and sine are those of the pole angle, over the radius. */
    private double average(double x, double y, double cos, double sin, int hand) {
        double sum = 0;
        for (int s = 0; s < SUB * SUB; s++) {
            double ox = (s % SUB + 0.5) / SUB - 0.5;
            double oy = (s / SUB + 0.5) / SUB - 0.5;
            sum += brightness(x + hand * (ox * cos - oy * sin), y - ox * sin - oy * cos);
        }
        return sum / (SUB * SUB);
    }

    private double brightness(double x, double y) {
        double z = view.depth(x, y);
        double ring = 0;
        if (ringOuter > 0 && Math.abs(view.sinB) > 1e-3) {
            double bodyX = -y / view.sinB;
            double distance = Math.sqrt(x * x + bodyX * bodyX);
            if (distance > ringInner && distance < ringOuter && (Double.isNaN(z) || view.sightZ(bodyX, 0) > z)) {
                ring = 0.8;
            }
        }
        if (ring > 0 || Double.isNaN(z)) {
            return ring;
        }
        double bx = view.bodyX(y, z);
        double nz = view.k * view.bodyZ(y, z);
        double sun = (bx * view.sunX + x * view.sunY + nz * view.sunZ) / Math.sqrt(bx * bx + x * x + nz * nz);
        return sun <= 0 ? 0 : Math.sqrt(sun);
    }
}
