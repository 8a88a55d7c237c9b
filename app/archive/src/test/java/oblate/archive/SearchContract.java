/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import oblate.archive.PictureSearch.MeridianRange;
import oblate.base.ProblemException;
import oblate.base.ProblemKind;
import oblate.disc.DiscFit;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.disc.Witness;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What searching and keeping promise, whatever the catalog is kept in: rows only, no files. */
abstract class SearchContract {
    private static final Map<String, Double> MERIDIANS = Map.of("1", 10.0, "2", 200.0, "3", 300.0);

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

    private ArchivedPicture enter(int seed, String utc) {
        return enter(Entries.dated(seed, utc, MERIDIANS, Entries.NOTHING_SAID));
    }

    private ArchivedPicture enter(PictureEntry entry) {
        return archive.enter(entry).orElseThrow();
    }

    private List<Long> found(Wanted wanted) {
        return archive.pictures(wanted.search()).stream()
                .map(ArchivedPicture::id)
                .toList();
    }

    private static void assertProblem(ProblemKind kind, Runnable call) {
        assertThatThrownBy(call::run).isInstanceOfSatisfying(ProblemException.class, e -> assertThat(e.kind())
                .isEqualTo(kind));
    }

    @Test
    void everythingSaidAboutATimeIsKept() {
        PictureEntry entry = Entries.dated(1, "2031-03-24T21:05:30.123456789Z", MERIDIANS, Entries.NOTHING_SAID);
        ArchivedPicture picture = enter(entry);
        assertThat(picture.time()).isEqualTo(entry.time());
        assertThat(picture.timeConflicts()).isEqualTo(entry.conflicts());
        assertThat(picture.centralMeridians()).isEqualTo(MERIDIANS);
        assertThat(archive.timeClaims(picture.id())).isEqualTo(entry.claims());
        assertThat(archive.timeClaims(picture.id() + 1)).isEmpty();
    }

    @Test
    void theSameBytesAreEnteredOnce() {
        enter(1, "2031-03-24T21:05:30Z");
        assertThat(archive.enter(Entries.dated(1, "2031-03-25T21:05:30Z", Map.of(), Entries.NOTHING_SAID)))
                .isEmpty();
        assertThat(found(new Wanted())).hasSize(1);
        assertThat(archive.history(0)).hasSize(1);
    }

    @Test
    void twoPicturesCannotHaveOnePath() {
        PictureEntry one = Entries.dated(1, "2031-03-24T21:05:30Z", MERIDIANS, Entries.NOTHING_SAID);
        PictureEntry two = Entries.undated(2);
        enter(one);
        PictureEntry samePath = new PictureEntry(
                two.sha256(),
                two.sizeBytes(),
                one.relativePath(),
                two.originalName(),
                two.header(),
                two.planetId(),
                two.time(),
                two.night(),
                two.centralMeridians(),
                two.claims(),
                two.conflicts(),
                two.facts());
        assertProblem(ArchiveProblem.AGAINST_RULES, () -> archive.enter(samePath));
        assertThat(found(new Wanted())).hasSize(1);
        assertThat(archive.history(0)).hasSize(1);
    }

    @Test
    void picturesComeInOrderOfTimeUndatedOnesLast() {
        long undated = enter(Entries.undated(1)).id();
        long late = enter(2, "2031-03-24T21:05:30.5Z").id();
        long early = enter(3, "2031-03-24T21:05:30Z").id();
        long same = enter(4, "2031-03-24T21:05:30Z").id();
        assertThat(found(new Wanted())).containsExactly(early, same, late, undated);
        assertThat(found(new Wanted().limit(2))).containsExactly(early, same);
        assertThat(found(new Wanted().limit(99))).hasSize(4);
    }

    @Test
    void timesAreFromIncludedToExcluded() {
        long one = enter(1, "2031-03-24T21:00:00Z").id();
        long two = enter(2, "2031-03-24T22:00:00Z").id();
        long undated = enter(Entries.undated(3)).id();
        assertThat(found(new Wanted().from("2031-03-24T21:00:00Z"))).containsExactly(one, two);
        assertThat(found(new Wanted().from("2031-03-24T21:00:00.000000001Z"))).containsExactly(two);
        assertThat(found(new Wanted().to("2031-03-24T22:00:00Z"))).containsExactly(one);
        assertThat(found(new Wanted().from("2031-03-24T21:30:00Z").to("2031-03-24T23:00:00Z")))
                .containsExactly(two);
        assertThat(found(new Wanted())).contains(undated);
    }

