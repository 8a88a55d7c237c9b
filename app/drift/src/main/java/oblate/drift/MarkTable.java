/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * Marks as they were read from a file.
 *
 * @param planet their planet
 * @param system system of their longitudes
 * @param rows in the order of the file
 * @param remarks what was assumed, one sentence each
 */
public record MarkTable(PlanetModel planet, RotationSystem system, List<MarkRow> rows, List<String> remarks) {

    /** Copies the lists. */
    public MarkTable {
        rows = List.copyOf(rows);
        remarks = List.copyOf(remarks);
    }

    /** One series per named feature, by name; where no mark has a name, one series of all with an empty name. */
    public List<LongitudeSeries> series() {
        Map<String, List<LongitudePoint>> byName = new TreeMap<>();
        boolean named = rows.stream().anyMatch(row -> !row.feature().isEmpty());
        for (MarkRow row : rows) {
            if (!named || !row.feature().isEmpty()) {
                byName.computeIfAbsent(row.feature(), name -> new ArrayList<>()).add(row.point());
            }
        }
        return byName.entrySet().stream()
                .map(entry -> new LongitudeSeries(entry.getKey(), planet, system, entry.getValue()))
                .toList();
    }

    /** The rows as marks to be linked, in the order of the file. */
    public List<LinkMark> toLink() {
        return rows.stream().map(MarkRow::toLink).toList();
    }

    /** The same rows with the tracks they were linked to as names of their features; those of no track are left out. */
    public MarkTable named(Linked linked) {
        List<MarkRow> named = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            String track = linked.links().get(i).track();
            if (!track.isEmpty()) {
                MarkRow row = rows.get(i);
                named.add(new MarkRow(row.row(), track, row.point(), row.kind(), row.sizeDeg()));
            }
        }
        return new MarkTable(planet, system, named, remarks);
    }

    /** Rows without a name, in the order of the file. */
    public List<MarkRow> unnamed() {
        return rows.stream().filter(row -> row.feature().isEmpty()).toList();
    }
}
