/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import oblate.sky.PhysicalTable;
import oblate.sky.UtcTime;

/**
 * Checks passages against a table that lists every passage of a window, misses too; columns and conventions as in docs/events.md.
 *
 * <p>The rule for grazes: a contact may be off by its moon's bar, which holds where the edge is crossed at the moon's full speed, times full speed over
 * the speed across the edge.
 */
public final class EventTable {
    private final Map<String, List<Map<String, String>>> windows = new LinkedHashMap<>();

    /** From a text that stands beside a test class. */
    public EventTable(Class<?> test, String name) throws IOException {
        for (Map<String, String> row : PhysicalTable.rowsBeside(test, name)) {
            String window = row.get("window_start_utc") + " " + row.get("window_end_utc") + " " + row.get("moon");
            windows.computeIfAbsent(window, w -> new ArrayList<>()).add(row);
        }
    }

    /** Number of passages listed. */
    public int size() {
        return windows.values().stream().mapToInt(List::size).sum();
    }

    /**
     * Demands the same passages and contacts.
     *
     * @param events ours
     * @param barS by moon, largest error of a contact crossed at full speed (s)
     */
    public void check(MoonEvents events, Map<String, Double> barS) {
        windows.forEach((window, rows) -> {
            String[] words = window.split(" ");
            List<Passage> found = events.passages(EventSearch.between(UtcTime.parse(words[0]), UtcTime.parse(words[1]))
                    .ofMoons(Set.of(words[2]))
                    .withMisses());
            assertThat(found).as(window).hasSameSizeAs(rows);
            for (Map<String, String> row : rows) {
                Passage passage = found.stream()
                        .filter(p -> p.kind().id().equals(row.get("kind"))
                                && Math.abs(off(p.mid().time(), row.get("mid_utc"))) < 300)
                        .findFirst()
                        .orElseThrow(() -> new AssertionError("lost: " + row));
                compare(passage, row, barS.get(words[2]));
            }
        });
    }

    private static void compare(Passage passage, Map<String, String> row, double barS) {
        assertThat(passage.occurs()).as("%s", row).isEqualTo(row.get("occurs").equals("yes"));
        assertThat(passage.leastSeparationRadii())
                .as("%s", row)
                .isCloseTo(Double.parseDouble(row.get("least_separation_radii")), within(0.0005));
        double fullSpeed = passage.mid().speedKmS();
        for (ContactKind which : ContactKind.values()) {
            String time = row.get(which.column());
            if (time == null || !passage.occurs()) {
                continue;
            }
            assertThat(passage.contact(which).isPresent())
                    .as("%s of %s", which, row)
                    .isEqualTo(!time.isEmpty());
            passage.contact(which).ifPresent(c -> assertThat(off(c.time(), time))
                    .as("%s of %s", which, row)
                    .isCloseTo(0, within(barS * Math.max(1, fullSpeed / c.speedKmS()))));
        }
        assertThat(passage.ingressVisible().map(v -> v ? "yes" : "no").orElse(""))
                .as("%s", row)
                .isEqualTo(row.get("ingress_visible"));
        assertThat(passage.egressVisible().map(v -> v ? "yes" : "no").orElse(""))
                .as("%s", row)
                .isEqualTo(row.get("egress_visible"));
    }

    /** Seconds from a written time to a time. */
    public static double off(UtcTime time, String written) {
        UtcTime other = UtcTime.parse(written);
        return (time.epochDay() - other.epochDay()) * 86400.0 + time.secondOfDay() - other.secondOfDay();
    }
}
