/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.Passage;

/** The beginnings and ends of a moon's passages that the Earth sees. */
final class MoonMoments {

    private MoonMoments() {}

    /**
     * A beginning or an end.
     *
     * @param passage of which
     * @param coming whether it is the beginning
     * @param contact the centre on the outline, or the outer touch where the centre never gets there
     * @param span outer touch to inner touch, in order of time
     */
    record Moment(Passage passage, boolean coming, Contact contact, TimeSpan span) {

        String words() {
            String moon = passage.moon().name();
            return switch (passage.kind()) {
                case TRANSIT -> moon + (coming ? " comes onto the disc" : " leaves the disc");
                case SHADOW_TRANSIT -> moon + "'s shadow" + (coming ? " comes onto the disc" : " leaves the disc");
                case OCCULTATION -> moon + (coming ? " goes behind the planet" : " comes back from behind");
                case ECLIPSE -> moon + (coming ? " goes into eclipse" : " comes out of eclipse");
            };
        }

        String note() {
            return passage.notes().contains(EventNote.DOUBTFUL) ? EventNote.DOUBTFUL.words() : "";
        }
    }

    static List<Moment> of(List<Passage> passages) {
        List<Moment> moments = new ArrayList<>();
        for (Passage passage : passages) {
            if (passage.occurs()) {
                moment(passage, true).ifPresent(moments::add);
                moment(passage, false).ifPresent(moments::add);
            }
        }
        return moments;
    }

    private static Optional<Moment> moment(Passage p, boolean coming) {
        ContactKind outer = coming ? ContactKind.T1 : ContactKind.T4;
        ContactKind centre = coming ? ContactKind.INGRESS_CENTRE : ContactKind.EGRESS_CENTRE;
        ContactKind inner = coming ? ContactKind.T2 : ContactKind.T3;
        if (isHidden(p, coming, centre)) {
            return Optional.empty();
        }
        return p.contact(centre).or(() -> p.contact(outer)).map(contact -> {
            List<UtcTime> times = Stream.of(outer, centre, inner)
                    .flatMap(kind -> p.contact(kind).stream())
                    .map(Contact::time)
                    .sorted()
                    .toList();
            return new Moment(p, coming, contact, new TimeSpan(times.get(0), times.get(times.size() - 1)));
        });
    }

    private static boolean isHidden(Passage p, boolean coming, ContactKind centre) {
        if (p.kind() == EventKind.SHADOW_TRANSIT) {
            ContactKind seen = coming ? ContactKind.SEEN_INGRESS : ContactKind.SEEN_EGRESS;
            return !p.contact(centre).equals(p.contact(seen));
        }
        return !(coming ? p.ingressVisible() : p.egressVisible()).orElse(true);
    }
}
