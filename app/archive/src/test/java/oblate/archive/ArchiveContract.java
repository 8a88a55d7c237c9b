/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

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
import oblate.archive.PictureSearch.MeridianRange;
import oblate.base.ProblemException;
import oblate.base.ProblemKind;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an archive promises, whatever its catalog is kept in. */
abstract class ArchiveContract {
    @TempDir
    Path work;

    private Archive archive;

    /** A new, empty archive in a folder. */
    abstract Archive open(Path folder);

    @BeforeEach
    void openArchive() {
        archive = open(work.resolve("archive"));
    }

    @AfterEach
    void closeArchive() {
        archive.close();
    }

    private ArchivedPicture filed(String time, int seed) throws IOException {
        return Desk.filed(archive, work.resolve("in"), time, seed);
    }

    static void assertProblem(ProblemKind kind, Runnable call) {
        assertThatThrownBy(call::run).isInstanceOfSatisfying(ProblemException.class, e -> assertThat(e.kind())
                .isEqualTo(kind));
    }

    @Test
    void aPictureComesBackAsItWasFiled() throws IOException {
        ArchivedPicture filed = filed("20310324T210530Z", 1);
        ArchivedPicture read = archive.picture(filed.id()).orElseThrow();
        assertThat(read).isEqualTo(filed);
        assertThat(read.time().orElseThrow().midUtc()).isEqualTo(Instant.parse("2031-03-24T21:05:30Z"));
        assertThat(read.night()).contains(LocalDate.parse("2031-03-24"));
        PlanetModel jupiter = Desk.PLANETS.stream()
                .filter(p -> p.id().equals("jupiter"))
                .findFirst()
                .orElseThrow();
        double cm2 = Desk.SKY
                .disc(jupiter, Instant.parse("2031-03-24T21:05:30Z"))
                .subEarth()
                .lonDeg(jupiter.globe().system("2").orElseThrow());
        assertThat(read.centralMeridians().get("2")).isCloseTo(cm2, within(1e-6));
        assertThat(archive.pictureCalled(read.name())).isEqualTo(read);
        assertThat(archive.pictureCalled(read.sha256().substring(0, 10))).isEqualTo(read);
        assertThat(archive.pictureCalled(String.valueOf(read.id()))).isEqualTo(read);
        assertProblem(ArchiveProblem.NO_SUCH_PICTURE, () -> archive.pictureCalled("nothing.png"));
    }

    @Test
    void aNewFitSupersedesTheOldOneWhichStaysReadable() throws IOException {
        ArchivedPicture picture = filed("20310324T210530Z", 1);
        StoredFit first = archive.keepFit(picture.id(), Desk.fit(20), "DE405", "Oblate test");
        StoredFit second = archive.keepFit(picture.id(), Desk.fit(21), "DE405", "Oblate test");
        assertThat(archive.currentFit(picture.id())).contains(second);
        List<StoredFit> history = archive.fitHistory(picture.id());
        assertThat(history).extracting(StoredFit::id).containsExactly(first.id(), second.id());
        assertThat(history.get(0).supersededBy()).contains(second.id());
        assertThat(second.fit().placement()).isEqualTo(Desk.fit(21).placement());
        assertThat(second.fit().covariance().toArray())
                .isDeepEqualTo(Desk.fit(21).covariance().toArray());
        assertThat(second.fit().reasons()).containsExactly("first reason", "second reason");
        assertThat(second.fit().witnesses()).isEqualTo(Desk.fit(21).witnesses());
        assertThat(archive.picture(picture.id()).orElseThrow().fitted()).isTrue();
    }

