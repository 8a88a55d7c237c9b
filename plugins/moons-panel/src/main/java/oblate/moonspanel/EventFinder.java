/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.base.Progress;
import oblate.sky.DarkWindow;
import oblate.sky.GroundNight;
import oblate.sky.GroundSky;
import oblate.sky.MoonFacts;
import oblate.sky.TimeSpan;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.workbench.words.Texts;

/** Finds the events of a span, one moon after the other so that it can be stopped in between, then those of the moons with each other. Immutable. */
final class EventFinder {
    private static final Texts TEXTS = Texts.of(EventFinder.class);
    private static final double TRACK_STEP_MIN = 720;
    private final Grounds grounds;

    EventFinder(Grounds grounds) {
        this.grounds = grounds;
    }

    Found find(Wish wish, Progress progress) {
        MoonEvents events = MoonEvents.of(grounds.from(wish.site()), wish.planet());
        EventSearch search = EventSearch.between(wish.span().from(), wish.span().to());
        Optional<GroundSky> ground = grounds.over(wish.site());
        List<MoonFacts> moons = wish.planet().moons();
        List<Happening> found = new ArrayList<>();
        for (int i = 0; i < moons.size() && !progress.isCancelled(); i++) {
            progress.report(i, moons.size() + 1L, moons.get(i).name());
            events.passages(search.ofMoons(Set.of(moons.get(i).id())))
                    .forEach(passage -> found.add(MoonEvent.of(passage, ground)));
        }
        if (!progress.isCancelled()) {
            progress.report(moons.size(), moons.size() + 1L, TEXTS.text("search.mutual"));
            events.mutual(search).forEach(event -> found.add(MoonMeeting.of(event, ground)));
        }
        found.sort(Comparator.comparing(Happening::from));
        return new Found(wish, found, ground.map(g -> seen(wish, g)).orElse(List.of()));
    }

    private static List<TimeSpan> seen(Wish wish, GroundSky ground) {
        LocalDate first = Stretch.eveningOf(wish.span().from().plusClockSeconds(60), wish.site());
        LocalDate last = Stretch.eveningOf(wish.span().to().plusClockSeconds(-60), wish.site());
        List<TimeSpan> seen = new ArrayList<>();
        for (LocalDate date = first; !date.isAfter(last); date = date.plusDays(1)) {
            GroundNight.of(ground, date)
                    .windows(wish.planet(), Hindrance.HIGHEST_SUN_DEG, Hindrance.LOWEST_PLANET_DEG, TRACK_STEP_MIN)
                    .stream()
                    .map(DarkWindow::span)
                    .forEach(seen::add);
        }
        return seen;
    }
}
