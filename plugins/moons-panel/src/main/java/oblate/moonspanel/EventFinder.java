/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.base.Progress;
import oblate.sky.GroundSky;
import oblate.sky.MoonFacts;
import oblate.sky.Sky;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.Passage;

/** Finds the events of a span, one moon after the other so that it can be stopped in between. Immutable. */
final class EventFinder {
    private final Sky sky;

    EventFinder(Sky sky) {
        this.sky = sky;
    }

    List<MoonEvent> find(Wish wish, Progress progress) {
        MoonEvents events = MoonEvents.of(sky, wish.planet());
        EventSearch search = EventSearch.between(wish.span().from(), wish.span().to());
        Optional<GroundSky> ground = wish.ground(sky);
        List<MoonFacts> moons = wish.planet().moons();
        List<Passage> passages = new ArrayList<>();
        for (int i = 0; i < moons.size() && !progress.isCancelled(); i++) {
            progress.report(i, moons.size(), moons.get(i).name());
            passages.addAll(events.passages(search.ofMoons(Set.of(moons.get(i).id()))));
        }
        passages.sort(Comparator.comparing(MoonEvent::begin));
        List<MoonEvent> found = new ArrayList<>();
        for (Passage passage : passages) {
            if (progress.isCancelled()) {
                break;
            }
            found.add(MoonEvent.of(passage, ground));
        }
        return List.copyOf(found);
    }
}
