/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static oblate.archive.ArchiveContract.assertProblem;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.Progress;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is promised when something in an archive was wrong, whatever its catalog is kept in. */
abstract class CorrectionContract {
    private static final MarkSearch EVER = new MarkSearch(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), true);

    @TempDir
    Path work;

    private Archive archive;
    private ArchivedPicture picture;

    /** A new, empty archive in a folder. */
    abstract Archive open(Path folder);

    @BeforeEach
    void openArchive() throws IOException {
        archive = open(work.resolve("archive"));
        picture = Desk.filed(archive, work.resolve("in"), "20310324T210530Z", 1);
    }

    @AfterEach
    void closeArchive() {
        archive.close();
    }

    private PictureCorrections corrections() {
        return new PictureCorrections(archive, Desk.SKY);
    }

    private StoredFit fit(double x) {
        return archive.keepFit(picture.id(), Desk.fit(x), "DE405", "Oblate test");
    }

    private static PlanetModel jupiter() {
        return Desk.PLANETS.stream()
                .filter(p -> p.id().equals("jupiter"))
                .findFirst()
                .orElseThrow();
    }

    private StoredMark measured(StoredFit fit) {
        DiscFrame frame = new DiscFrame(
                Desk.SKY.disc(jupiter(), picture.time().orElseThrow().midUtc()),
                fit.fit().placement());
        PixelPoint pixel = new PixelPoint(22, 16);
        MarkMeasurer.Measured place = new MarkMeasurer()
                .measure(frame, fit.fit().covariance(), pixel, 0.5, 0.3)
                .orElseThrow();
        return archive.addMark(new NewMark(
                picture.id(),
                Optional.of(fit.id()),
                Optional.empty(),
                pixel,
                0.5,
                Optional.of(place.point()),
                Optional.of(place.errors()),
                "centre",
                "tester"));
    }

    @Test
    void aWithdrawnFitGivesWayToTheOneBeforeAndANewOneFollows() {
        StoredFit first = fit(20);
        StoredFit second = fit(21);
        archive.withdrawFit(second.id(), "the ring was taken for the limb");
        assertThat(archive.currentFit(picture.id()).map(StoredFit::id)).contains(first.id());
        assertThat(archive.fitHistory(picture.id()))
                .extracting(StoredFit::withdrawnReason)
                .containsExactly(Optional.empty(), Optional.of("the ring was taken for the limb"));
        assertProblem(ArchiveProblem.NO_FIT_TO_WITHDRAW, () -> archive.withdrawFit(second.id(), "again"));
        assertProblem(ArchiveProblem.NO_FIT_TO_WITHDRAW, () -> archive.withdrawFit(999, "never was"));
        StoredFit third = fit(22);
        assertThat(archive.currentFit(picture.id()).map(StoredFit::id)).contains(third.id());
        archive.withdrawFit(third.id(), "no");
        archive.withdrawFit(first.id(), "nor that");
        assertThat(archive.currentFit(picture.id())).isEmpty();
        assertThat(archive.picture(picture.id()).orElseThrow().fitted()).isFalse();
        assertThat(archive.fitHistory(picture.id())).hasSize(3).noneMatch(StoredFit::isCurrent);
        assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
    }

    @Test
    void aCorrectedTimeMovesMeridiansAndMarksByTheRotationSince() {
        StoredMark before = measured(fit(20));
        Instant right = Instant.parse("2031-03-24T21:15:30Z");
        PictureFacts facts = PictureFacts.of(picture)
                .withTime(Optional.of(new PictureFacts.Taken(right, OptionalDouble.of(120), 2)));
        ArchivedPicture after = corrections().correct(picture.id(), facts, "the clock was ten minutes slow");
        assertThat(after.time().orElseThrow().midUtc()).isEqualTo(right);
        assertThat(after.time().orElseThrow().uncertaintyS()).isEqualTo(2);
        // System III turns 870.536 deg a day (IAU): 6.0454 deg in ten minutes. The pixel is the same, so the mark moves
        // by it too.
        double turn = 870.536 / 144;
        assertThat(Math.IEEEremainder(
                        after.centralMeridians().get("3")
                                - picture.centralMeridians().get("3"),
                        360))
                .isCloseTo(turn, within(0.001));
        List<StoredMark> marks = archive.marks(MarkSearch.ofPicture(picture.id()));
        assertThat(marks).hasSize(1);
        assertThat(Math.IEEEremainder(
                        marks.get(0).longitudes().get("3") - before.longitudes().get("3"), 360))
                .isCloseTo(turn, within(0.001));
        // 2 s of uncertainty are 0.0202 deg.
        assertThat(marks.get(0).mark().errors().orElseThrow().timeLonDeg()).isCloseTo(0.0202, within(0.0001));
        assertThat(archive.marks(EVER)).hasSize(2);
        assertThat(archive.currentFit(picture.id())).isPresent();
        assertThat(archive.history(5)).anySatisfy(line -> assertThat(line.detail())
                .contains("2031-03-24T21:15:30Z")
                .contains("was 2031-03-24T21:05:30Z")
                .contains("ten minutes slow"));
        assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
    }

    @Test
    void aTimeDaysOffOrAnotherPlanetTakesFitAndMarksBack() {
        measured(fit(20));
        ArchivedPicture later = corrections()
                .correct(
                        picture.id(),
                        PictureFacts.of(picture)
                                .withTime(Optional.of(new PictureFacts.Taken(
                                        Instant.parse("2031-03-27T21:05:30Z"), OptionalDouble.empty(), 1))),
                        "the date was wrong");
        assertThat(later.night()).contains(LocalDate.parse("2031-03-27"));
        assertThat(later.fitted()).isFalse();
        assertThat(archive.marks(MarkSearch.all())).isEmpty();
        assertThat(archive.marks(EVER)).hasSize(1);
        measured(fit(20));
        ArchivedPicture other = corrections()
                .correct(later.id(), PictureFacts.of(later).withPlanet(Optional.of("Saturn")), "no belts, a ring");
        assertThat(other.planetId()).contains("saturn");
        assertThat(other.fitted()).isFalse();
        assertThat(other.markCount()).isZero();
        assertThat(Math.IEEEremainder(
                        other.centralMeridians().get("3")
                                - later.centralMeridians().get("3"),
                        360))
                .isNotCloseTo(0, within(1.0));
        assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
    }

    @Test
    void wordsAreCorrectedSearchedAndClearedWithTheirHistory() {
        archive.keepSite(new Site("far garden", -35, 149, 600, Optional.empty()));
        PictureFacts facts = PictureFacts.of(picture)
                .withSite(Optional.of("far garden"))
                .withObserver(Optional.of("Nobody"))
                .withKit(Optional.of("tube 7"))
                .withFilter(Optional.of("IR 685"))
                .withSeeing(Optional.of(new Rating("7", "Pickering")))
                .withNotes(Optional.of("through thin haze"));
        ArchivedPicture after = corrections().correct(picture.id(), facts, "filled in");
        assertThat(PictureFacts.of(after)).isEqualTo(facts);
        // 21:05 UTC is 07:01 in the morning of the 25th there: still the night of the 24th.
        assertThat(after.night()).contains(LocalDate.parse("2031-03-24"));
        assertThat(archive.pictures(new Wanted().words("haze").search())).hasSize(1);
        ArchivedPicture cleared = corrections().correct(picture.id(), facts.withNotes(Optional.empty()), "not needed");
        assertThat(cleared.notes()).isEmpty();
        assertThat(archive.pictures(new Wanted().words("haze").search())).isEmpty();
        int lines = archive.history(0).size();
        corrections().correct(picture.id(), PictureFacts.of(cleared), "nothing new");
        assertThat(archive.history(0)).hasSize(lines);
    }

    @Test
    void whatCannotBeIsRefusedAndNothingChanges() {
        PictureFacts facts = PictureFacts.of(picture);
        assertProblem(ArchiveProblem.NO_SUCH_SITE, () -> corrections()
                .correct(picture.id(), facts.withSite(Optional.of("nowhere")), "why not"));
        assertProblem(ArchiveProblem.NO_SUCH_PLANET, () -> corrections()
                .correct(picture.id(), facts.withPlanet(Optional.of("Vulcan")), "why not"));
        assertProblem(ArchiveProblem.NO_SUCH_PICTURE, () -> corrections().correct(4711, facts, "why not"));
        assertProblem(ArchiveProblem.OUTSIDE_EPHEMERIS, () -> corrections()
                .correct(
                        picture.id(),
                        facts.withTime(Optional.of(new PictureFacts.Taken(
                                Instant.parse("1610-01-07T18:00:00Z"), OptionalDouble.empty(), 1))),
                        "an old one"));
        assertThatThrownBy(() -> corrections().correct(picture.id(), facts.withNotes(Optional.of("x")), " "))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(archive.picture(picture.id())).contains(picture);
    }

    @Test
    void theNewestWordAboutALinkCountsAndNoneIsLost() {
        StoredMark mark = measured(fit(20));
        archive.settleLink(LinkSettlement.toTrack(mark.id(), "oval A", "same colour"));
        archive.settleLink(LinkSettlement.toNone(mark.id(), "a satellite's shadow"));
        assertThat(archive.linkSettlements()).singleElement().satisfies(s -> {
            assertThat(s.verdict()).isEqualTo(LinkSettlement.Verdict.NONE);
            assertThat(s.reason()).isEqualTo("a satellite's shadow");
            assertThat(s.settledUtc()).contains(Desk.CLOCK.instant());
        });
        archive.settleLink(LinkSettlement.open(mark.id(), "not so sure"));
        assertThat(archive.linkSettlements()).isEmpty();
        archive.settleLink(LinkSettlement.toTrack(mark.id(), "oval A", "sure again"));
        assertThat(archive.linkSettlements()).hasSize(1);
        StoredMark moved = archive.supersedeMark(mark.id(), mark.mark(), "looked again");
        assertThat(archive.linkSettlements()).extracting(LinkSettlement::markId).containsExactly(moved.id());
        archive.withdrawMark(moved.id(), "dust");
        assertThat(archive.linkSettlements()).isEmpty();
        assertProblem(ArchiveProblem.NO_SUCH_MARK, () -> archive.settleLink(LinkSettlement.toNone(999, "why")));
        assertThat(archive.history(0)).extracting(HistoryEntry::action).contains("settled");
        assertThatThrownBy(() -> LinkSettlement.toTrack(1, " ", "why")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> LinkSettlement.toNone(1, " ")).isInstanceOf(IllegalArgumentException.class);
    }
}
