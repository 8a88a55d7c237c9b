package oblate.sample;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The clouds of the invented face, drawn once for a season: brightness in three colours over planetographic latitude and longitude. Each band's clouds turn at the
 * band's own rate, so a picture asks with one shift per band. Immutable after construction.
 */
final class CloudMap {
    static final int CHANNELS = 3;
    private static final int COLUMNS = 1440;
    private static final int ROWS = 720;
    private static final double BLEND_DEG = 0.9;
    private static final double EDGE_DEG = 0.55;
    private static final double FESTOON_NORTH_DEG = 7.4;

    private final List<CloudBand> bands;
    private final float[] cells = new float[ROWS * COLUMNS * CHANNELS];
    private final int[] band = new int[ROWS];
    private final int[] otherBand = new int[ROWS];
    private final float[] otherShare = new float[ROWS];
    private final double[][] festoons;
    /** Northern edge of each band at each column (deg). */
    private final double[][] edges;

    private final CloudNoise waves;
    private final CloudNoise clouds;
    private final CloudNoise rifts;

    CloudMap(List<CloudBand> bands, long seed) {
        this.bands = List.copyOf(bands);
        waves = new CloudNoise(Dice.mix(seed + 1));
        clouds = new CloudNoise(Dice.mix(seed + 2));
        rifts = new CloudNoise(Dice.mix(seed + 3));
        Dice dice = new Dice(seed, 4);
        festoons = new double[11][];
        for (int i = 0; i < festoons.length; i++) {
            // longitude at the belt's edge, slope, width, strength
            double lon = (i + dice.between(0.1, 0.9)) * 360 / festoons.length;
            festoons[i] = new double[] {lon, dice.between(1.5, 3.4), dice.between(0.7, 1.3), dice.between(0.10, 0.34)};
        }
        for (int row = 0; row < ROWS; row++) {
            assignBands(row);
        }
        edges = new double[bands.size()][COLUMNS];
        for (int i = 0; i < edges.length; i++) {
            CloudBand b = bands.get(i);
            for (int column = 0; column < COLUMNS; column++) {
                edges[i][column] = b.northDeg() + b.waveDeg() * waves.clouds(lonDeg(column), 1000 + 50.0 * i, 22, 30, 4, 0.62);
            }
        }
        IntStream.range(0, ROWS).parallel().forEach(this::drawRow);
    }

    /** How far each band's clouds are turned, to be handed to {@link #add}: longitude on the map at the central meridian (deg). */
    double[] shifts(GlobeView view, double day) {
        double[] shift = new double[bands.size()];
        for (int i = 0; i < shift.length; i++) {
            CloudBand b = bands.get(i);
            shift[i] = view.cmDeg().get(b.systemId() - 1) - b.rateDegPerDay() * day;
        }
        return shift;
    }

    /**
     * Adds the brightness of a place, times a weight, to three numbers.
     *
     * @param latDeg planetographic latitude (deg)
     * @param eastDeg angle east of the central meridian (deg)
     * @param shifts from {@link #shifts}
     */
    void add(double latDeg, double eastDeg, double[] shifts, float weight, float[] sum) {
        double row = (latDeg + 90) * ROWS / 180 - 0.5;
        int nearest = Math.max(0, Math.min(ROWS - 1, (int) Math.round(row)));
        float share = otherShare[nearest];
        if (share < 1) {
            addCell(row, shifts[band[nearest]] - eastDeg, weight * (1 - share), sum);
        }
        if (share > 0) {
            addCell(row, shifts[otherBand[nearest]] - eastDeg, weight * share, sum);
        }
    }

    private void addCell(double row, double lonDeg, float weight, float[] sum) {
        double turns = lonDeg / 360;
        double column = (turns - Math.floor(turns)) * COLUMNS;
        int c0 = (int) column;
        float fc = (float) (column - c0);
        c0 %= COLUMNS;
        int c1 = (c0 + 1) % COLUMNS;
        int r0 = Math.max(0, Math.min(ROWS - 2, (int) Math.floor(row)));
        float fr = (float) Math.max(0, Math.min(1, row - r0));
        int a = (r0 * COLUMNS + c0) * CHANNELS;
        int b = (r0 * COLUMNS + c1) * CHANNELS;
        int below = COLUMNS * CHANNELS;
        for (int i = 0; i < CHANNELS; i++) {
            float low = cells[a + i] + fc * (cells[b + i] - cells[a + i]);
            float high = cells[a + below + i] + fc * (cells[b + below + i] - cells[a + below + i]);
            sum[i] += weight * (low + fr * (high - low));
        }
    }

