/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import oblate.base.ProblemException;

/**
 * Reads one file in the JPL binary layout, in one pass and holding no more of it than is used.
 *
 * <p>Records have equal length; the first is the {@link EphemerisHead}, the second holds the values of the constants, the others begin and end in Julian dates
 * (TDB) and hold coefficients (km), x then y then z per sub-interval. Kept are the records from the last weeks of 1959 on, where UTC begins, as many as
 * go into 64 MB, and in them the Sun, the Moon and the planets only: a file over thousands of years costs no more memory than one over
 * centuries.
 */
final class EphemerisFile {
    /** 1959-12-01, days of JD. */
    private static final double FIRST_NEEDED_JD = 2436903.5;

    private static final int MAX_WORDS = 8 << 20;
    private static final long MAX_BYTES = 4L << 30;
    /** More than any record is long; the head of newer files needs some of it. */
    private static final int HEAD_BYTES = 16_384;

    private final String fileName;
    private final BufferedInputStream in;
    private final EphemerisHead head;
    private final int fileWords;

    private EphemerisFile(BufferedInputStream in, String fileName) throws IOException {
        this.in = in;
        this.fileName = fileName;
        in.mark(HEAD_BYTES + 1);
        byte[] start = in.readNBytes(HEAD_BYTES);
        if (start.length < 3 * EphemerisHead.BYTES) {
            throw bad("it has only " + start.length + " bytes");
        }
        in.reset();
        head = new EphemerisHead(fileName, ByteBuffer.wrap(start));
        fileWords = recordWords();
    }

    /** Reads and checks a file, gzipped when its name says so. */
    static Ephemeris read(Path file) {
        String name = file.getFileName().toString();
        try (InputStream in = Files.newInputStream(file)) {
            Ephemeris read = read(in, name, name);
            EphemerisCheck.of(read, name);
            return read;
        } catch (IOException e) {
            throw EphemerisHead.bad(name, "it cannot be read (" + e.getMessage() + ")");
        }
    }

    /** The number of the ephemeris in a file, from its head alone. */
    static int number(Path file) {
        String name = file.getFileName().toString();
        try (InputStream in = Files.newInputStream(file);
                BufferedInputStream plain = unpacked(in, name)) {
            return new EphemerisFile(plain, name).head.number();
        } catch (EOFException e) {
            throw EphemerisHead.bad(name, "it is cut short");
        } catch (IOException e) {
            throw EphemerisHead.bad(name, "it cannot be read (" + e.getMessage() + ")");
        }
    }

    private static BufferedInputStream unpacked(InputStream in, String fileName) throws IOException {
        boolean packed = fileName.toLowerCase(Locale.ROOT).endsWith(".gz");
        return new BufferedInputStream(packed ? new GZIPInputStream(in, 1 << 16) : in, 1 << 16);
    }

    /** Reads a stream; what the coefficients say is not looked at, but for their being numbers. */
    static Ephemeris read(InputStream in, String fileName, String origin) throws IOException {
        try (BufferedInputStream plain = unpacked(in, fileName)) {
            return new EphemerisFile(plain, fileName).ephemeris(origin);
        } catch (EOFException e) {
            throw EphemerisHead.bad(fileName, "it is cut short");
        } catch (ZipException e) {
            throw EphemerisHead.bad(fileName, "it is not gzip, as its name says, or broken (" + e.getMessage() + ")");
        }
    }

    /** The length at which the third record begins where the head says the first span begins. */
    private int recordWords() throws IOException {
        int longest = 0;
        for (int words : head.possibleRecordWords()) {
            longest = Math.max(longest, words);
        }
        if (longest * 8L < EphemerisHead.BYTES) {
            throw bad("its records are shorter than its head");
        }
        in.mark(longest * 24 + 1);
        ByteBuffer start = ByteBuffer.wrap(in.readNBytes(longest * 24)).order(head.order());
        in.reset();
        for (int words : head.possibleRecordWords()) {
            boolean here = words * 8 >= EphemerisHead.BYTES && start.capacity() >= words * 16 + 16;
            if (here
                    && start.getDouble(words * 16) == head.firstJd()
                    && start.getDouble(words * 16 + 8) == head.firstJd() + head.daysPerRecord()) {
                return words;
            }
        }
        throw start.capacity() < longest * 24
                ? bad("it is cut short")
                : bad("its first record does not begin where its head says");
    }

