/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.SplittableRandom;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrackLinkerTest {
    private final TrackLinker linker = new TrackLinker();

    private Linked link(List<LinkMark> marks) {
        return linker.link(marks, JUPITER, system(JUPITER, "2"));
    }

    private static LinkMark mark(double day, double lon, double lat, String kind, double size, String feature) {
        LongitudePoint point = Sets.point(day, ((lon % 360) + 360) % 360, 0.6, lat, 0.35);
        return new LinkMark(point, kind, size > 0 ? OptionalDouble.of(size) : OptionalDouble.empty(), feature);
    }

    @Test
    @Tag("truth")
    void featuresOfManyBandsAreFoundAgain() {
        LinkSet set = LinkSet.invented(new LinkSet.Recipe(16, 6, 130, 40, 130, 0.05), new SplittableRandom(2));
        LinkSet.Score score = LinkScore.of(set);
        assertThat(score.share()).isGreaterThan(0.97);
        assertThat(score.purity()).isGreaterThan(0.99);
        assertThat(score.tracks()).isEqualTo(16);
    }

    @Test
    @Tag("truth")
    void fewMarksWithFalseOnesAndBoastfulErrorsAreLinked() {
        LinkSet whole = LinkSet.invented(new LinkSet.Recipe(16, 6, 130, 44, 130, 0), new SplittableRandom(3));
        SplittableRandom random = new SplittableRandom(4);
        assertThat(LinkScore.of(whole.thinned(0.5, random)).share()).isGreaterThan(0.95);
        assertThat(LinkScore.of(whole.thinned(0.2, random)).share()).isGreaterThan(0.8);
        LinkSet spoilt = whole.thinned(0.5, random).spoilt(0.2, 1.3, random);
        assertThat(LinkScore.of(spoilt).share()).isGreaterThan(0.92);
    }

    @Test
    @Tag("truth")
    void birthsAndDeathsAreFollowed() {
        LinkSet set = LinkSet.invented(new LinkSet.Recipe(24, 6, 150, 60, 35, 0.03), new SplittableRandom(5));
        LinkSet.Score score = LinkScore.of(set);
        assertThat(score.share()).isGreaterThan(0.82);
        assertThat(score.purity()).isGreaterThan(0.95);
    }

    @Test
    void orderOfTheMarksDoesNotMatter() {
        LinkSet set = LinkSet.invented(new LinkSet.Recipe(8, 3, 100, 30, 100, 0.03), new SplittableRandom(6));
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < set.marks().size(); i++) {
            order.add(i);
        }
        Collections.shuffle(order, new Random(1));
        Linked a = link(set.marks());
        Linked b = link(order.stream().map(set.marks()::get).toList());
        for (int k = 0; k < order.size(); k++) {
            assertThat(b.links().get(k)).isEqualTo(a.links().get(order.get(k)));
        }
    }

    /** Two spots of one latitude: one overtakes the other; kinds keep them apart where they meet. */
    @Test
    void spotsThatPassEachOtherAreToldApartAndTheMeetingIsDoubtful() {
        SplittableRandom random = new SplittableRandom(9);
        List<LinkMark> marks = new ArrayList<>();
        List<LinkMark> named = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double day = 1.5 * i;
            double noise = 0.6 * Sets.gauss(random);
            boolean fast = i % 2 == 0;
            double lon = fast ? 100 - 0.6 * day : 60 + 0.1 * day;
            marks.add(mark(day, lon + noise, -33, "", 0, ""));
            named.add(mark(day, lon + noise, -33, fast ? "bright spot" : "dark spot", 0, ""));
        }
        Linked plain = link(marks);
        assertThat(plain.tracks()).hasSize(2);
        // They meet on day 57.
        assertThat(plain.links().get(38).doubtful()).isTrue();
        assertThat(plain.links().get(38).reason()).isNotEmpty();
        assertThat(plain.links().get(0).doubtful()).isFalse();
        Linked byKind = link(named);
        for (int i = 0; i < 60; i++) {
            assertThat(byKind.links().get(i).track())
                    .isEqualTo(byKind.links().get(i % 2).track());
        }
    }

    /** A spot that splits: a single stem for forty days, then two branches. */
    @Test
    void aSplitGivesTwoTracks() {
        SplittableRandom random = new SplittableRandom(10);
        List<LinkMark> marks = new ArrayList<>();
        for (int i = 0; i < 80; i++) {
            double day = i;
            double lon = 150 - 0.2 * day + (day > 40 && i % 2 == 0 ? -0.5 * (day - 40) : 0);
            marks.add(mark(day, lon + 0.5 * Sets.gauss(random), 35, "", 0, ""));
        }
        Linked linked = link(marks);
        assertThat(linked.tracks()).hasSizeBetween(2, 3);
        assertThat(linked.links().get(78).track())
                .isNotEqualTo(linked.links().get(79).track());
    }

    @Test
    void fastCurrentsLapThePlanetBetweenNights() {
        SplittableRandom random = new SplittableRandom(11);
        List<LinkMark> marks = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            double day = (i / 3) * 3.1 + (i >= 45 ? 14 : 0);
            double lon = 120 * (i % 3) - 7.5 * day;
            marks.add(mark(day, lon + 0.6 * Sets.gauss(random), 7, "", 0, ""));
        }
        Linked linked = link(marks);
        assertThat(linked.tracks()).hasSize(3);
        for (int i = 0; i < 90; i++) {
            assertThat(linked.links().get(i).track())
                    .isEqualTo(linked.links().get(i % 3).track())
                    .isNotEmpty();
        }
    }

    @Test
    void namedMarksKeepTheirNameAndDrawOthersToThem() {
        SplittableRandom random = new SplittableRandom(12);
        List<LinkMark> marks = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double day = 2.0 * i;
            marks.add(mark(day, 10 - 0.3 * day + 0.5 * Sets.gauss(random), -40, "", 0, i % 4 == 0 ? "Oval" : ""));
        }
        Linked linked = link(marks);
        assertThat(linked.tracks()).containsExactly("Oval");
        assertThat(linked.marksOf("Oval")).hasSizeGreaterThan(38);
    }

    @Test
    void hardCasesGiveAnAnswer() {
        assertThat(link(List.of()).tracks()).isEmpty();
        assertThat(link(List.of(mark(0, 10, 20, "", 0, ""))).links().get(0).track())
                .isEmpty();
        List<LinkMark> oneTime = new ArrayList<>();
        List<LinkMark> bare = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            oneTime.add(mark(3, 18 * i, 20, "", 0, ""));
            bare.add(LinkMark.of(Sets.point(4 * i, 10 + 0.5 * i, 0.5)));
        }
        assertThat(link(oneTime).links()).hasSize(20);
        assertThat(link(bare).tracks()).hasSize(1);
        List<LinkMark> crowd = Collections.nCopies(300_001, mark(3, 100, 20, "", 0, ""));
        assertThatThrownBy(() -> link(crowd))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("300001 marks are too many");
        List<LinkMark> lone = new ArrayList<>(oneTime.subList(0, 1));
        lone.add(mark(3, 100, 20, "", 0, "A"));
        assertThat(link(lone).tracks()).containsExactly("A");
    }

    @Test
    void noiseMakesNoFirmTrack() {
        SplittableRandom random = new SplittableRandom(13);
        List<LinkMark> marks = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            marks.add(mark(random.nextDouble(0, 90), random.nextDouble(0, 360), -40, "", 0, ""));
        }
        Linked linked = link(marks);
        assertThat(linked.links()).noneMatch(l -> !l.track().isEmpty() && !l.doubtful());
    }

    @Test
    void linksAreSettledByHandWithTheReasonKept(@TempDir Path folder) throws IOException {
        StringBuilder text = new StringBuilder("time_utc,lon_deg,lat_deg,sigma_deg,kind,size_deg\n");
        for (int i = 0; i < 12; i++) {
            text.append("2024-11-")
                    .append(10 + i)
                    .append("T20:00:00Z,")
                    .append(100 + i)
                    .append(",20,0.5,Oval,4\n");
        }
        MarkTable table = MarkFile.read(new StringReader(text.toString()), "marks", JUPITER, system(JUPITER, "2"));
        assertThat(table.rows().get(0).kind()).isEqualTo("oval");
        assertThat(table.rows().get(0).sizeDeg()).hasValue(4);
        Linked linked = link(table.toLink());
        assertThat(linked.tracks()).containsExactly("T01");
        Path file = folder.resolve("settled.csv");
        Files.writeString(file, "row,track,reason\n3,none,clock wrong\n5,Other,another spot by its colour\n");
        Linked settled = linked.settled(SettleFile.read(file, table));
        assertThat(settled.links().get(2)).isEqualTo(new Linked.Link("", false, "settled by hand: clock wrong"));
        assertThat(settled.tracks()).containsExactly("T01", "Other");
        assertThat(table.named(settled).series()).hasSize(2);
        for (String bad : List.of(
                "row,track\n1,T01\n",
                "row,track,reason\n99,T01,x\n",
                "row,track,reason\n1,T01,\n",
                "row,track,reason\n1,T01,x\n1,T01,y\n")) {
            Files.writeString(file, bad);
            assertThatThrownBy(() -> SettleFile.read(file, table))
                    .isInstanceOf(ProblemException.class)
                    .hasMessageContaining("settled.csv");
        }
        assertThatThrownBy(() -> SettleFile.read(folder.resolve("none.csv"), table))
                .isInstanceOf(ProblemException.class);
    }
}
