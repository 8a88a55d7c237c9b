/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oblate.archive.Archive;
import oblate.archive.LinkSettlement;
import oblate.archive.LinkSettlement.Verdict;
import oblate.archive.MarkSearch;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * Links an archive's marks with what was settled by hand kept in the archive, so that every later run knows it.
 *
 * <p>A track found by the program has no name that lasts: its number may be another next time. A mark settled into such a track is therefore kept as
 * belonging "with mark N", N being the first mark of the track; it goes to whatever track that mark is in. A mark settled into a track of a
 * lasting name counts as named from the start and draws others to it; one settled into no track takes no part.
 */
public final class SettledMarks {
    private static final String WITH = "with mark ";
    private static final Pattern WITH_MARK = Pattern.compile(Pattern.quote(WITH) + "(\\d{1,9})");

    private final Archive archive;
    private final TrackLinker linker;

    /**
     * @param archive where marks and settlements are
     * @param linker joins what is not settled
     */
    public SettledMarks(Archive archive, TrackLinker linker) {
        this.archive = archive;
        this.linker = linker;
    }

    /**
     * The marks of a planet and where each belongs.
     *
     * @param table marks of centres, rows being numbers in the catalog
     * @param linked one link per row
     */
    public record Result(MarkTable table, Linked linked) {}

    /** Joins the current marks of a planet. */
    public Result link(PlanetModel planet, RotationSystem system) {
        MarkTable table = new MarkSeries().toLink(archive, planet, system);
        Map<Integer, LinkSettlement> settled = new TreeMap<>();
        archive.linkSettlements().forEach(s -> settled.put(Math.toIntExact(s.markId()), s));
        List<LinkMark> marks = new ArrayList<>();
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            MarkRow row = table.rows().get(i);
            LinkSettlement word = settled.get(row.row());
            if (word == null) {
                marks.add(row.toLink());
                places.add(i);
            } else if (word.verdict() == Verdict.TRACK && withMark(word).isEmpty()) {
                marks.add(new LinkMark(
                        row.point(), row.kind(), row.sizeDeg(), word.track().orElseThrow()));
                places.add(i);
            }
        }
        Linked free = linker.link(marks, planet, system);
        return new Result(table, whole(table, settled, free, places));
    }

    /** The mark that stands for a mark now, should it have been moved or named since. */
    private int heir(int mark) {
        Map<Long, Long> heirs = new TreeMap<>();
        MarkSearch ever = new MarkSearch(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), true);
        archive.marks(ever).forEach(m -> m.supersededBy().ifPresent(by -> heirs.put(m.id(), by)));
        long now = mark;
        while (heirs.containsKey(now)) {
            now = heirs.get(now);
        }
        return Math.toIntExact(now);
    }

    /** Puts the settled marks back among the others. */
    private Linked whole(MarkTable table, Map<Integer, LinkSettlement> settled, Linked free, List<Integer> places) {
        List<Linked.Link> links = new ArrayList<>();
        Map<Integer, String> trackOfRow = new TreeMap<>();
        for (int i = 0; i < table.rows().size(); i++) {
            links.add(Linked.Link.NONE);
        }
        for (int k = 0; k < places.size(); k++) {
            links.set(places.get(k), free.links().get(k));
            trackOfRow.put(
                    table.rows().get(places.get(k)).row(), free.links().get(k).track());
        }
        List<Settlement> words = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            LinkSettlement word = settled.get(table.rows().get(i).row());
            if (word != null) {
                words.add(settlement(i, word, trackOfRow));
            }
        }
        return new Linked(links, free.tracks()).settled(words);
    }

    private Settlement settlement(int place, LinkSettlement word, Map<Integer, String> trackOfRow) {
        Optional<Integer> mark = withMark(word);
        if (mark.isEmpty()) {
            return new Settlement(place, word.track().orElse(""), word.reason());
        }
        String track = trackOfRow.getOrDefault(heir(mark.get()), "");
        String lost =
                track.isEmpty() ? " (but mark " + mark.get() + ", whose track it was to share, is in none now)" : "";
        return new Settlement(place, track, word.reason() + lost);
    }

    /**
     * Keeps settlements in the archive.
     *
     * @param settled marks by their place in the table of {@code result}; an empty track takes the mark out, the track {@code open} takes earlier words back
     * @param result the run they speak of
     */
    public void keep(List<Settlement> settled, Result result) {
        for (Settlement one : settled) {
            long mark = result.table().rows().get(one.mark()).row();
            archive.settleLink(word(mark, one, result));
        }
    }

    private static LinkSettlement word(long mark, Settlement one, Result result) {
        if (one.track().isEmpty()) {
            return LinkSettlement.toNone(mark, one.reason());
        }
        if (one.track().equalsIgnoreCase(SettleFile.OPEN)) {
            return LinkSettlement.open(mark, one.reason());
        }
        return LinkSettlement.toTrack(mark, lasting(one.track(), mark, result), one.reason());
    }

    /** A name that says the same in the next run. */
    private static String lasting(String track, long mark, Result result) {
        List<Integer> members = result.linked().marksOf(track);
        boolean isName = members.isEmpty()
                || members.stream()
                        .anyMatch(i -> result.table().rows().get(i).feature().equals(track));
        if (isName) {
            return track;
        }
        return members.stream()
                .map(i -> result.table().rows().get(i).row())
                .filter(row -> row != mark)
                .min(Integer::compare)
                .map(row -> WITH + row)
                .orElse(track);
    }

    private static Optional<Integer> withMark(LinkSettlement word) {
        return word.track()
                .map(WITH_MARK::matcher)
                .filter(Matcher::matches)
                .map(matcher -> Integer.valueOf(matcher.group(1)));
    }
}
