/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.sky.MoonFacts;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.Passage;

/**
 * One row of the night: a feature with its crossings, or a moon with its events. Immutable.
 *
 * @param name the feature's or moon's name
 * @param kind of what it is a row
 * @param things what happens, in order of time
 */
record NightRow(String name, PlanItem.Kind kind, List<Thing> things) {
    NightRow {
        things = List.copyOf(things);
    }

    /**
     * One thing that is drawn: a crossing, or a moon's passage with those of its ends that the Earth sees.
     *
     * @param items the crossing; the beginning, the end, or both
     * @param span the crossing give or take its error; first to last touch of a moon
     */
    record Thing(List<PlanItem> items, TimeSpan span) {
        Thing {
            items = List.copyOf(items);
        }

        boolean isObservable() {
            return items.stream().anyMatch(PlanItem::isObservable);
        }

        boolean touches(TimeSpan shown) {
            return span.from().compareTo(shown.to()) <= 0 && span.to().compareTo(shown.from()) >= 0;
        }

        /** The item nearest to a time. */
        PlanItem nearest(UtcTime time) {
            return items.stream()
                    .min(Comparator.comparingDouble(i -> Math.abs(i.time().clockSecondsSince(time))))
                    .orElseThrow();
        }
    }

    /** Features that can be observed first, by time, then those that cannot; moons from the innermost. What lies wholly outside the time shown has no row. */
    static List<NightRow> of(PlanNight night, PlanWish wish, TimeSpan shown) {
        List<NightRow> rows = new ArrayList<>(features(night));
        rows.removeIf(r -> r.things().stream().noneMatch(t -> t.touches(shown)));
        for (MoonFacts moon : wish.planet().moons()) {
            List<Thing> things = passages(night, moon.name()).stream()
                    .filter(t -> t.touches(shown))
                    .toList();
            if (!things.isEmpty()) {
                rows.add(new NightRow(moon.name(), PlanItem.Kind.MOON, things));
            }
        }
        return rows;
    }

    private static List<NightRow> features(PlanNight night) {
        Map<String, List<Thing>> byName = new LinkedHashMap<>();
        for (PlanItem item : night.items()) {
            if (item.kind() == PlanItem.Kind.CROSSING) {
                byName.computeIfAbsent(item.subject(), n -> new ArrayList<>())
                        .add(new Thing(List.of(item), item.span()));
            }
        }
        List<NightRow> rows = new ArrayList<>();
        byName.forEach((name, things) -> rows.add(new NightRow(name, PlanItem.Kind.CROSSING, things)));
        rows.sort(Comparator.comparing((NightRow r) -> !r.isObservable()).thenComparing(NightRow::firstTime));
        return rows;
    }

    /** Whether anything of it can be observed. */
    boolean isObservable() {
        return things.stream().anyMatch(Thing::isObservable);
    }

    private UtcTime firstTime() {
        return things.stream()
                .filter(t -> t.isObservable() || !isObservable())
                .map(t -> t.items().get(0).time())
                .findFirst()
                .orElseThrow();
    }

    private static List<Thing> passages(PlanNight night, String moon) {
        Map<Passage, List<PlanItem>> byPassage = new LinkedHashMap<>();
        for (PlanItem item : night.items()) {
            if (item.kind() == PlanItem.Kind.MOON && item.subject().equals(moon)) {
                byPassage
                        .computeIfAbsent(item.passage().orElseThrow(), p -> new ArrayList<>())
                        .add(item);
            }
        }
        List<Thing> things = new ArrayList<>();
        byPassage.forEach((passage, items) -> things.add(new Thing(items, touches(passage))));
        return things;
    }

    private static TimeSpan touches(Passage passage) {
        UtcTime mid = passage.mid().time();
        return new TimeSpan(
                passage.contact(ContactKind.T1).map(Contact::time).orElse(mid),
                passage.contact(ContactKind.T4).map(Contact::time).orElse(mid));
    }
}
