package oblate.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicLong;
import oblate.base.ProblemException;
import oblate.base.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeasonRefusalsTest {
    @TempDir
    Path temp;

    @Test
    void aFolderWithSomethingInItIsLeftAlone() throws IOException {
        Path mine = Files.writeString(temp.resolve("mine.txt"), "mine");
        ProblemException e = catchThrowableOfType(
                ProblemException.class, () -> SampleSeason.night().writeTo(temp, Progress.SILENT));
        assertThat(e.kind()).isEqualTo(SampleProblem.FOLDER_NOT_EMPTY);
        assertThat(mine).hasContent("mine");
    }

    @Test
    void cancellingLeavesNothing() throws IOException {
        AtomicLong steps = new AtomicLong();
        Progress stopAfterTwo = new Progress() {
            @Override
            public void report(long done, long total, String message) {
                assertThat(total).isEqualTo(8);
                steps.set(Math.max(steps.get(), done));
            }

            @Override
            public boolean isCancelled() {
                return steps.get() >= 2;
            }
        };
        Path folder = temp.resolve("season");
        ProblemException e = catchThrowableOfType(
                ProblemException.class, () -> SampleSeason.night().writeTo(folder, stopAfterTwo));
        assertThat(e.kind()).isEqualTo(SampleProblem.CANCELLED);
        try (var left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void aFolderThatCannotBeMadeIsNamed() throws IOException {
        Path file = Files.writeString(temp.resolve("file"), "");
        ProblemException e = catchThrowableOfType(
                ProblemException.class, () -> SampleSeason.night().writeTo(file.resolve("below"), Progress.SILENT));
        assertThat(e.kind()).isEqualTo(SampleProblem.CANNOT_WRITE);
        assertThat(e).hasMessageContaining("below");
    }

    @Test
    void aBrokenTableIsNamed() throws IOException {
        ProblemException none = catchThrowableOfType(ProblemException.class, () -> SampleTruth.readFrom(temp));
        assertThat(none.kind()).isEqualTo(SampleProblem.CANNOT_READ);
        Files.createDirectories(temp.resolve("truth"));
        Files.writeString(temp.resolve("truth/features.csv"), "feature,epoch_utc\r\nx,2023-11-03T00:00:00Z\r\n");
        Files.writeString(temp.resolve("truth/pictures.csv"), "file,planet\r\nx,jupiter\r\n");
        Files.writeString(temp.resolve("truth/marks.csv"), "picture\r\n");
        ProblemException broken = catchThrowableOfType(ProblemException.class, () -> SampleTruth.readFrom(temp));
        assertThat(broken.kind()).isEqualTo(SampleProblem.CANNOT_READ);
        assertThat(broken).hasMessageContaining("pictures.csv");
    }
}
