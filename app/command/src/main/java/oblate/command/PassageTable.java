/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import oblate.report.ReportTable;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.EventSearch;
import oblate.sky.event.Passage;

/**
 * Passages as tables: whole for programs, short to read at night.
 *
 * @param search what was asked for
 * @param view the sky over a place, when one is given
 * @param sky what it was computed with
 */
record PassageTable(EventSearch search, Optional<SiteView> view, Sky sky) {
    private static final List<ContactKind> TOUCHES = List.of(
            ContactKind.T1,
            ContactKind.INGRESS_CENTRE,
            ContactKind.T2,
            ContactKind.T3,
            ContactKind.EGRESS_CENTRE,
            ContactKind.T4,
            ContactKind.PENUMBRA_T1,
            ContactKind.PENUMBRA_T4,
            ContactKind.UMBRA_T2,
            ContactKind.UMBRA_T3,
            ContactKind.SEEN_INGRESS,
            ContactKind.SEEN_EGRESS);

    /** Every column. */
    ReportTable whole(List<Passage> passages) {
        TableOf<Passage> t = new TableOf<>("Moon events");
        t.fact("times", "UTC, " + SiteView.from(view) + "; light time of every leg allowed for");
        t.fact("shadow events", "seen from the Sun's centre: contacts at half light");
        t.text("window_start_utc", "start of the span", p -> search.from().iso());
        t.text("window_end_utc", "end of the span", p -> search.to().iso());
        t.text("planet", "planet", p -> p.planet().id());
        t.text("moon", "moon", p -> p.moon().id());
        t.text("kind", "kind of passage", p -> p.kind().id());
        t.text("occurs", "whether the moon's disc touches the outline", p -> yesNo(p.occurs()));
        time(t, ContactKind.T1, "outer touch");
        time(t, ContactKind.INGRESS_CENTRE, "centre on the outline");
        time(t, ContactKind.T2, "inner touch");
        t.text("mid_utc", "least distance of the centres", p -> p.mid().time().iso(0));
        time(t, ContactKind.T3, "inner touch");
        time(t, ContactKind.EGRESS_CENTRE, "centre on the outline");
        time(t, ContactKind.T4, "outer touch");
        time(t, ContactKind.PENUMBRA_T1, "first touch of the half-shadow");
        time(t, ContactKind.PENUMBRA_T4, "last touch of the half-shadow");
        time(t, ContactKind.UMBRA_T2, "whole moon in full shadow, first");
        time(t, ContactKind.UMBRA_T3, "whole moon in full shadow, last");
        time(t, ContactKind.SEEN_INGRESS, "shadow's axis on the side the Earth sees, first");
        time(t, ContactKind.SEEN_EGRESS, "shadow's axis on the side the Earth sees, last");
        t.text("ingress_visible", "beginning not hidden", p -> p.ingressVisible()
                .map(PassageTable::yesNo)
                .orElse(null));
        t.text("egress_visible", "end not hidden", p -> p.egressVisible()
                .map(PassageTable::yesNo)
                .orElse(null));
        t.number("least_separation_radii", "", 4, "equatorial radii", Passage::leastSeparationRadii);
        t.number("sigma_s", "s", 1, "standard error of a contact", p -> p.sigmaS()
                .orElse(null));
        own(t);
        view.ifPresent(v -> site(t, v));
        t.text("seen_from", "where the times are those of", p -> SiteView.seenFrom(view));
        t.text("ephemeris", "planetary ephemeris", p -> sky.ephemeris().name());
        t.text("leap_seconds", "table of leap seconds used", p -> sky.leapSeconds()
                .saidOf(p.mid().time()));
        return t.rows(passages);
    }

    private static void own(TableOf<Passage> t) {
        t.number("sigma_mid_s", "s", 1, "standard error of the middle", p -> p.mid()
                .sigmaS());
        for (ContactKind which : TOUCHES) {
            String name = "sigma_" + which.name().toLowerCase(Locale.ROOT) + "_s";
            t.number(name, "s", 1, "standard error", p -> p.contact(which)
                    .map(Contact::sigmaS)
                    .orElse(null));
        }
        time(t, ContactKind.LIT_INGRESS, "centre on the edge of the lit part, coming");
        time(t, ContactKind.LIT_EGRESS, "centre on the edge of the lit part, leaving");
        t.number("phase_ingress_s", "s", 0, "ingress_centre to lit_ingress", p -> p.phaseDelayS()
                .orElse(null));
        t.number("phase_egress_s", "s", 0, "lit_egress to egress_centre", p -> p.phaseLeadS()
                .orElse(null));
        t.text("hidden", "what is hidden or special", p -> p.words().isEmpty() ? null : p.words());
    }

    private static void time(TableOf<Passage> t, ContactKind which, String description) {
        t.text(which.column(), description, p -> p.contact(which)
                .map(c -> c.time().iso(0))
                .orElse(null));
    }

    private static void site(TableOf<Passage> t, SiteView v) {
        t.fact("observable", SiteView.RULE);
        v.columns(t, "mid", Passage::planet, Passage::mid);
        for (ContactKind which : TOUCHES.subList(0, 6)) {
            v.columns(t, which.name().toLowerCase(Locale.ROOT), Passage::planet, p -> p.contact(which)
                    .orElse(null));
        }
        t.text("ingress_observable", SiteView.RULE, p -> observable(p, v, true));
        t.text("egress_observable", SiteView.RULE, p -> observable(p, v, false));
    }

    private static String observable(Passage p, SiteView v, boolean coming) {
        return firstOf(p, coming ? BEGINNING : END)
                .map(c -> yesNo(v.isUp(p.planet(), c.time()) && !isHidden(p, coming)))
                .orElse(null);
    }

