/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Logger;
import nom.tam.fits.Header;
import nom.tam.fits.HeaderCard;
import nom.tam.fits.TruncatedFileException;
import nom.tam.util.Cursor;
import nom.tam.util.FitsInputStream;
import oblate.image.HeaderFact;

/** One header: its cards by name. Immutable. */
final class FitsHeader {
    /** The library logs whole stack traces of what it also throws; held here so that the setting is not lost with the logger. */
    @SuppressWarnings("UnusedVariable") // kept for the reference alone
    private static final Logger LIBRARY_LOG = quietUnlessConfigured();

    private static final int MOST_FACTS = 2000;
    private static final int LONGEST_VALUE = 2000;

    private final Header header;

    FitsHeader(byte[] blocks) throws IOException {
        try {
            header = Header.readHeader(new FitsInputStream(new ByteArrayInputStream(blocks)));
        } catch (TruncatedFileException e) {
            throw new IOException("a header is incomplete", e);
        }
        if (header == null) {
            throw new IOException("a header cannot be understood");
        }
    }

    /**
     * Keeps the library's own logger from writing to the console through its parents. Only that one logger is touched, and not when somebody
     * has given it a level or a handler.
     */
    private static Logger quietUnlessConfigured() {
        Logger logger = Logger.getLogger("nom.tam");
        if (logger.getLevel() == null && logger.getHandlers().length == 0) {
            logger.setUseParentHandlers(false);
        }
        return logger;
    }

    Header library() {
        return header;
    }

    boolean has(String key) {
        return header.containsKey(key);
    }

    /** Text of a card; empty when it is absent or no text. */
    String text(String key) {
        String value = header.getStringValue(key);
        return value == null ? "" : value.strip();
    }

    long whole(String key, long otherwise) {
        return header.getLongValue(key, otherwise);
    }

    double real(String key, double otherwise) {
        return header.getDoubleValue(key, otherwise);
    }

    boolean flag(String key) {
        return header.getBooleanValue(key, false);
    }

    /**
     * Length of the data this header announces, without padding.
     *
     * @throws IOException when the claims are negative or beyond any file
     */
    long dataBytes() throws IOException {
        long axes = whole("NAXIS", 0);
        if (axes < 0 || axes > 999) {
            throw new IOException("NAXIS is " + axes);
        }
        if (axes == 0) {
            return 0;
        }
        try {
            long items = 1;
            boolean groups = flag("GROUPS") && whole("NAXIS1", -1) == 0;
            for (int axis = groups ? 2 : 1; axis <= axes; axis++) {
                long length = whole("NAXIS" + axis, -1);
                if (length < 0) {
                    throw new IOException("NAXIS" + axis + " is missing or negative");
                }
                items = Math.multiplyExact(items, length);
            }
            long groupCount = whole("GCOUNT", 1);
            long parameters = whole("PCOUNT", 0);
            long bits = Math.abs(whole("BITPIX", 8));
            if (groupCount < 0 || parameters < 0 || bits > 64) {
                throw new IOException("GCOUNT, PCOUNT or BITPIX make no sense");
            }
            return Math.multiplyExact(Math.multiplyExact(Math.addExact(items, parameters), groupCount), bits / 8);
        } catch (ArithmeticException e) {
            throw new IOException("its axes claim more than any file can hold", e);
        }
    }

    /** Cards as facts; comments of dates and lengths too, since they tell which moment a date means. */
    List<HeaderFact> facts() {
        List<HeaderFact> facts = new ArrayList<>();
        Cursor<String, HeaderCard> cards = header.iterator();
        while (cards.hasNext() && facts.size() < MOST_FACTS) {
            HeaderCard card = cards.next();
            String key = card.getKey();
            String value = card.isKeyValuePair() ? card.getValue() : card.getComment();
            if (key == null || key.isBlank() || value == null || value.isBlank() || key.equals("END")) {
                continue;
            }
            facts.add(fact("FITS", key, value));
            boolean timely = key.startsWith("DATE") || key.startsWith("MJD") || key.startsWith("EXP");
            if (timely
                    && card.isKeyValuePair()
                    && card.getComment() != null
                    && !card.getComment().isBlank()) {
                facts.add(fact("FITS comment", key, card.getComment()));
            }
        }
        return facts;
    }

    private static HeaderFact fact(String group, String key, String value) {
        String text = value.strip();
        return new HeaderFact(group, key, text.length() > LONGEST_VALUE ? text.substring(0, LONGEST_VALUE) : text);
    }
}
