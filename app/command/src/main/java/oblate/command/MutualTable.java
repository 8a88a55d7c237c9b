/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import oblate.report.ReportTable;
import oblate.sky.Sky;
import oblate.sky.event.Contact;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MutualContact;
import oblate.sky.event.MutualEvent;

/**
 * Events between two moons as tables.
 *
 * @param search what was asked for
 * @param view the sky over a place, when one is given
 * @param sky what it was computed with
 */
record MutualTable(EventSearch search, Optional<SiteView> view, Sky sky) {
    private static final String DEPTHS = "by areas alone: evenly bright discs, no limb darkening, no phase";

    /** Every column. */
    ReportTable whole(List<MutualEvent> events) {
        TableOf<MutualEvent> t = new TableOf<>("Mutual events");
        t.fact("times", "UTC, " + SiteView.from(view) + "; light time of every leg allowed for");
        t.fact("depths", DEPTHS);
        t.text("window_start_utc", "start of the span", e -> search.from().iso());
        t.text("window_end_utc", "end of the span", e -> search.to().iso());
        t.text("planet", "planet", e -> e.planet().id());
        t.text("front", "the moon that hides or casts the shadow", e -> e.front()
                .id());
        t.text("back", "the moon that is hidden or eclipsed", e -> e.back().id());
        t.text("kind", "occultation or eclipse", e -> e.kind().id());
        t.text("mid_utc", "least distance", e -> e.mid().time().iso(0));
        for (MutualContact which : MutualContact.values()) {
            t.text(which.column(), "contact", e -> e.contact(which)
                    .map(c -> c.time().iso(0))
                    .orElse(null));
        }
        t.number("least_distance_km", "km", 0, "at the back moon", MutualEvent::leastKm);
        t.number("least_distance_touches", "", 3, "1 is a bare touch of the discs", MutualEvent::leastInTouches);
        t.number("depth_back", "", 3, "share of the back moon's light lost, " + DEPTHS, MutualEvent::depthBack);
        t.number("sigma_depth_back", "", 3, "standard error from the orbits", MutualEvent::sigmaDepthBack);
        t.number("depth_pair", "", 3, "share of both moons' light lost", MutualEvent::depthPair);
        t.text("shadow", "umbra or penumbra", MutualTable::shadow);
        t.number("sigma_mid_s", "s", 1, "standard error", e -> e.mid().sigmaS());
        for (MutualContact which : MutualContact.values()) {
            String name = "sigma_" + which.name().toLowerCase(Locale.ROOT) + "_s";
            t.number(name, "s", 1, "standard error", e -> e.contact(which)
                    .map(Contact::sigmaS)
                    .orElse(null));
        }
        t.text("hidden", "what is hidden or special", e -> e.words().isEmpty() ? null : e.words());
        view.ifPresent(v -> {
            t.fact("observable", SiteView.RULE);
            v.columns(t, "mid", MutualEvent::planet, MutualEvent::mid);
            t.text("observable", SiteView.RULE, e -> observable(e, v));
        });
        t.text("seen_from", "where the times are those of", e -> SiteView.seenFrom(view));
        t.text("ephemeris", "planetary ephemeris", e -> sky.ephemeris().name());
        t.text("leap_seconds", "table of leap seconds used", e -> sky.leapSeconds()
                .saidOf(e.mid().time()));
        return t.rows(events);
    }

    private static String observable(MutualEvent e, SiteView v) {
        boolean hidden =
                e.notes().contains(EventNote.WHOLLY_BEHIND_PLANET) || e.notes().contains(EventNote.WHOLLY_IN_SHADOW);
        return !hidden && v.isUp(e.planet(), e.mid().time()) ? "yes" : "no";
    }

    private static String shadow(MutualEvent e) {
        if (e.kind() != EventKind.ECLIPSE) {
            return null;
        }
        return e.umbral() ? "umbra" : "penumbra";
    }

    /** One line per event, to the second. */
    ReportTable toRead(List<MutualEvent> events) {
        TableOf<MutualEvent> t = new TableOf<>("Mutual events");
        t.fact(
                "times",
                "UTC, " + SiteView.from(view)
                        + "; drop is the share of the hidden moon's light lost at the middle, both that of both moons, "
                        + DEPTHS);
        t.text(
                "mid",
                "least distance",
                e -> e.mid().time().iso(0).substring(0, 16).replace('T', ' '));
        t.text("begins", "first touch", e -> end(e, MutualContact.PENUMBRA_T1, MutualContact.T1));
        t.text("ends", "last touch", e -> end(e, MutualContact.PENUMBRA_T4, MutualContact.T4));
        t.text(
                "event",
                "what",
                e -> e.front().name()
                        + (e.kind() == EventKind.ECLIPSE ? " eclipses " : " occults ")
                        + e.back().name());
        t.number("err", "s", 0, "standard error of the middle", e -> e.mid().sigmaS());
        t.number("drop", "", 2, "of the hidden moon's light", MutualEvent::depthBack);
        t.number("both", "", 2, "of both moons' light", MutualEvent::depthPair);
        view.ifPresent(v -> {
            t.number("planet_alt", "deg", 0, "at the middle", e -> v.at(
                            e.planet(), e.mid().time())
                    .altitudeDeg());
            t.number("sun_alt", "deg", 0, "at the middle", e -> v.at(
                            e.planet(), e.mid().time())
                    .sunAltitudeDeg());
            t.text("observable", SiteView.RULE, e -> observable(e, v));
        });
        t.text("what is seen", "hidden phases and the like", e -> {
            String shadow = shadow(e);
            return Stream.of(shadow == null ? "" : shadow, e.words())
                    .filter(w -> !w.isEmpty())
                    .reduce((a, b) -> a + "; " + b)
                    .orElse("seen whole");
        });
        t.fact("ephemeris", sky.ephemeris().name());
        t.fact("leap seconds", sky.leapSeconds().saidOf(search.to()));
        return t.rows(events);
    }

    private static String end(MutualEvent e, MutualContact outer, MutualContact inner) {
        return e.contact(outer)
                .or(() -> e.contact(inner))
                .map(MutualTable::clock)
                .orElse(null);
    }

    private static String clock(Contact contact) {
        return contact.time().iso(0).substring(11, 19);
    }
}
