/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is refused before and around a format. */
class PictureReaderTest {
    @TempDir
    Path folder;

    /** A format of the test: claims files beginning with 'p', and does as it is told. */
    private record Told(Supplier<PictureHeader> header, Supplier<PixelGrid> pixels) implements ImageFormat {
        @Override
        public String id() {
            return "told";
        }

        @Override
        public String label() {
            return "Told";
        }

        @Override
        public boolean claims(byte[] firstBytes) {
            assertThat(firstBytes).hasSizeLessThanOrEqualTo(64);
            return firstBytes[0] == 'p';
        }

        @Override
        public PictureHeader readHeader(Path file) {
            return header.get();
        }

        @Override
        public PixelGrid readPixels(Path file, PictureHeader header) {
            return pixels.get();
        }
    }

    private static PictureHeader size(int width, int height) {
        return new PictureHeader("told", width, height, 1, 8, false, List.of());
    }

    private static PixelGrid grid(int width, int height) {
        return new PixelGrid(width, height, List.of(new float[width * height]), 0, 1);
    }

    private ProblemException refusal(Path file, ImageFormat... formats) {
        PictureReader reader = new PictureReader(List.of(formats), new PictureLimits(100, 5_000, 1_000));
        return catchThrowableOfType(ProblemException.class, () -> reader.decode(file));
    }

    private Path file(String content) throws IOException {
        return Files.writeString(folder.resolve("picture.xyz"), content);
    }

    @Test
    void missingEmptyFolderLongAndUnknown() throws IOException {
        Told format = new Told(() -> size(2, 2), () -> grid(2, 2));
        assertThat(refusal(folder.resolve("none.png"), format).kind()).isEqualTo(ImageProblem.MISSING);
        assertThat(refusal(folder, format).kind()).isEqualTo(ImageProblem.UNREADABLE);
        assertThat(refusal(file(""), format).kind()).isEqualTo(ImageProblem.EMPTY);
        assertThat(refusal(file("p".repeat(1_001)), format).kind()).isEqualTo(ImageProblem.FILE_TOO_LONG);
        ProblemException unknown = refusal(file("x"), format);
        assertThat(unknown.kind()).isEqualTo(ImageProblem.NO_FORMAT);
        assertThat(unknown).hasMessageContaining("Told").hasMessageContaining("picture.xyz");
    }

    @Test
    void allFormatsAskedAreNamedEvenIfThereAreNone() throws IOException {
        Told told = new Told(() -> size(2, 2), () -> grid(2, 2));
        assertThat(refusal(file("x"), told, told)).hasMessageContaining("asked: Told, Told");
        assertThat(refusal(file("x"))).hasMessageContaining("no format is installed");
    }

    /** Told to the reader as the system would: an account that may read everything, as on a build machine, never meets it. */
    @Test
    void aFileThatMayNotBeReadIsNamed() throws IOException {
        Path file = file("p");
        ProblemException refusal = PictureReader.unreadable(file, new AccessDeniedException(file.toString()));
        assertThat(refusal.kind()).isEqualTo(ImageProblem.UNREADABLE);
        assertThat(refusal)
                .hasMessageContaining("picture.xyz")
                .hasMessageContaining("access is denied")
                .hasMessageContaining("permissions");
        assertThat(PictureReader.unreadable(file, new IOException("no room")))
                .hasMessageContaining("IOException: no room");
    }

    @Test
    void sizesAreCheckedBeforePixelsAreAskedFor() throws IOException {
        Supplier<PixelGrid> never = () -> {
            throw new AssertionError("pixels were asked for");
        };
        assertThat(refusal(file("p"), new Told(() -> size(101, 1), never)).kind())
                .isEqualTo(ImageProblem.TOO_LARGE);
        assertThat(refusal(file("p"), new Told(() -> size(1, 101), never)).kind())
                .isEqualTo(ImageProblem.TOO_LARGE);
        assertThat(refusal(file("p"), new Told(() -> size(80, 80), never)).kind())
                .isEqualTo(ImageProblem.TOO_LARGE);
        assertThat(refusal(file("p"), new Told(() -> size(0, 5), never)).kind()).isEqualTo(ImageProblem.BROKEN);
    }

    @Test
    void whateverAFormatThrowsBecomesOneSentence() throws IOException {
        for (Throwable thrown : List.of(
                new IllegalStateException("several\nlines"),
                new NullPointerException(),
                new OutOfMemoryError("heap"),
                new StackOverflowError(),
                new NoClassDefFoundError("gone"))) {
            Told format = new Told(() -> size(2, 2), () -> {
                throw sneaky(thrown);
            });
            ProblemException refusal = refusal(file("p"), format);
            assertThat(refusal.kind()).as(thrown.toString()).isEqualTo(ImageProblem.BROKEN);
            assertThat(refusal.getMessage()).contains("picture.xyz").doesNotContain("\n");
        }
        assertThat(refusal(file("p"), new Told(() -> size(2, 2), () -> null)).kind())
                .isEqualTo(ImageProblem.BROKEN);
        assertThat(refusal(file("p"), new Told(() -> size(2, 2), () -> grid(3, 2)))
                        .kind())
                .isEqualTo(ImageProblem.BROKEN);
    }

    private static RuntimeException sneaky(Throwable thrown) {
        if (thrown instanceof Error error) {
            throw error;
        }
        return (RuntimeException) thrown;
    }

    @Test
    void aFormatThatFailsToLookDoesNotClaim() throws IOException {
        ImageFormat blind = new ImageFormat() {
            @Override
            public String id() {
                return "blind";
            }

            @Override
            public String label() {
                return "Blind";
            }

            @Override
            public boolean claims(byte[] firstBytes) {
                throw new IllegalStateException();
            }

            @Override
            public PictureHeader readHeader(Path file) {
                throw new IllegalStateException();
            }

            @Override
            public PixelGrid readPixels(Path file, PictureHeader header) {
                throw new IllegalStateException();
            }
        };
        PictureReader reader =
                new PictureReader(List.of(blind, new Told(() -> size(2, 2), () -> grid(2, 2))), PictureLimits.usual());
        assertThat(reader.decode(file("p")).header().formatId()).isEqualTo("told");
    }
}
