/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import oblate.disc.DiscFit;
import oblate.disc.Trust;
import oblate.disc.Witness;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is promised to whoever looks over all pictures at once, whatever the catalog is kept in. */
abstract class OverviewContract {
    @TempDir
    Path work;

    private Archive archive;
    private ArchivedPicture first;
    private ArchivedPicture second;

    /** A new, empty archive in a folder. */
    abstract Archive open(Path folder, Clock clock);

    /** A clock that goes on by a second at every look. */
    private static final class Ticking extends Clock {
        private Instant now = Instant.parse("2031-03-25T01:00:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public synchronized Instant instant() {
            now = now.plusSeconds(1);
            return now;
        }
    }

    @BeforeEach
    void openArchive() throws IOException {
        archive = open(work.resolve("archive"), new Ticking());
        first = Desk.filed(archive, work.resolve("in"), "20310324T210530Z", 1);
        second = Desk.filed(archive, work.resolve("in"), "20310324T211130Z", 2);
    }

    @AfterEach
    void closeArchive() {
        archive.close();
    }

    private StoredFit fit(ArchivedPicture picture, double offsetS) {
        DiscFit like = Desk.fit(20);
        DiscFit timed = new DiscFit(
                like.placement(),
                like.covariance(),
                Trust.DOUBTFUL,
                like.reasons(),
                like.method(),
                like.channel(),
                like.rmsPx(),
                like.edgePoints(),
                List.of(new Witness("clock offset", "moons", offsetS, 12)));
        return archive.keepFit(picture.id(), timed, "DE405", "Oblate test");
    }

    @Test
    void everyCurrentFitIsToldInShort() {
        fit(first, 5);
        StoredFit newest = fit(first, 63);
        archive.keepFit(second.id(), Desk.fit(21), "DE405", "Oblate test");
        List<FitSummary> all = archive.fitSummaries();
        assertThat(all).extracting(FitSummary::pictureId).containsExactlyInAnyOrder(first.id(), second.id());
        FitSummary told = all.stream()
                .filter(f -> f.pictureId() == first.id())
                .findFirst()
                .orElseThrow();
        assertThat(told.fitId()).isEqualTo(newest.id());
        assertThat(told.trust()).isEqualTo(Trust.DOUBTFUL);
        assertThat(told.reasons()).containsExactly("first reason", "second reason");
        assertThat(told.poleAngleDeg()).isEqualTo(-170.5);
        assertThat(told.mirrored()).isTrue();
        assertThat(told.clockOffsetS()).isEqualTo(OptionalDouble.of(63));
        assertThat(told.clockDisagrees()).isTrue();
        FitSummary plain = all.stream()
                .filter(f -> f.pictureId() == second.id())
                .findFirst()
                .orElseThrow();
        assertThat(plain.clockOffsetS()).isEmpty();
        assertThat(plain.clockDisagrees()).isFalse();
    }

    @Test
    void aWithdrawnFitGivesWayToTheOneBefore() {
        StoredFit before = fit(first, 5);
        StoredFit after = fit(first, 63);
        archive.withdrawFit(after.id(), "wrong");
        assertThat(archive.fitSummaries()).extracting(FitSummary::fitId).containsExactly(before.id());
        archive.withdrawFit(before.id(), "wrong too");
        assertThat(archive.fitSummaries()).isEmpty();
    }

    @Test
    void whatTheMoonsSaidOfATimeIsNoWordOnTheCorrectedOne() {
        fit(first, 63);
        PictureFacts facts = PictureFacts.of(first);
        PictureFacts.Taken was = facts.time().orElseThrow();
        PictureCorrections corrections = new PictureCorrections(archive, Desk.SKY);
        corrections.correct(first.id(), facts.withObserver(Optional.of("somebody")), "not the time");
        assertThat(archive.fitSummaries().get(0).clockDisagrees()).isTrue();
        corrections.correct(
                first.id(),
                facts.withTime(Optional.of(
                        new PictureFacts.Taken(was.midUtc().plusSeconds(63), was.exposureS(), was.sigmaS()))),
                "as the moons say");
        assertThat(archive.fitSummaries().get(0).clockOffsetS()).isEmpty();
        fit(first, 80);
        assertThat(archive.fitSummaries().get(0).clockOffsetS()).hasValue(80);
    }

    @Test
    void reportedPicturesAreRememberedOnceEach() {
        archive.noteReported(List.of(first.id()), "spring.csv");
        archive.noteReported(List.of(first.id()), "summer.csv");
        assertThat(archive.reportedPictures()).containsExactly(first.id());
        assertThat(archive.history(1).get(0).detail()).isEqualTo("summer.csv");
        assertThatThrownBy(() -> archive.noteReported(List.of(second.id(), 4711L), "x"))
                .isInstanceOf(ProblemException.class);
        assertThat(archive.reportedPictures()).containsExactly(first.id());
    }

    @Test
    void aSettledTimeStaysAndItsSentencesComeBackWhenReopened() throws IOException {
        Path file = Desk.picture(work.resolve("in"), "q-20310324T213000Z.png", 3);
        Files.writeString(work.resolve("in/q-20310324T213000Z.txt"), "taken 2031-03-24T22:30:00Z");
        FilingOutcome.Filed filed = (FilingOutcome.Filed)
                Desk.file(archive, FilingFacts.forPlanet("jupiter"), file).get(0);
        List<String> conflicts = filed.picture().timeConflicts();
        assertThat(conflicts).hasSize(1);
        archive.settleTime(filed.picture().id(), "the note is of another night");
        ArchivedPicture settled = archive.picture(filed.picture().id()).orElseThrow();
        assertThat(settled.timeConflicts()).isEmpty();
        assertThat(settled.time().orElseThrow().midUtc())
                .isEqualTo(filed.picture().time().orElseThrow().midUtc());
        assertThat(archive.timeClaims(settled.id())).hasSize(2);
        assertThat(archive.history(1).get(0).detail())
                .contains(conflicts.get(0))
                .contains("the note is of another night");
        archive.reopenTime(settled.id(), conflicts, "taken back");
        archive.reopenTime(settled.id(), conflicts, "taken back twice");
        assertThat(archive.picture(settled.id()).orElseThrow().timeConflicts()).isEqualTo(conflicts);
    }
}
