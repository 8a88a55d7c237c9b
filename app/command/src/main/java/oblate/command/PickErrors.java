/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Properties;
import oblate.base.ProblemException;

/** Each measurer's own pick error (px), kept in the settings folder. */
final class PickErrors {
    private static final double USUAL_PX = 0.5;
    private final Path file;

    PickErrors(Path settingsFolder) {
        file = settingsFolder.resolve("pick-errors.properties");
    }

    /** What was said, else what was found by a blind repeat, else half a pixel. */
    double of(Double said, String measurer) {
        return said != null ? said : found(measurer).orElse(USUAL_PX);
    }

    /** The error found by a blind repeat. */
    OptionalDouble found(String measurer) {
        try {
            double value = Double.parseDouble(read().getProperty(measurer, ""));
            return value > 0 && value < 100 ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    /** Keeps one. */
    void keep(String measurer, double sigmaPx) {
        Properties all = read();
        all.setProperty(measurer, String.format(Locale.ROOT, "%.3f", sigmaPx));
        try {
            StringWriter text = new StringWriter();
            all.store(text, "pick errors in px, one standard error, by measurer; from blind repeats");
            Files.createDirectories(file.getParent());
            OutputOptions.writeText(text.toString(), file);
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, file, e.getMessage());
        }
    }

    private Properties read() {
        Properties all = new Properties();
        if (Files.isRegularFile(file)) {
            try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                all.load(text);
            } catch (IOException | IllegalArgumentException e) {
                throw new ProblemException(e, CommandProblem.CANNOT_READ, file, e.getMessage());
            }
        }
        return all;
    }
}
