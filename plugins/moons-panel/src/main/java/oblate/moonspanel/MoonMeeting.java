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
import oblate.sky.event.EventKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.MutualContact;
import oblate.sky.event.MutualEvent;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/**
 * One moon occults or eclipses another, with what the site makes of it. Immutable.
 *
 * @param event the event
 * @param begin planet and Sun over the site at its first touch; none without a site
 * @param end the same at its last touch
 * @param hindrance why nothing of it can be seen; none when something can
 */
record MoonMeeting(
        MutualEvent event, Optional<GroundView> begin, Optional<GroundView> end, Optional<Hindrance> hindrance)
        implements Happening {
    private static final Texts TEXTS = Texts.of(MoonMeeting.class);

    static MoonMeeting of(MutualEvent event, Optional<GroundSky> ground) {
        List<UtcTime> moments = new ArrayList<>();
        if (!isWhollyHidden(event)) {
            moments.addAll(List.of(from(event), event.mid().time(), to(event)));
        }
        return new MoonMeeting(
                event,
                ground.map(g -> g.view(event.planet(), from(event))),
                ground.map(g -> g.view(event.planet(), to(event))),
                Hindrance.at(moments, event.planet(), ground));
    }

    private static boolean isWhollyHidden(MutualEvent event) {
        return event.notes().contains(EventNote.WHOLLY_BEHIND_PLANET)
                || event.notes().contains(EventNote.WHOLLY_IN_SHADOW);
    }

    private static UtcTime from(MutualEvent event) {
        return first(event, MutualContact.PENUMBRA_T1, MutualContact.T1);
    }

    private static UtcTime to(MutualEvent event) {
        return first(event, MutualContact.PENUMBRA_T4, MutualContact.T4);
    }

    private static UtcTime first(MutualEvent event, MutualContact one, MutualContact other) {
        return event.contact(one)
                .or(() -> event.contact(other))
                .map(Contact::time)
                .orElse(event.mid().time());
    }

    @Override
    public EventKind kind() {
        return event.kind();
    }

    @Override
    public String what() {
        return TEXTS.text("meeting." + event.kind().id(), event.front().name());
    }

    @Override
    public String moonName() {
        return event.back().name();
    }

    @Override
    public Set<String> moonIds() {
        return Set.of(event.front().id(), event.back().id());
    }

    @Override
    public UtcTime from() {
        return from(event);
    }

    @Override
    public UtcTime mid() {
        return event.mid().time();
    }

    @Override
    public UtcTime to() {
        return to(event);
    }

    @Override
    public Optional<Double> sigmaS() {
        return Optional.of(event.mid().sigmaS());
    }

    @Override
    public UtcTime shown() {
        return mid();
    }

    @Override
    public boolean isBeginSeen() {
        return !isWhollyHidden(event) && !event.notes().contains(EventNote.BACK_COMES_OUT_OF_SHADOW);
    }

    @Override
    public boolean isEndSeen() {
        return !isWhollyHidden(event) && !event.notes().contains(EventNote.BACK_GOES_INTO_SHADOW);
    }

    @Override
    public List<Touch> touches() {
        List<Touch> touches = new ArrayList<>();
        for (MutualContact kind : MutualContact.values()) {
            if (kind == MutualContact.T3) {
                touches.add(new Touch("touch.mid", event.mid()));
            }
            event.contact(kind)
                    .ifPresent(c -> touches.add(new Touch("touch." + kind.name().toLowerCase(Locale.ROOT), c)));
        }
        return touches;
    }

    /** The light that the hidden moon loses, too. */
    @Override
    public String words() {
        List<String> said = new ArrayList<>();
        hindrance.filter(h -> h != Hindrance.HIDDEN).map(Hindrance::words).ifPresent(said::add);
        said.add(TEXTS.text(
                "meeting.drop", Figures.withSigma(100 * event.depthBack(), 100 * event.sigmaDepthBack(), "%")));
        if (event.kind() == EventKind.ECLIPSE && !event.umbral()) {
            said.add(EventNote.PENUMBRA_ONLY.words());
        }
        if (!event.words().isEmpty()) {
            said.add(event.words());
        }
        return String.join("; ", said.stream().distinct().toList());
    }
}