    private Ephemeris ephemeris(String origin) throws IOException {
        long skipped = Math.max(0, (long) Math.floor((FIRST_NEEDED_JD - head.firstJd()) / head.daysPerRecord()));
        if (skipped >= head.records()) {
            throw bad("it ends before 1960, where UTC begins");
        }
        EphemerisLayout one = layout(0, 0);
        long kept = Math.min(head.records() - skipped, MAX_WORDS / one.wordsPerRecord());
        if ((skipped + kept + 2) * fileWords * 8 > MAX_BYTES) {
            throw bad("what is needed of it lies beyond the first 4 GB");
        }
        in.skipNBytes((2 + skipped) * fileWords * 8);
        EphemerisLayout layout = layout(head.firstJd() + skipped * head.daysPerRecord(), (int) kept);
        return new Ephemeris(origin, layout, words(layout, skipped));
    }

    /** How the coefficients will stand in memory: one body after the other, gaps closed. */
    private EphemerisLayout layout(double firstJd, int records) {
        int[] firstWord = new int[EphemerisLayout.BODIES + 1];
        int[] coefficients = new int[EphemerisLayout.BODIES + 1];
        int[] subIntervals = new int[EphemerisLayout.BODIES + 1];
        int next = 0;
        for (int body = 1; body <= EphemerisLayout.BODIES; body++) {
            firstWord[body] = next;
            coefficients[body] = Math.max(0, head.coefficients(body));
            subIntervals[body] = Math.max(0, head.subIntervals(body));
            next += 3 * coefficients[body] * subIntervals[body];
        }
        return new EphemerisLayout(
                head.name(),
                firstJd,
                head.daysPerRecord(),
                records,
                next,
                head.earthMoonRatio(),
                firstWord,
                coefficients,
                subIntervals);
    }

    private double[] words(EphemerisLayout layout, long skipped) throws IOException {
        double[] words = new double[layout.records() * layout.wordsPerRecord()];
        byte[] bytes = new byte[fileWords * 8];
        ByteBuffer record = ByteBuffer.wrap(bytes).order(head.order());
        for (int i = 0; i < layout.records(); i++) {
            if (in.readNBytes(bytes, 0, bytes.length) < bytes.length) {
                throw bad("it should have " + (head.records() + 2) * fileWords * 8 + " bytes and ends after record "
                        + (skipped + i + 2));
            }
            double start = layout.firstJd() + i * layout.daysPerRecord();
            if (record.getDouble(0) != start || record.getDouble(8) != start + layout.daysPerRecord()) {
                throw bad("its record " + (skipped + i + 3) + " does not begin where the one before ends");
            }
            for (int body = 1; body <= EphemerisLayout.BODIES; body++) {
                int count = 3 * layout.coefficients()[body] * layout.subIntervals()[body];
                int to = i * layout.wordsPerRecord() + layout.firstWord()[body];
                if (head.firstWord(body) + count > fileWords) {
                    throw bad("its table of coefficients is broken at body " + body);
                }
                for (int k = 0; k < count; k++) {
                    words[to + k] = finite(record.getDouble(8 * (head.firstWord(body) + k)), skipped + i + 3);
                }
            }
        }
        return words;
    }

    private double finite(double value, long record) {
        if (!(Math.abs(value) < 1e11)) {
            throw bad("its record " + record + " holds a coefficient of " + value + " km");
        }
        return value;
    }

    private ProblemException bad(String why) {
        return EphemerisHead.bad(fileName, why);
    }
}
