/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The ready-made night of the sample archive: eight invented pictures of one evening, with their truth. */
final class Night {
    /** Its folder of pictures. */
    static final Path PICTURES = Path.of("../../sample-archive/night/pictures");

    private static final Path TRUTH = Path.of("../../sample-archive/night/truth");

    private Night() {}

    /** Its files, side notes too. */
    static List<Path> pictures() throws IOException {
        try (Stream<Path> files = Files.walk(PICTURES)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    /** A table of the truth. */
    static List<CSVRecord> truth(String table) throws IOException {
        try (Reader text = Files.newBufferedReader(TRUTH.resolve(table + ".csv"));
                CSVParser parser = CSVParser.parse(
                        text,
                        CSVFormat.RFC4180
                                .builder()
                                .setHeader()
                                .setSkipHeaderRecord(true)
                                .setCommentMarker('#')
                                .get())) {
            return parser.getRecords();
        }
    }
}
