/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import com.drew.lang.ByteArrayReader;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Walks the marker segments of a JPEG file: size, channels, colour coding and facts, without decoding. For one thread and one file. */
final class JpegMarkers {
    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] XMP = "http://ns.adobe.com/xap/1.0/\0".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] ADOBE = "Adobe".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] JFIF = "JFIF\0".getBytes(StandardCharsets.US_ASCII);
    private static final int MOST_SCANS = 200;

    private final FactList facts = new FactList();
    private int widthPx;
    private int heightPx;
    private int bits;
    private byte[] componentIds = {};
    private int adobeTransform = -1;
    private boolean jfif;
    private int frameMarker;
    private int scans;
    private Orientation orientation = Orientation.AS_STORED;

    private JpegMarkers() {}

    static boolean begins(byte[] firstBytes) {
        return firstBytes.length >= 3
                && firstBytes[0] == (byte) 0xff
                && firstBytes[1] == (byte) 0xd8
                && firstBytes[2] == (byte) 0xff;
    }

    /**
     * Reads the segments.
     *
     * @param in the file from its first byte
     * @param toTheEnd whether to walk through the scans to the closing marker, which reads the whole file
     * @throws IOException with one plain sentence part when the file is no good JPEG
     */
    static JpegMarkers read(InputStream in, boolean toTheEnd) throws IOException {
        DataInputStream data = new DataInputStream(in);
        JpegMarkers markers = new JpegMarkers();
        try {
            if (data.readUnsignedShort() != 0xffd8) {
                throw new IOException("it lacks the JPEG start marker");
            }
            int marker = markers.nextMarker(data);
            while (marker != 0xd9) {
                if (marker == 0xda) {
                    if (markers.componentIds.length == 0) {
                        throw new IOException("its pixels come before its size");
                    }
                    markers.countScan();
                    if (!toTheEnd) {
                        return markers;
                    }
                }
                if (marker != 0x01 && (marker < 0xd0 || marker > 0xd8)) {
                    markers.segment(data, marker);
                }
                marker = markers.nextMarker(data);
            }
        } catch (EOFException e) {
            throw new IOException("it is cut short: the closing marker is missing", e);
        }
        if (markers.componentIds.length == 0 || markers.scans == 0) {
            throw new IOException("it has no pixels");
        }
        return markers;
    }

    private void countScan() throws IOException {
        scans++;
        if (scans > MOST_SCANS) {
            throw new IOException("it has more than " + MOST_SCANS + " scans");
        }
    }

    /** The next marker; whatever stands before it (pixels of a scan, padding) is passed over. */
    private int nextMarker(DataInputStream data) throws IOException {
        while (true) {
            int value = data.readUnsignedByte();
            while (value == 0xff) {
                value = data.readUnsignedByte();
                if (value != 0xff && value != 0) {
                    return value;
                }
            }
        }
    }

    private void segment(DataInputStream data, int marker) throws IOException {
        int length = data.readUnsignedShort() - 2;
        if (length < 0) {
            throw new IOException("a marker segment has no length");
        }
        byte[] body = new byte[length];
        data.readFully(body);
        boolean frame = marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
        if (frame) {
            frame(marker, body);
        } else if (marker == 0xe0 && startsWith(body, JFIF)) {
            jfif = true;
        } else if (marker == 0xee && startsWith(body, ADOBE) && body.length >= 12) {
            adobeTransform = body[11] & 0xff;
        } else if (marker == 0xe1 && startsWith(body, EXIF) && !facts.has("Exif", "DateTimeOriginal")) {
            Orientation stated = ExifFacts.add(new ByteArrayReader(body, EXIF.length), facts);
            orientation = orientation.code() == 1 ? stated : orientation;
        } else if (marker == 0xe1 && startsWith(body, XMP)) {
            XmpFacts.add(Arrays.copyOfRange(body, XMP.length, body.length), facts);
        } else if (marker == 0xfe) {
            facts.add("JPEG", "Comment", new String(body, StandardCharsets.UTF_8));
        }
    }

    private void frame(int marker, byte[] body) throws IOException {
        if (componentIds.length > 0) {
            throw new IOException("it states its size twice");
        }
        if (body.length < 6 || body.length < 6 + 3 * (body[5] & 0xff)) {
            throw new IOException("its frame segment is malformed");
        }
        frameMarker = marker;
        bits = body[0] & 0xff;
        heightPx = ((body[1] & 0xff) << 8) | (body[2] & 0xff);
        widthPx = ((body[3] & 0xff) << 8) | (body[4] & 0xff);
        int components = body[5] & 0xff;
        if (heightPx == 0 || widthPx == 0 || components == 0) {
            throw new IOException("it claims " + widthPx + " × " + heightPx + " pixels of " + components + " channels");
        }
        componentIds = new byte[components];
        for (int i = 0; i < components; i++) {
            componentIds[i] = body[6 + 3 * i];
        }
    }

    private static boolean startsWith(byte[] body, byte[] start) {
        return body.length >= start.length && Arrays.equals(body, 0, start.length, start, 0, start.length);
    }

    int widthPx() {
        return widthPx;
    }

    int heightPx() {
        return heightPx;
    }

    int bits() {
        return bits;
    }

    int components() {
        return componentIds.length;
    }

    boolean arithmetic() {
        return frameMarker >= 0xc9;
    }

    boolean lossless() {
        return frameMarker == 0xc3 || frameMarker == 0xc7;
    }

    /**
     * How three or four stored channels make colours: the Adobe segment says it, else a JFIF segment means YCbCr, else channels named R, G, B
     * are that, else YCbCr (ITU-T T.871 and T.872; for files without any of these the usual reading).
     *
     * @return whether the first three channels are luminance and two colour differences
     */
    boolean lumaChroma() {
        if (componentIds.length == 4) {
            return adobeTransform == 2;
        }
        if (componentIds.length != 3) {
            return false;
        }
        if (adobeTransform >= 0) {
            return adobeTransform != 0;
        }
        return jfif || !Arrays.equals(componentIds, new byte[] {'R', 'G', 'B'});
    }

    boolean adobe() {
        return adobeTransform >= 0;
    }

    Orientation orientation() {
        return orientation;
    }

    FactList facts() {
        return facts;
    }
}
