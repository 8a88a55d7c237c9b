/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;

/**
 * The numbered steps that make a catalog, as this program knows them.
 *
 * @param steps in order
 */
record Migrations(List<Step> steps) {
    private static final String LIST = "oblate/catalog/migrations.txt";

    /**
     * One step.
     *
     * @param version its number, from 1
     * @param file its file name
     * @param checksum of its lines, as the migration engine computes it
     */
    record Step(int version, String file, int checksum) {}

    static Migrations of(Dialect dialect) {
        List<Step> steps = new ArrayList<>();
        for (String file : lines(LIST)) {
            int version = Integer.parseInt(file.substring(1, file.indexOf("__")));
            steps.add(new Step(version, file, checksum(lines(dialect.migrations() + "/" + file))));
        }
        return new Migrations(List.copyOf(steps));
    }

    /** The newest version. */
    int newest() {
        return steps.get(steps.size() - 1).version();
    }

    /** Checksum of a version, or 0 when there is none such. */
    int checksumOf(int version) {
        return steps.stream()
                .filter(s -> s.version() == version)
                .mapToInt(Step::checksum)
                .findFirst()
                .orElse(0);
    }

    private static int checksum(List<String> lines) {
        CRC32 crc = new CRC32();
        lines.forEach(line -> crc.update(line.getBytes(StandardCharsets.UTF_8)));
        return (int) crc.getValue();
    }

    private static List<String> lines(String resource) {
        try (InputStream in = Migrations.class.getClassLoader().getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("not on the class path: " + resource);
            }
            return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
