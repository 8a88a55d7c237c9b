/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import oblate.base.ProblemException;

/**
 * The border round decoding libraries: whatever they throw on a hostile file comes out as one sentence, {@link ImageProblem#BROKEN}.
 *
 * <p>Formats put it round each library call; {@link PictureReader} puts it once more round the format, which may be a stranger's.
 */
public final class DecodeGuard {
    private static final int LONGEST_REASON = 160;

    private DecodeGuard() {}

    /**
     * One step of decoding.
     *
     * @param <T> what it gives
     */
    @FunctionalInterface
    public interface Step<T> {

        /** Does the step. */
        T run() throws IOException;
    }

    /**
     * Runs a step; problems already told pass through.
     *
     * @param file file named in the sentence
     * @param place part of the file being read, e.g. "its pixels"
     * @param step what to do
     * @param <T> what it gives
     * @return what the step gave, never null
     * @throws ProblemException {@link ImageProblem#BROKEN} for anything a library throws
     */
    @SuppressWarnings(
            "checkstyle:IllegalCatch") // border to decoding libraries, which throw anything at all on broken files
    public static <T> T run(Path file, String place, Step<T> step) {
        try {
            T result = step.run();
            if (result == null) {
                throw broken(file, place, "nothing was decoded", null);
            }
            return result;
        } catch (ProblemException e) {
            throw e;
        } catch (OutOfMemoryError e) {
            throw broken(file, place, "it does not fit into memory", e);
        } catch (StackOverflowError e) {
            throw broken(file, place, "its parts are nested without end", e);
        } catch (IOException | RuntimeException | LinkageError e) {
            throw broken(file, place, reason(e), e);
        }
    }

    private static ProblemException broken(Path file, String place, String reason, Throwable cause) {
        return new ProblemException(cause, ImageProblem.BROKEN, file, place, reason);
    }

    /** A library's message as part of a sentence: one line, not long, no class names where there are words. */
    private static String reason(Throwable e) {
        String message = e.getMessage();
        if (message == null || message.isBlank()) {
            return words(e.getClass().getSimpleName());
        }
        String line = message.strip().lines().findFirst().orElse("").replaceAll("\\p{Cntrl}", " ");
        return line.length() > LONGEST_REASON ? line.substring(0, LONGEST_REASON) + "…" : line;
    }

    private static String words(String className) {
        return className
                .replaceAll("(Exception|Error)$", "")
                .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                .toLowerCase(Locale.ROOT);
    }
}
