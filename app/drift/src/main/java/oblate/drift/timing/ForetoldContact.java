/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.Passage;

/**
 * When a contact is foretold to be <em>seen</em>: a transit on the edge of the lit part, a shadow on the side of the globe that is seen; an occulted moon goes at the
 * true edge, lit or not.
 *
 * @param time when
 * @param sigmaS standard error of orbit and limb (s)
 * @param softS more of it where the edge is the soft one between day and night (s)
 * @param crossingS from outer to inner touch (s); 0 where there is no inner one
 * @param speedKmS speed across the edge (km/s)
 * @param doubts why it cannot be seen, or may not happen
 */
record ForetoldContact(
        Instant time, double sigmaS, double softS, double crossingS, double speedKmS, List<String> doubts) {
    /** Share of the shift from the outline to the lit edge that is taken as its uncertainty: light fades over it, it does not end. */
    private static final double SOFT_SHARE = 0.3;

    static Optional<ForetoldContact> of(Passage passage, TimedPoint point) {
        Optional<Contact> contact = point.contact().flatMap(passage::contact);
        if (contact.isEmpty()) {
            return Optional.empty();
        }
        boolean coming = point.coming();
        double shiftS = shiftS(passage, coming);
        double crossingS = crossing(passage, coming);
        List<String> doubts = new ArrayList<>();
        if (!(coming ? passage.ingressVisible() : passage.egressVisible()).orElse(true)) {
            doubts.add("it cannot be seen: " + passage.words());
        }
        if (passage.notes().contains(EventNote.WHOLLY_ON_FAR_SIDE)) {
            doubts.add("it cannot be seen: " + EventNote.WHOLLY_ON_FAR_SIDE.words());
        }
        if (passage.notes().contains(EventNote.DOUBTFUL)) {
            doubts.add(EventNote.DOUBTFUL.words());
        }
        Instant time = contact.get().time().toInstant().plusMillis(Math.round(shiftS * 1000));
        return Optional.of(new ForetoldContact(
                time,
                contact.get().sigmaS(),
                SOFT_SHARE * Math.abs(shiftS),
                crossingS,
                contact.get().speedKmS(),
                doubts));
    }

    /** Seconds from the outline to the edge that is seen. */
    private static double shiftS(Passage passage, boolean coming) {
        if (passage.kind() == EventKind.OCCULTATION) {
            return 0;
        }
        ContactKind outline = coming ? ContactKind.INGRESS_CENTRE : ContactKind.EGRESS_CENTRE;
        ContactKind lit = coming ? ContactKind.LIT_INGRESS : ContactKind.LIT_EGRESS;
        ContactKind seen = coming ? ContactKind.SEEN_INGRESS : ContactKind.SEEN_EGRESS;
        return passage.contact(lit)
                .or(() -> passage.contact(seen))
                .flatMap(edge -> passage.contact(outline).map(at -> edge.time().clockSecondsSince(at.time())))
                .orElse(0.0);
    }

    private static double crossing(Passage passage, boolean coming) {
        Optional<Contact> outer = passage.contact(coming ? ContactKind.T1 : ContactKind.T4);
        Optional<Contact> inner = passage.contact(coming ? ContactKind.T2 : ContactKind.T3);
        return outer.flatMap(o -> inner.map(i ->
                        Math.abs(Duration.between(o.time().toInstant(), i.time().toInstant())
                                        .toMillis()
                                / 1000.0)))
                .orElse(0.0);
    }
}
