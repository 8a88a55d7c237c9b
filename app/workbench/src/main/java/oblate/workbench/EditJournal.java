/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What was done and can be undone, and what was undone and can be done again. Immutable.
 *
 * <p>Undoing makes new rows that stand for old ones; {@code marks} and {@code fits} lead from a row to the one that stands for it now.
 *
 * @param done oldest first
 * @param undone the one to be done again next is last
 * @param marks from a mark's row to the row standing for it
 * @param fits from a fit's row to the row standing for it
 */
record EditJournal(List<Edit> done, List<Edit> undone, Map<Long, Long> marks, Map<Long, Long> fits) {
    /** The oldest edits beyond this are forgotten. */
    static final int MOST = 500;

    /** As are those that would make more pictures than this in all; the newest edit is always kept. */
    static final int MOST_PICTURES = 5000;

    EditJournal {
        done = newest(done);
        undone = newest(undone);
        Set<Long> markIds = new HashSet<>();
        Set<Long> fitIds = new HashSet<>();
        done.forEach(e -> rows(e, markIds, fitIds));
        undone.forEach(e -> rows(e, markIds, fitIds));
        marks = Map.copyOf(shortened(marks, markIds));
        fits = Map.copyOf(shortened(fits, fitIds));
    }

    private static List<Edit> newest(List<Edit> edits) {
        int from = edits.size();
        int weight = 0;
        while (from > 0
                && (from == edits.size()
                        || (edits.size() - from < MOST
                                && weight + edits.get(from - 1).weight() <= MOST_PICTURES))) {
            from--;
            weight += edits.get(from).weight();
        }
        return List.copyOf(edits.subList(from, edits.size()));
    }

    static EditJournal empty() {
        return new EditJournal(List.of(), List.of(), Map.of(), Map.of());
    }

    private static void rows(Edit edit, Set<Long> marks, Set<Long> fits) {
        if (edit instanceof Edit.MarkAdded e) {
            marks.add(e.markId());
        } else if (edit instanceof Edit.MarkReplaced e) {
            marks.add(e.oldId());
            marks.add(e.newId());
        } else if (edit instanceof Edit.MarkWithdrawn e) {
            marks.add(e.markId());
        } else if (edit instanceof Edit.FitKept e) {
            fits.add(e.fitId());
            e.before().ifPresent(fits::add);
        } else if (edit instanceof Edit.FitWithdrawn e) {
            fits.add(e.fitId());
        }
    }

    /** One step from each row an edit names to where its chain ends; chains that turn back on themselves, as only a damaged file has, are cut. */
    private static Map<Long, Long> shortened(Map<Long, Long> links, Set<Long> wanted) {
        Map<Long, Long> result = new TreeMap<>();
        for (Long id : wanted) {
            long end = end(links, id);
            if (end != id) {
                result.put(id, end);
            }
        }
        return result;
    }

    private static long end(Map<Long, Long> links, long id) {
        long at = id;
        for (int steps = 0; steps <= links.size() && links.containsKey(at); steps++) {
            at = links.get(at);
        }
        return at;
    }

    /** The row standing for a mark's row now. */
    long mark(long id) {
        return end(marks, id);
    }

    /** The row standing for a fit's row now. */
    long fit(long id) {
        return end(fits, id);
    }

    /** With an edit that was just done; what had been undone can no longer be done again. */
    EditJournal with(Edit edit) {
        List<Edit> all = new ArrayList<>(done);
        all.add(edit);
        Map<Long, Long> links = new TreeMap<>(marks);
        if (edit instanceof Edit.MarkReplaced e) {
            links.put(mark(e.oldId()), e.newId());
        }
        return new EditJournal(all, List.of(), links, fits);
    }

    /** With a mark's row standing for another. */
    EditJournal withMark(long from, long to) {
        Map<Long, Long> links = new TreeMap<>(marks);
        links.put(mark(from), to);
        return new EditJournal(done, undone, links, fits);
    }

    /** With a fit's row standing for another. */
    EditJournal withFit(long from, long to) {
        Map<Long, Long> links = new TreeMap<>(fits);
        links.put(fit(from), to);
        return new EditJournal(done, undone, marks, links);
    }

    /** With the newest edit counted as undone, or forgotten. */
    EditJournal back(boolean canBeRedone) {
        List<Edit> again = new ArrayList<>(undone);
        if (canBeRedone) {
            again.add(done.get(done.size() - 1));
        }
        return new EditJournal(done.subList(0, done.size() - 1), again, marks, fits);
    }

    /** With the newest edit counted as undone for its first pictures only. */
    EditJournal backPartly(int pictures) {
        Edit edit = done.get(done.size() - 1);
        List<Edit> left = new ArrayList<>(done.subList(0, done.size() - 1));
        left.add(edit.part(pictures, edit.weight()));
        List<Edit> again = new ArrayList<>(undone);
        again.add(edit.part(0, pictures));
        return new EditJournal(left, again, marks, fits);
    }

    /** With the newest undone edit counted as done again for its first pictures only. */
    EditJournal forthPartly(int pictures) {
        Edit edit = undone.get(undone.size() - 1);
        List<Edit> left = new ArrayList<>(undone.subList(0, undone.size() - 1));
        left.add(edit.part(pictures, edit.weight()));
        List<Edit> all = new ArrayList<>(done);
        all.add(edit.part(0, pictures));
        return new EditJournal(all, left, marks, fits);
    }

    /** With the newest undone edit counted as done again, or forgotten. */
    EditJournal forth(boolean canBeUndone) {
        List<Edit> all = new ArrayList<>(done);
        if (canBeUndone) {
            all.add(undone.get(undone.size() - 1));
        }
        return new EditJournal(all, undone.subList(0, undone.size() - 1), marks, fits);
    }
}