    @Test
    void marksAreSupersededAndWithdrawnNeverChanged() throws IOException {
        ArchivedPicture picture = filed("20310324T210530Z", 1);
        StoredFit fit = archive.keepFit(picture.id(), Desk.fit(20), "DE405", "Oblate test");
        Feature oval = archive.addFeature(feature("oval A"));
        StoredMark first = archive.addMark(Desk.mark(picture, Optional.of(fit.id()), Optional.of(oval.id()), 100));
        StoredMark second = archive.supersedeMark(
                first.id(), Desk.mark(picture, Optional.of(fit.id()), Optional.of(oval.id()), 101), "second look");
        assertThat(archive.marks(MarkSearch.all())).containsExactly(second);
        double cm3 = picture.centralMeridians().get("3");
        double cm2 = picture.centralMeridians().get("2");
        assertThat(Math.IEEEremainder(second.longitudes().get("2") - (101 + cm2 - cm3), 360))
                .isCloseTo(0, within(1e-9));
        archive.withdrawMark(second.id(), "a cosmic ray");
        assertThat(archive.marks(MarkSearch.all())).isEmpty();
        MarkSearch all = new MarkSearch(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), true);
        assertThat(archive.marks(all)).hasSize(2).noneMatch(StoredMark::isCurrent);
        assertThat(archive.marks(all).get(0).mark()).isEqualTo(first.mark());
        assertProblem(ArchiveProblem.NO_SUCH_MARK, () -> archive.withdrawMark(second.id(), "again"));
        assertThat(archive.history(20))
                .extracting(HistoryEntry::action)
                .contains("filed", "fitted", "feature added", "marked", "superseded", "withdrawn");
    }

    @Test
    void aMarkNeedsItsOwnPicturesFitAndItsPlanetsFeature() throws IOException {
        ArchivedPicture one = filed("20310324T210530Z", 1);
        ArchivedPicture two = filed("20310324T211530Z", 2);
        StoredFit fit = archive.keepFit(one.id(), Desk.fit(20), "DE405", "Oblate test");
        assertProblem(
                ArchiveProblem.NO_SUCH_FIT,
                () -> archive.addMark(Desk.mark(two, Optional.of(fit.id()), Optional.empty(), 100)));
        Feature martian = archive.addFeature(
                new Feature(0, "mars", "cap", "cap", Optional.empty(), Optional.empty(), Optional.empty()));
        assertProblem(
                ArchiveProblem.NO_SUCH_FEATURE,
                () -> archive.addMark(Desk.mark(one, Optional.empty(), Optional.of(martian.id()), 100)));
        assertThat(archive.marks(MarkSearch.all())).isEmpty();
        archive.addFeature(feature("oval A"));
        assertProblem(ArchiveProblem.FEATURE_EXISTS, () -> archive.addFeature(feature("oval A")));
    }

    private static Feature feature(String name) {
        return new Feature(0, "jupiter", name, "oval", Optional.of("bright"), Optional.of("2"), Optional.empty());
    }

    @Test
    void searchesFindWhatTheySay() throws IOException {
        for (int i = 0; i < 12; i++) {
            filed(String.format("203103%02dT21%02d00Z", 10 + i, 4 * i), i);
        }
        List<ArchivedPicture> all = archive.pictures(PictureSearch.all());
        assertThat(all)
                .hasSize(12)
                .isSortedAccordingTo((a, b) ->
                        a.time().get().midUtc().compareTo(b.time().get().midUtc()));
        archive.keepFit(all.get(3).id(), Desk.fit(20), "DE405", "t");
        assertThat(archive.pictures(search(Optional.empty(), Optional.of(true), 0)))
                .extracting(ArchivedPicture::id)
                .containsExactly(all.get(3).id());
        assertThat(archive.pictures(search(Optional.empty(), Optional.empty(), 5)))
                .hasSize(5);
        for (double[] range : new double[][] {{340, 40}, {10, 200}, {350, 350.5}, {0, 360}}) {
            List<Long> expected = all.stream()
                    .filter(p -> inside(p.centralMeridians().get("2"), range))
                    .map(ArchivedPicture::id)
                    .toList();
            assertThat(archive.pictures(
                            search(Optional.of(new MeridianRange("2", range[0], range[1])), Optional.empty(), 0)))
                    .extracting(ArchivedPicture::id)
                    .containsExactlyElementsOf(expected);
        }
    }

    private static boolean inside(double cm, double[] range) {
        return range[0] <= range[1] ? cm >= range[0] && cm <= range[1] : cm >= range[0] || cm <= range[1];
    }

    private static PictureSearch search(Optional<MeridianRange> meridian, Optional<Boolean> fitted, int limit) {
        return new PictureSearch(
                Optional.of("jupiter"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                meridian,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                fitted,
                Optional.empty(),
                limit);
    }

    @Test
    void wordsAreLookedForInNamesNotesObserversAndKits() throws IOException {
        Path file = Desk.picture(work.resolve("in"), "a-20310324T210530Z.png", 5);
        FilingFacts plain = FilingFacts.forPlanet("jupiter");
        FilingFacts told = new FilingFacts(
                plain.planetId(),
                Optional.empty(),
                Optional.of("Nobody Inparticular"),
                Optional.of("long tube"),
                Optional.of("red"),
                Optional.of(new Rating("7", "Pickering")),
                Optional.empty(),
                Optional.of("through thin cloud"),
                plain.time(),
                false);
        Desk.file(archive, told, file);
        filed("20310325T210530Z", 6);
        for (String words : List.of("inparticular", "thin cloud", "long", "20310324")) {
            PictureSearch search = new PictureSearch(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(words),
                    Optional.empty(),
                    Optional.empty(),
                    0);
            assertThat(archive.pictures(search)).as(words).hasSize(1);
        }
    }

    @Test
    void gearIsKeptAndChanged() {
        Kit kit = new Kit(
                "long tube",
                Optional.of("reflector"),
                OptionalDouble.of(250),
                OptionalDouble.of(6200),
                Optional.of("colour"),
                OptionalDouble.of(2.9),
                Optional.empty(),
                Optional.empty(),
                Optional.of("infrared cut"),
                Optional.of(false),
                Optional.empty());
        archive.keepKit(Kit.named("long tube"));
        archive.keepKit(kit);
        assertThat(archive.kits()).containsExactly(kit);
        Site site = new Site("garden", 41.2, -8.6, 90, Optional.empty());
        archive.keepSite(site);
        assertThat(archive.sites()).containsExactly(site);
    }
}