    private void assignBands(int row) {
        double lat = latDeg(row);
        int own = 0;
        while (own < bands.size() - 1 && lat > bands.get(own).northDeg()) {
            own++;
        }
        band[row] = own;
        otherBand[row] = own;
        CloudBand b = bands.get(own);
        double toNorth = b.northDeg() - lat;
        double toSouth = lat - b.southDeg();
        if (own < bands.size() - 1 && toNorth < BLEND_DEG && toNorth <= toSouth) {
            otherBand[row] = own + 1;
            otherShare[row] = (float) (0.5 * (1 - toNorth / BLEND_DEG));
        } else if (own > 0 && toSouth < BLEND_DEG) {
            otherBand[row] = own - 1;
            otherShare[row] = (float) (0.5 * (1 - toSouth / BLEND_DEG));
        }
    }

    private static double latDeg(int row) {
        return -90 + (row + 0.5) * 180 / ROWS;
    }

    private static double lonDeg(int column) {
        return (column + 0.5) * 360 / COLUMNS;
    }

    private void drawRow(int row) {
        double lat = latDeg(row);
        double[] tone = new double[CHANNELS + 1];
        for (int column = 0; column < COLUMNS; column++) {
            double lon = lonDeg(column);
            ground(column, lat, tone);
            texture(lon, lat, tone);
            festoon(lon, lat, tone);
            int at = (row * COLUMNS + column) * CHANNELS;
            for (int i = 0; i < CHANNELS; i++) {
                cells[at + i] = (float) Math.max(0.05, Math.min(1.08, tone[i]));
            }
        }
    }

    /** Colour of the bands with their wandering edges, and the contrast of the clouds there. */
    private void ground(int column, double lat, double[] tone) {
        double torn = 0.30 * waves.clouds(lonDeg(column), lat, 5, 2.2, 3, 0.7);
        set(tone, bands.get(0), 1);
        for (int i = 0; i + 1 < bands.size(); i++) {
            double t = (lat - edges[i][column] - torn) / (2 * EDGE_DEG) + 0.5;
            if (t <= 0) {
                return;
            }
            t = Math.min(1, t);
            set(tone, bands.get(i + 1), t * t * (3 - 2 * t));
        }
    }

    private static void set(double[] tone, CloudBand b, double share) {
        tone[0] += share * (b.red() - tone[0]);
        tone[1] += share * (b.green() - tone[1]);
        tone[2] += share * (b.blue() - tone[2]);
        tone[3] += share * (b.texture() - tone[3]);
    }

    private void texture(double lon, double lat, double[] tone) {
        double fold = 4.5 * clouds.clouds(lon, lat, 13, 4, 3, 0.6);
        double lift = 0.7 * clouds.clouds(lon + 90, lat, 9, 3, 2, 0.6);
        double streak = clouds.clouds(lon + fold, lat + lift, 17, 1.5, 5, 0.66);
        double amount = tone[3] * streak;
        tone[0] *= 1 + 0.75 * amount;
        tone[1] *= 1 + 1.0 * amount;
        tone[2] *= 1 + 1.2 * amount;
        if (tone[3] > 0.19) {
            double rift = rifts.clouds(lon + 1.5 * fold, lat + lift, 24, 2.2, 4, 0.6);
            double share = 0.62 * Math.max(0, Math.min(1, (rift - 0.34) * 2.2));
            tone[0] += share * (0.86 - tone[0]);
            tone[1] += share * (0.765 - tone[1]);
            tone[2] += share * (0.655 - tone[2]);
        }
    }

    /** Bluish streaks that leave the northern equatorial belt and trail into the equatorial zone. */
    private void festoon(double lon, double lat, double[] tone) {
        if (lat > FESTOON_NORTH_DEG || lat < 0.3) {
            return;
        }
        double depth = FESTOON_NORTH_DEG - lat;
        for (double[] f : festoons) {
            double away = lon - f[0] - f[1] * depth - 1.2 * waves.field(lon, lat, 9, 4);
            away -= 360 * Math.rint(away / 360);
            double width = f[2] * (1 + 0.22 * depth);
            double share = f[3] * Math.exp(-away * away / (2 * width * width)) * Math.min(1, (lat - 0.3) / 4);
            tone[0] += share * (0.40 - tone[0]);
            tone[1] += share * (0.44 - tone[1]);
            tone[2] += share * (0.50 - tone[2]);
        }
    }
}
