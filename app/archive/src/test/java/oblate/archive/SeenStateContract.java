/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static oblate.archive.ArchiveContract.assertProblem;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.base.Progress;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is promised of states seen, whatever a catalog is kept in. */
abstract class SeenStateContract {
    private static final Instant LOOK = Instant.parse("2031-03-24T21:08:00Z");

    @TempDir
    Path work;

    private Archive archive;
    private long picture;

    /** A new, empty archive in a folder. */
    abstract Archive open(Path folder);

    @BeforeEach
    void openArchive() throws IOException {
        archive = open(work.resolve("archive"));
        picture = Desk.filed(archive, work.resolve("in"), "20310324T210530Z", 1).id();
    }

    @AfterEach
    void closeArchive() {
        archive.close();
    }

    private SeenState said(String state) {
        return SeenState.in(picture, "jupiter", "io", "transit", state, "tester");
    }

    private static SeenState looked(double sigmaS, String observer, String site, String state) {
        return SeenState.in(
                new SeenState.Look(LOOK, sigmaS, Optional.ofNullable(observer), Optional.ofNullable(site)),
                "jupiter",
                "io",
                "transit",
                state,
                "");
    }

    final void sayOne() {
        archive.saySeen(List.of(said("clear")));
    }

    private List<String> states() {
        return archive.seenStates("jupiter").stream().map(SeenState::state).toList();
    }

    @Test
    void theNewestWordCountsAndAllOfThemStay() {
        assertThat(archive.saySeen(List.of(said("clear")))).isEqualTo(1);
        assertThat(archive.saySeen(List.of(said("clear")))).as("said already").isZero();
        archive.saySeen(List.of(said("on_limb")));
        assertThat(states()).containsExactly("on_limb");
        archive.saySeen(List.of(said("on_limb").takenBack("tester")));
        assertThat(states()).isEmpty();
        assertThat(archive.saySeen(List.of(said("on_limb").takenBack("tester"))))
                .as("nothing to take back")
                .isZero();
        archive.saySeen(List.of(said("clear")));
        assertThat(states()).containsExactly("clear");
        assertThat(archive.seenStateHistory("jupiter"))
                .extracting(SeenState::state)
                .containsExactly("clear", "on_limb", "open", "clear");
        assertThat(archive.history(1)).first().satisfies(h -> assertThat(h.subject() + ", " + h.detail())
                .isEqualTo("picture " + picture + ", io, transit: clear"));
        assertThat(archive.seenStates("saturn")).isEmpty();
        assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
    }

    @Test
    void moonsPhenomenaPicturesAndLooksAreApart() {
        archive.keepSite(new Site("hill", 48, 16, 300, Optional.empty()));
        archive.saySeen(List.of(
                said("clear"),
                SeenState.in(picture, "jupiter", "io", "shadow_transit", "not_seen", ""),
                SeenState.in(picture, "jupiter", "europa", "transit", "on_disc", ""),
                looked(2, "one", "hill", "on_limb"),
                looked(2, "other", null, "clear"),
                looked(2, null, null, "clear")));
        assertThat(states()).containsExactly("clear", "not_seen", "on_disc", "on_limb", "clear", "clear");
        SeenState look = archive.seenStates("jupiter").get(3);
        assertThat(look.look()).contains(new SeenState.Look(LOOK, 2, Optional.of("one"), Optional.of("hill")));
        assertThat(look.saidUtc()).contains(Desk.CLOCK.instant());
        // a better known time of the same look is something new
        assertThat(archive.saySeen(List.of(looked(1, "one", "hill", "on_limb"), looked(2, null, null, "clear"))))
                .isEqualTo(1);
        assertThat(states()).hasSize(6);
    }

    @Test
    void whatCannotBeIsRefusedWhole() {
        SeenState elsewhere = SeenState.in(picture, "saturn", "titan", "transit", "clear", "");
        assertProblem(ArchiveProblem.OTHER_PLANET, () -> archive.saySeen(List.of(said("clear"), elsewhere)));
        SeenState nowhere = SeenState.in(picture + 999, "jupiter", "io", "transit", "clear", "");
        assertProblem(ArchiveProblem.NO_SUCH_PICTURE, () -> archive.saySeen(List.of(said("clear"), nowhere)));
        assertProblem(
                ArchiveProblem.NO_SUCH_SITE,
                () -> archive.saySeen(List.of(said("clear"), looked(1, "", "no hill", "clear"))));
        long undated = archive.enter(Entries.undated(7)).orElseThrow().id();
        assertProblem(
                ArchiveProblem.UNDATED_PICTURE,
                () -> archive.saySeen(List.of(SeenState.in(undated, "jupiter", "io", "transit", "clear", ""))));
        assertThat(states()).isEmpty();
        assertThatThrownBy(() -> said("sunk")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> looked(-1, null, null, "clear")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aCorrectedPlanetIsTold() {
        archive.saySeen(List.of(said("clear")));
        ArchivedPicture before = archive.picture(picture).orElseThrow();
        new PictureCorrections(archive, Desk.SKY)
                .correct(picture, PictureFacts.of(before).withPlanet(Optional.of("saturn")), "it was the other one");
        assertThat(archive.check(false, Progress.SILENT).faults())
                .singleElement()
                .asString()
                .contains("state seen")
                .contains("another planet");
    }
}