    @Test
    void aNightGoesOnAfterMidnight() {
        long before = enter(1, "2031-03-24T23:59:59Z").id();
        long after = enter(2, "2031-03-25T11:59:59Z").id();
        long next = enter(3, "2031-03-25T12:00:00Z").id();
        assertThat(found(new Wanted().night("2031-03-24"))).containsExactly(before, after);
        assertThat(found(new Wanted().night("2031-03-25"))).containsExactly(next);
        assertThat(found(new Wanted().night("2031-03-26"))).isEmpty();
    }

    @Test
    void observerAndKitAreWholeNamesFilterIsPartOfOne() {
        FilingFacts red = Entries.facts("Nobody Inparticular", "long tube", "Near-infrared 742", null);
        FilingFacts blue = Entries.facts("Somebody Else", "short tube", "Blue", null);
        long one =
                enter(Entries.dated(1, "2031-03-24T21:00:00Z", MERIDIANS, red)).id();
        long two =
                enter(Entries.dated(2, "2031-03-24T22:00:00Z", MERIDIANS, blue)).id();
        assertThat(found(new Wanted().observer("Nobody Inparticular"))).containsExactly(one);
        assertThat(found(new Wanted().observer("Nobody"))).isEmpty();
        assertThat(found(new Wanted().kit("short tube"))).containsExactly(two);
        assertThat(found(new Wanted().filter("INFRARED"))).containsExactly(one);
        assertThat(found(new Wanted().filter("near infrared"))).containsExactly(one);
        assertThat(found(new Wanted().filter("%"))).hasSize(2);
        assertThat(found(new Wanted().filter("b_ue"))).isEmpty();
        assertThat(archive.kits()).extracting(Kit::name).containsExactly("long tube", "short tube");
    }

    @Test
    void fittedAndMarkedMeanNow() {
        ArchivedPicture one = enter(1, "2031-03-24T21:00:00Z");
        ArchivedPicture two = enter(2, "2031-03-24T22:00:00Z");
        archive.keepFit(one.id(), Desk.fit(20), "DE405", "t");
        assertThat(found(new Wanted().fitted(true))).containsExactly(one.id());
        assertThat(found(new Wanted().fitted(false))).containsExactly(two.id());
        StoredMark mark = archive.addMark(Desk.mark(two, Optional.empty(), Optional.empty(), 100));
        StoredMark again =
                archive.supersedeMark(mark.id(), Desk.mark(two, Optional.empty(), Optional.empty(), 101), "look");
        assertThat(found(new Wanted().marked(true))).containsExactly(two.id());
        assertThat(archive.picture(two.id()).orElseThrow().markCount()).isEqualTo(1);
        archive.withdrawMark(again.id(), "wrong");
        assertThat(found(new Wanted().marked(true))).isEmpty();
        assertThat(found(new Wanted().marked(false))).containsExactly(one.id(), two.id());
        assertThat(archive.picture(two.id()).orElseThrow().markCount()).isZero();
    }

    @Test
    void wishesAreJoinedByAnd() {
        enter(1, "2031-03-24T21:00:00Z");
        long two = enter(Entries.dated(
                        2, "2031-03-24T22:00:00Z", MERIDIANS, Entries.facts("Nobody", "tube", "red", "thin cloud")))
                .id();
        Wanted all = new Wanted()
                .planet("jupiter")
                .night("2031-03-24")
                .from("2031-03-24T20:00:00Z")
                .to("2031-03-24T23:00:00Z")
                .meridian("2", 190, 210)
                .observer("Nobody")
                .kit("tube")
                .filter("red")
                .words("cloud")
                .fitted(false)
                .marked(false);
        assertThat(found(all)).containsExactly(two);
        assertThat(found(all.planet("mars"))).isEmpty();
    }

