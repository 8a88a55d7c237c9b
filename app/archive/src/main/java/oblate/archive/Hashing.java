/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of files and streams. */
final class Hashing {
    private static final int BUFFER_BYTES = 1 << 16;

    private Hashing() {}

    /**
     * What was hashed.
     *
     * @param sha256 lower-case hexadecimal
     * @param bytes how many
     */
    record Digest(String sha256, long bytes) {}

    static Digest of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return copy(in, OutputStream.nullOutputStream(), Long.MAX_VALUE);
        }
    }

    /**
     * Copies and hashes.
     *
     * @param mostBytes where to stop: one byte more is an error
     * @throws IOException also when there are more bytes
     */
    static Digest copy(InputStream in, OutputStream out, long mostBytes) throws IOException {
        MessageDigest digest = sha256();
        byte[] buffer = new byte[BUFFER_BYTES];
        long bytes = 0;
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            bytes += n;
            if (bytes > mostBytes) {
                throw new IOException("longer than stated");
            }
            digest.update(buffer, 0, n);
            out.write(buffer, 0, n);
        }
        return new Digest(HexFormat.of().formatHex(digest.digest()), bytes);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java has it
        }
    }
}
