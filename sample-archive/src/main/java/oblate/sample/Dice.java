package oblate.sample;

/**
 * Random numbers that are the same on every machine and in every Java: the SplitMix64 sequence (Steele, Lea &amp; Flood 2014). Not for several threads at once.
 */
final class Dice {
    private static final long STEP = 0x9E3779B97F4A7C15L;
    private long state;

    Dice(long seed) {
        state = mix(seed);
    }

    /** An independent sequence for one purpose. */
    Dice(long seed, long purpose) {
        this(seed ^ mix(purpose * STEP + 1));
    }

    /** Scatters the bits of a number. */
    static long mix(long z) {
        long x = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        x = (x ^ (x >>> 27)) * 0x94D049BB133111EBL;
        return x ^ (x >>> 31);
    }

    long nextLong() {
        state += STEP;
        return mix(state);
    }

    /** Even in 0…1. */
    double even() {
        return (nextLong() >>> 11) * 0x1.0p-53;
    }

    /** Even between two numbers. */
    double between(double low, double high) {
        return low + (high - low) * even();
    }

    /** Whole number, low…high inclusive. */
    int whole(int low, int high) {
        return low + (int) Long.remainderUnsigned(nextLong() >>> 1, high - low + 1L);
    }

    /** Bell-shaped, mean 0, standard deviation 1, by the sum of four 16-bit numbers: plain arithmetic only, never beyond ±3.47. */
    double bell() {
        long bits = nextLong();
        long sum = (bits & 0xffff) + (bits >>> 16 & 0xffff) + (bits >>> 32 & 0xffff) + (bits >>> 48);
        return (sum - 2 * 65535.0) / 65536.0 * Math.sqrt(3);
    }
}