    @Test
    void meridianRangesGoRoundTheCircle() {
        Random random = new Random(5);
        double[] meridians = new double[60];
        for (int i = 0; i < meridians.length; i++) {
            meridians[i] = i < 4 ? new double[] {0, 180, 359.999, 90}[i] : random.nextDouble() * 360;
            enter(Entries.dated(
                    i,
                    String.format(Locale.ROOT, "2031-03-24T21:00:%02dZ", i),
                    Map.of("1", 360 - meridians[i], "2", meridians[i]),
                    Entries.NOTHING_SAID));
        }
        List<ArchivedPicture> all = archive.pictures(PictureSearch.all());
        for (int i = 0; i < 60; i++) {
            double from = i < 3 ? new double[] {350, 0, -30}[i] : random.nextInt(-360, 720);
            double to = i < 3 ? new double[] {10, 360, 30}[i] : random.nextInt(-360, 720);
            List<Long> expected = all.stream()
                    .filter(p -> RoundTheCircle.isIn(p.centralMeridians().get("2"), from, to))
                    .map(ArchivedPicture::id)
                    .toList();
            assertThat(found(new Wanted().meridian("2", from, to)))
                    .as("%s to %s", from, to)
                    .isEqualTo(expected);
        }
        assertThat(found(new Wanted().meridian("3", 0, 360))).isEmpty();
        assertThatThrownBy(() -> new MeridianRange("2", Double.NaN, 10)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void everyBeginningOfEveryWordFindsThePicture() {
        Random random = new Random(11);
        String letters = "aÄbçdéßİıøōжюд日本0123456789 .,;:'\"*-_()%&|!<>\\";
        for (int i = 0; i < 30; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = 0; n < 24; n++) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            String notes = text.toString();
            long id = enter(Entries.dated(i, "2031-03-24T21:00:00Z", MERIDIANS, Entries.facts(null, null, null, notes)))
                    .id();
            for (String word : Words.of(notes)) {
                String start = word.substring(0, 1 + random.nextInt(word.length()));
                assertThat(found(new Wanted().words(start)))
                        .as("%s in %s", start, notes)
                        .contains(id);
            }
            if (!Words.of(notes).isEmpty()) {
                assertThat(found(new Wanted().words(notes))).as(notes).contains(id);
            }
        }
        assertThat(found(new Wanted().words("nowhere"))).isEmpty();
        assertThat(found(new Wanted().words("**"))).isEmpty();
        assertThat(found(new Wanted().words("  "))).hasSize(30);
    }

    @Test
    void aPictureIsCalledByNumberNamePathOrStartOfItsSha() {
        ArchivedPicture one = enter(1, "2031-03-24T21:00:00Z");
        ArchivedPicture two = enter(2, "2031-03-24T22:00:00Z");
        for (String word : List.of(
                String.valueOf(one.id()),
                one.name(),
                one.originalName(),
                one.relativePath(),
                one.sha256().substring(0, 8),
                one.sha256().toUpperCase(Locale.ROOT))) {
            assertThat(archive.pictureCalled(word).id()).as(word).isEqualTo(one.id());
        }
        for (String word :
                List.of("", "0", "999", one.sha256().substring(0, 7), "' or 1=1 --", "99999999999999999999")) {
            assertProblem(ArchiveProblem.NO_SUCH_PICTURE, () -> archive.pictureCalled(word));
        }
        PictureEntry third = Entries.undated(3);
        enter(new PictureEntry(
                third.sha256(),
                1,
                "pictures/third.png",
                two.originalName(),
                third.header(),
                third.planetId(),
                third.time(),
                third.night(),
                third.centralMeridians(),
                third.claims(),
                third.conflicts(),
                third.facts()));
        assertProblem(ArchiveProblem.AMBIGUOUS_PICTURE, () -> archive.pictureCalled(two.originalName()));
    }

    @Test
    void aChainOfMarksHasOneCurrentEndAndEveryLinkStays() {
        ArchivedPicture picture = enter(1, "2031-03-24T21:00:00Z");
        List<StoredMark> chain = new ArrayList<>();
        chain.add(archive.addMark(Desk.mark(picture, Optional.empty(), Optional.empty(), 10)));
        for (int i = 1; i < 5; i++) {
            NewMark next = Desk.mark(picture, Optional.empty(), Optional.empty(), 10 + i);
            chain.add(archive.supersedeMark(chain.get(i - 1).id(), next, "look " + i));
        }
        assertThat(archive.marks(MarkSearch.ofPicture(picture.id()))).containsExactly(chain.get(4));
        MarkSearch history = new MarkSearch(
                Optional.of("jupiter"),
                Optional.of(picture.id()),
                Optional.empty(),
                Optional.of(Instant.parse("2031-03-24T21:00:00Z")),
                Optional.of(Instant.parse("2031-03-24T21:00:01Z")),
                true);
        List<StoredMark> kept = archive.marks(history);
        assertThat(kept)
                .extracting(StoredMark::mark)
                .isEqualTo(chain.stream().map(StoredMark::mark).toList());
        for (int i = 0; i < 4; i++) {
            assertThat(kept.get(i).supersededBy()).contains(chain.get(i + 1).id());
        }
        NewMark late = Desk.mark(picture, Optional.empty(), Optional.empty(), 99);
        assertProblem(
                ArchiveProblem.NO_SUCH_MARK,
                () -> archive.supersedeMark(chain.get(0).id(), late, "too late"));
        ArchivedPicture other = enter(2, "2031-03-24T22:00:00Z");
        NewMark elsewhere = Desk.mark(other, Optional.empty(), Optional.empty(), 99);
        assertProblem(
                ArchiveProblem.NO_SUCH_MARK,
                () -> archive.supersedeMark(chain.get(4).id(), elsewhere, "no"));
        assertThat(archive.marks(history)).isEqualTo(kept);
    }

    @Test
    void marksAreFoundByFeatureAndInOrderOfTime() {
        ArchivedPicture late = enter(1, "2031-03-25T21:00:00Z");
        ArchivedPicture early = enter(2, "2031-03-24T21:00:00Z");
        Feature oval = archive.addFeature(
                new Feature(0, "jupiter", "oval A", "oval", Optional.empty(), Optional.empty(), Optional.of("a note")));
        archive.addFeature(
                new Feature(0, "jupiter", "Bar", "bar", Optional.of("dark"), Optional.of("2"), Optional.empty()));
        StoredMark second = archive.addMark(Desk.mark(late, Optional.empty(), Optional.of(oval.id()), 100));
        StoredMark first = archive.addMark(Desk.mark(early, Optional.empty(), Optional.of(oval.id()), 100));
        StoredMark unnamed = archive.addMark(Desk.mark(early, Optional.empty(), Optional.empty(), 100));
        assertThat(archive.marks(MarkSearch.all())).containsExactly(first, unnamed, second);
        MarkSearch ofOval = new MarkSearch(
                Optional.empty(), Optional.empty(), Optional.of("oval A"), Optional.empty(), Optional.empty(), false);
        assertThat(archive.marks(ofOval)).containsExactly(first, second);
        assertThat(first.featureName()).contains("oval A");
        assertThat(archive.features("jupiter")).extracting(Feature::name).containsExactly("Bar", "oval A");
        assertThat(archive.features("jupiter")).contains(oval);
        assertThat(archive.features("mars")).isEmpty();
    }

    @Test
    void aMarkNeedsATimeAPlanetAndNumbers() {
        ArchivedPicture undated = enter(Entries.undated(1));
        assertProblem(
                ArchiveProblem.UNDATED_PICTURE,
                () -> archive.addMark(Desk.mark(undated, Optional.empty(), Optional.empty(), 100)));
        ArchivedPicture bare = enter(Entries.dated(2, "2031-03-24T21:00:00Z", Map.of(), Entries.NOTHING_SAID));
        assertProblem(
                ArchiveProblem.NO_MERIDIAN,
                () -> archive.addMark(Desk.mark(bare, Optional.empty(), Optional.empty(), 100)));
        NewMark moon = new NewMark(
                bare.id(),
                Optional.empty(),
                Optional.empty(),
                new PixelPoint(-3, 400),
                0.4,
                Optional.empty(),
                Optional.empty(),
                "centre",
                "tester");
        StoredMark kept = archive.addMark(moon);
        assertThat(kept.mark()).isEqualTo(moon);
        assertThat(kept.longitudes()).isEmpty();
        ArchivedPicture good = enter(3, "2031-03-24T22:00:00Z");
        for (PixelPoint none : List.of(new PixelPoint(Double.NaN, 1), new PixelPoint(1, Double.NaN))) {
            NewMark mark = new NewMark(
                    good.id(),
                    Optional.empty(),
                    Optional.empty(),
                    none,
                    0.4,
                    Optional.empty(),
                    Optional.empty(),
                    "centre",
                    "tester");
            assertProblem(ArchiveProblem.AGAINST_RULES, () -> archive.addMark(mark));
        }
        assertProblem(
                ArchiveProblem.NO_SUCH_PICTURE,
                () -> archive.addMark(new NewMark(
                        999,
                        Optional.empty(),
                        Optional.empty(),
                        new PixelPoint(1, 1),
                        1,
                        Optional.empty(),
                        Optional.empty(),
                        "centre",
                        "tester")));
        assertThat(archive.marks(MarkSearch.all())).containsExactly(kept);
    }

    @Test
    void aFitWithoutEdgeOrWitnessComesBackTheSame() {
        ArchivedPicture picture = enter(1, "2031-03-24T21:00:00Z");
        DiscFit byHand = new DiscFit(
                new Placement(1.0 / 3, -2.5e-7, 1e5, 180, false),
                PlacementCovariance.diagonal(0.5, 0.25, 0, 3),
                Trust.TRUSTED,
                List.of(),
                "hand",
                "grey",
                Double.NaN,
                0,
                List.of(new Witness("mirrored", "kit", Double.NaN, 0)));
        StoredFit stored = archive.keepFit(picture.id(), byHand, "DE405", "Oblate test");
        StoredFit read = archive.currentFit(picture.id()).orElseThrow();
        assertThat(read.fit().placement()).isEqualTo(byHand.placement());
        assertThat(read.fit().covariance().toArray())
                .isDeepEqualTo(byHand.covariance().toArray());
        assertThat(read.fit().rmsPx()).isNaN();
        assertThat(read.fit().witnesses()).isEqualTo(byHand.witnesses());
        assertThat(read.ephemeris()).isEqualTo("DE405");
        assertThat(read.software()).isEqualTo("Oblate test");
        assertThat(read.madeUtc()).isEqualTo(Desk.CLOCK.instant());
        assertThat(read.id()).isEqualTo(stored.id());
        assertProblem(ArchiveProblem.NO_SUCH_PICTURE, () -> archive.keepFit(999, byHand, "DE405", "t"));
        assertThat(archive.currentFit(999)).isEmpty();
    }

    @Test
    void gearComesInOrderOfNameAndChangesAreLogged() {
        archive.keepSite(new Site("b", 1, 2, 3, Optional.of(java.time.ZoneId.of("Europe/Lisbon"))));
        archive.keepSite(new Site("B", 1, 2, 3, Optional.empty()));
        archive.keepSite(new Site("a", -90, 360, -3, Optional.empty()));
        assertThat(archive.sites()).extracting(Site::name).containsExactly("B", "a", "b");
        int lines = archive.history(0).size();
        archive.keepSite(new Site("B", 1, 2, 3, Optional.empty()));
        assertThat(archive.history(0)).hasSize(lines);
        archive.keepSite(new Site("B", 1, 2, 4, Optional.empty()));
        assertThat(archive.history(1).get(0).detail()).contains("heightM=3.0");
        assertProblem(
                ArchiveProblem.AGAINST_RULES, () -> archive.keepSite(new Site("pole", 91, 0, 0, Optional.empty())));
        Kit mirrored = new Kit(
                "k",
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(6200.5),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.of("two times"),
                Optional.of("prisms"),
                Optional.empty(),
                Optional.of(true),
                Optional.of("old"));
        archive.keepKit(mirrored);
        assertThat(archive.kits()).containsExactly(mirrored);
        archive.keepKit(Kit.named("k"));
        assertThat(archive.kits()).containsExactly(Kit.named("k"));
    }

    @Test
    void theHistoryIsNewestFirst() {
        for (int i = 0; i < 5; i++) {
            enter(i, "2031-03-24T21:00:00Z");
        }
        List<HistoryEntry> all = archive.history(0);
        assertThat(all).hasSize(5).isSortedAccordingTo((a, b) -> Long.compare(b.id(), a.id()));
        assertThat(archive.history(2)).isEqualTo(all.subList(0, 2));
        assertThat(all.get(0).atUtc()).isEqualTo(Desk.CLOCK.instant());
        assertThat(all.get(0).subject()).startsWith("picture ");
    }

    @Test
    void planetAndNightAreKept() {
        ArchivedPicture picture = enter(1, "2031-03-24T21:00:00Z");
        assertThat(picture.planetId()).contains("jupiter");
        assertThat(picture.night()).contains(LocalDate.parse("2031-03-24"));
        assertThat(archive.check(false, oblate.base.Progress.SILENT).faults()).hasSize(1);
    }

    @Test
    void manyThreadsEnterAtOnce() {
        List<Long> ids = IntStream.range(0, 40)
                .parallel()
                .mapToObj(i -> enter(i, "2031-03-24T21:00:00Z").id())
                .toList();
        assertThat(ids).doesNotHaveDuplicates();
        assertThat(found(new Wanted())).hasSize(40);
    }
}
