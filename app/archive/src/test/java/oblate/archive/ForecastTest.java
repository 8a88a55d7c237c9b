/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.Progress;
import oblate.image.TimeWish;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What filing says beforehand is what it does then. */
class ForecastTest {
    @TempDir
    Path work;

    private Path in;
    private Archive archive;

    @BeforeEach
    void fill() throws IOException {
        in = work.resolve("in");
        archive = Archive.create(work.resolve("archive"), Desk.PLANETS, Desk.CLOCK);
        Desk.picture(in, "jupiter-20310324T210530Z.png", 1);
        Desk.picture(in, "nowhen.png", 2);
        Desk.picture(in, "20310324T213000Z.png", 3);
        Desk.picture(in, "jupiter-17000324T213000Z.png", 4);
        Desk.picture(in, "jupiter 20310324T214000.png", 5);
        Files.writeString(in.resolve("junk.png"), "no picture");
        Files.write(in.resolve("empty.fits"), new byte[0]);
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private static FilingFacts facts(Optional<String> planet, Optional<ZoneId> zone) {
        return new FilingFacts(
                planet,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(Optional.empty(), zone, Optional.empty(), OptionalDouble.empty(), Optional.empty()),
                false);
    }

    private FilingForecast of(List<FilingForecast> all, String name) {
        return all.stream().filter(f -> f.file().endsWith(name)).findFirst().orElseThrow();
    }

    @Test
    void itSaysPerFileWhatIsUnderstoodAndWhatIsNot() {
        List<FilingForecast> all =
                Desk.filing(archive).foresee(List.of(in), facts(Optional.empty(), Optional.empty()), Progress.SILENT);
        FilingForecast good = of(all, "jupiter-20310324T210530Z.png");
        assertThat(good.refusal()).isEmpty();
        assertThat(good.planetId()).contains("jupiter");
        assertThat(good.time().orElseThrow().midUtc()).isEqualTo(Instant.parse("2031-03-24T21:05:30Z"));
        assertThat(of(all, "nowhen.png").time()).isEmpty();
        assertThat(of(all, "nowhen.png").whyNoTime().orElseThrow()).contains("not known");
        assertThat(of(all, "20310324T213000Z.png").planetId()).isEmpty();
        assertThat(of(all, "junk.png").refusal()).isPresent();
        assertThat(of(all, "empty.fits").refusal().orElseThrow()).contains("empty");
        assertThat(of(all, "jupiter-17000324T213000Z.png").refusal().orElseThrow())
                .contains("planet positions");
        assertThat(of(all, "jupiter 20310324T214000.png").time()).isEmpty();
        assertThat(archive.pictures(PictureSearch.all())).isEmpty();
    }

    @Test
    void whatIsSaidOnceHoldsForAll() {
        List<FilingForecast> all = Desk.filing(archive)
                .foresee(List.of(in), facts(Optional.of("saturn"), Optional.of(ZoneId.of("UTC"))), Progress.SILENT);
        assertThat(of(all, "20310324T213000Z.png").planetId()).contains("saturn");
        assertThat(of(all, "jupiter 20310324T214000.png").time()).isPresent();
    }

    @Test
    void filingDoesWhatWasForetold() {
        FilingFacts facts = facts(Optional.empty(), Optional.empty());
        List<FilingForecast> foretold = Desk.filing(archive).foresee(List.of(in), facts, Progress.SILENT);
        List<FilingOutcome> done = Desk.filing(archive).file(List.of(in), facts, Progress.SILENT);
        assertThat(done).hasSameSizeAs(foretold);
        for (int i = 0; i < done.size(); i++) {
            FilingForecast before = foretold.get(i);
            assertThat(done.get(i).file()).isEqualTo(before.file());
            boolean expected = before.refusal().isEmpty() && before.time().isPresent();
            assertThat(done.get(i) instanceof FilingOutcome.Filed)
                    .as(before.file().toString())
                    .isEqualTo(expected);
            if (done.get(i) instanceof FilingOutcome.Filed filed) {
                assertThat(filed.picture().time()).isEqualTo(before.time());
                assertThat(filed.picture().planetId()).isEqualTo(before.planetId());
            }
        }
    }

    @Test
    void itStopsBetweenFiles() {
        List<String> told = new ArrayList<>();
        Progress afterTwo = new Progress() {
            @Override
            public void report(long done, long total, String message) {
                told.add(message);
            }

            @Override
            public boolean isCancelled() {
                return told.size() >= 2;
            }
        };
        assertThat(Desk.filing(archive).foresee(List.of(in), facts(Optional.empty(), Optional.empty()), afterTwo))
                .hasSize(2);
    }
}
