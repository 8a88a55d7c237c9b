/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.Passage;
import oblate.workbench.words.Texts;

/**
 * A moon's passage before or behind its planet, with what the site makes of it. Immutable.
 *
 * @param passage the event
 * @param begin planet and Sun over the site at its first touch; none without a site
 * @param end the same at its last touch
 * @param hindrance why nothing of it can be seen; none when something can
 */
record MoonEvent(Passage passage, Optional<GroundView> begin, Optional<GroundView> end, Optional<Hindrance> hindrance)
        implements Happening {
    private static final Texts TEXTS = Texts.of(MoonEvent.class);
    private static final int STEPS = 8;
    private static final Set<EventNote> WHOLLY =
            Set.of(EventNote.WHOLLY_BEHIND_PLANET, EventNote.WHOLLY_IN_SHADOW, EventNote.WHOLLY_ON_FAR_SIDE);
    private static final Set<EventNote> BEGIN_HIDDEN =
            Set.of(EventNote.BEGINS_BEHIND_PLANET, EventNote.BEGINS_IN_SHADOW, EventNote.BEGINS_ON_FAR_SIDE);
    private static final Set<EventNote> END_HIDDEN =
            Set.of(EventNote.ENDS_BEHIND_PLANET, EventNote.ENDS_IN_SHADOW, EventNote.ENDS_ON_FAR_SIDE);
    private static final List<ContactKind> TOUCHES = List.of(
            ContactKind.PENUMBRA_T1,
            ContactKind.T1,
            ContactKind.INGRESS_CENTRE,
            ContactKind.T2,
            ContactKind.T3,
            ContactKind.EGRESS_CENTRE,
            ContactKind.T4,
            ContactKind.PENUMBRA_T4);

    static MoonEvent of(Passage passage, Optional<GroundSky> ground) {
        Optional<GroundView> first = ground.map(g -> g.view(passage.planet(), begin(passage)));
        Optional<GroundView> last = ground.map(g -> g.view(passage.planet(), end(passage)));
        return new MoonEvent(passage, first, last, Hindrance.at(moments(passage), passage.planet(), ground));
    }

    /** When there is something to see, were the planet up: all along for what happens before the disc, at the ends for what happens behind. */
    private static List<UtcTime> moments(Passage passage) {
        List<UtcTime> moments = new ArrayList<>();
        if (isWhollyHidden(passage)) {
            return moments;
        }
        if (passage.notes().stream().noneMatch(BEGIN_HIDDEN::contains)) {
            moments.add(begin(passage));
        }
        if (passage.notes().stream().noneMatch(END_HIDDEN::contains)) {
            moments.add(end(passage));
        }
        if (!passage.kind().behind()) {
            double lengthS = end(passage).clockSecondsSince(begin(passage));
            for (int i = 1; i < STEPS; i++) {
                moments.add(begin(passage).plusClockSeconds(lengthS * i / STEPS));
            }
        }
        return moments;
    }

    private static boolean isWhollyHidden(Passage passage) {
        return passage.notes().stream().anyMatch(WHOLLY::contains);
    }

    /** First touch, the middle where there is none. */
    static UtcTime begin(Passage passage) {
        return passage.contact(ContactKind.T1)
                .map(Contact::time)
                .orElse(passage.mid().time());
    }

    /** Last touch, the middle where there is none. */
    static UtcTime end(Passage passage) {
        return passage.contact(ContactKind.T4)
                .map(Contact::time)
                .orElse(passage.mid().time());
    }

    @Override
    public EventKind kind() {
        return passage.kind();
    }

    @Override
    public String what() {
        return TEXTS.text("kind." + passage.kind().id());
    }

    @Override
    public String moonName() {
        return passage.moon().name();
    }

    @Override
    public Set<String> moonIds() {
        return Set.of(passage.moon().id());
    }

    @Override
    public UtcTime from() {
        return begin(passage);
    }

    @Override
    public UtcTime mid() {
        return passage.mid().time();
    }

    @Override
    public UtcTime to() {
        return end(passage);
    }

    @Override
    public Optional<Double> sigmaS() {
        return passage.sigmaS();
    }

    /** The middle of what is before the disc, the seen end of what is behind. */
    @Override
    public UtcTime shown() {
        if (!passage.kind().behind()) {
            return mid();
        }
        return passage.notes().stream().anyMatch(BEGIN_HIDDEN::contains) ? to() : from();
    }

    @Override
    public boolean isBeginSeen() {
        return !isWhollyHidden(passage) && passage.notes().stream().noneMatch(BEGIN_HIDDEN::contains);
    }

    @Override
    public boolean isEndSeen() {
        return !isWhollyHidden(passage) && passage.notes().stream().noneMatch(END_HIDDEN::contains);
    }

    @Override
    public List<Touch> touches() {
        List<Touch> touches = new ArrayList<>();
        for (ContactKind kind : TOUCHES) {
            passage.contact(kind)
                    .ifPresent(c -> touches.add(new Touch("touch." + kind.name().toLowerCase(Locale.ROOT), c)));
        }
        return touches;
    }

    @Override
    public String words() {
        List<String> said = new ArrayList<>();
        hindrance.filter(h -> h != Hindrance.HIDDEN).map(Hindrance::words).ifPresent(said::add);
        if (!passage.notes().isEmpty()) {
            said.add(passage.words());
        }
        return String.join("; ", said);
    }
}