    /** Notes that the line to read says by a time, or leaves to the whole table. */
    private static final Set<EventNote> SAID_BY_TIMES = EnumSet.of(
            EventNote.BEGINS_ON_FAR_SIDE,
            EventNote.ENDS_ON_FAR_SIDE,
            EventNote.BEGINS_ON_UNLIT_LIMB,
            EventNote.ENDS_ON_UNLIT_LIMB,
            EventNote.GOES_AT_UNLIT_LIMB,
            EventNote.RETURNS_AT_UNLIT_LIMB);

    private static final List<ContactKind> BEGINNING = List.of(ContactKind.INGRESS_CENTRE, ContactKind.T1);
    private static final List<ContactKind> END = List.of(ContactKind.EGRESS_CENTRE, ContactKind.T4);

    private static Optional<Contact> firstOf(Passage p, List<ContactKind> kinds) {
        return kinds.stream().flatMap(k -> p.contact(k).stream()).findFirst();
    }

    private static boolean isHidden(Passage p, boolean coming) {
        if (p.kind() == EventKind.SHADOW_TRANSIT) {
            ContactKind own = coming ? ContactKind.INGRESS_CENTRE : ContactKind.EGRESS_CENTRE;
            ContactKind seen = coming ? ContactKind.SEEN_INGRESS : ContactKind.SEEN_EGRESS;
            return !p.contact(own).equals(p.contact(seen));
        }
        return !(coming ? p.ingressVisible() : p.egressVisible()).orElse(true);
    }

    /** One line per event, to the second. */
    ReportTable toRead(List<Passage> passages) {
        TableOf<Passage> t = new TableOf<>("Moon events");
        t.fact(
                "times",
                "UTC, " + SiteView.from(view) + "; outer and inner touch of the moon's disc; err is that of a contact");
        t.text(
                "mid",
                "least distance of the centres",
                p -> p.mid().time().iso(0).substring(0, 16).replace('T', ' '));
        t.text("moon", "moon", p -> p.moon().name());
        t.text(
                "event",
                "kind",
                p -> p.kind() == EventKind.SHADOW_TRANSIT ? "shadow" : p.kind().id());
        t.text("begins", "first touches", p -> span(p, ContactKind.T1, ContactKind.T2));
        t.text("ends", "last touches", p -> span(p, ContactKind.T3, ContactKind.T4));
        t.number("err", "s", 0, "standard error of a contact", p -> p.sigmaS().orElse(null));
        view.ifPresent(v -> {
            t.number("planet_alt", "deg", 0, "at the middle", p -> v.at(
                            p.planet(), p.mid().time())
                    .altitudeDeg());
            t.number("sun_alt", "deg", 0, "at the middle", p -> v.at(
                            p.planet(), p.mid().time())
                    .sunAltitudeDeg());
            t.text("observable", SiteView.RULE, p -> ends(p, v));
        });
        t.text("what is seen", "hidden phases and the like", PassageTable::seen);
        t.fact("ephemeris", sky.ephemeris().name());
        t.fact("leap seconds", sky.leapSeconds().saidOf(search.to()));
        return t.rows(passages);
    }

    private static String ends(Passage p, SiteView v) {
        boolean first = "yes".equals(observable(p, v, true));
        boolean last = "yes".equals(observable(p, v, false));
        if (first && last) {
            return "both ends";
        }
        if (first) {
            return "beginning";
        }
        return last ? "end" : "no";
    }

    /** Two moments, the second without the hour when that is the same. */
    private static String span(Passage p, ContactKind one, ContactKind other) {
        List<String> times = Stream.of(one, other)
                .flatMap(k -> p.contact(k).stream())
                .map(PassageTable::clock)
                .toList();
        if (times.size() < 2) {
            return times.isEmpty() ? null : times.get(0);
        }
        String first = times.get(0);
        String second = times.get(1);
        boolean sameHour = first.substring(0, 2).equals(second.substring(0, 2));
        return first + " " + (sameHour ? second.substring(3) : second);
    }

    private static String clock(Contact contact) {
        UtcTime time = contact.time();
        return time.iso(0).substring(11, 19);
    }

    private static String seen(Passage p) {
        List<String> words = new ArrayList<>();
        if (!p.occurs()) {
            words.add(String.format(Locale.ROOT, "passes at %.2f radii", p.leastSeparationRadii()));
        }
        p.notes().stream().filter(n -> !SAID_BY_TIMES.contains(n)).forEach(n -> words.add(n.words()));
        if (p.kind() == EventKind.TRANSIT) {
            p.phaseDelayS().filter(s -> s >= 0.5).ifPresent(s -> words.add(seconds("seen to come on %.0f s later", s)));
            p.phaseLeadS().filter(s -> s >= 0.5).ifPresent(s -> words.add(seconds("seen to leave %.0f s earlier", s)));
        }
        p.contact(ContactKind.SEEN_INGRESS)
                .filter(c -> isHidden(p, true))
                .ifPresent(c -> words.add("shadow seen from " + clock(c)));
        p.contact(ContactKind.SEEN_EGRESS)
                .filter(c -> isHidden(p, false))
                .ifPresent(c -> words.add("shadow seen until " + clock(c)));
        return words.isEmpty() ? "seen whole" : String.join("; ", words);
    }

    private static String seconds(String template, double seconds) {
        return String.format(Locale.ROOT, template, seconds);
    }

    private static String yesNo(boolean value) {
        return value ? "yes" : "no";
    }
}
