/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.archive.SeenState;
import oblate.sky.UtcTime;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/**
 * A picture about an event, with what was seen in it.
 *
 * @param picture a dated picture
 * @param event the event
 * @param said the newest word; empty when nothing is said
 */
record StateLine(ArchivedPicture picture, MoonEvent event, Optional<SeenState> said) {
    private static final Texts TEXTS = Texts.of(StateLine.class);
    private static final int MINUTE_S = 60;

    /** The pictures about an event, in order of time. */
    static List<StateLine> of(MoonEvent event, List<ArchivedPicture> near, List<SeenState> states) {
        return near.stream()
                .map(p -> new StateLine(
                        p, event, states.stream().filter(s -> isOf(s, p, event)).findFirst()))
                .toList();
    }

    private static boolean isOf(SeenState state, ArchivedPicture picture, MoonEvent event) {
        return state.pictureId().equals(Optional.of(picture.id()))
                && state.moonId().equals(event.passage().moon().id())
                && state.phenomenon().equals(event.kind().id());
    }

    Instant time() {
        return picture.time().orElseThrow().midUtc();
    }

    String clock() {
        return EventClock.clock(UtcTime.of(time()));
    }

    String state() {
        return said.map(s -> TEXTS.text("state." + s.phenomenon() + "." + s.state()))
                .orElseGet(() -> TEXTS.text("states.unsaid"));
    }

    String by() {
        return said.map(SeenState::seenBy).orElse("");
    }

    /** How long before or after the nearest foretold touch it was taken: "2 min 5 s before outer touch". */
    String when() {
        Happening.Touch nearest = event.touches().stream()
                .min(Comparator.comparingDouble(t -> Math.abs(after(t))))
                .orElseThrow();
        double after = after(nearest);
        long seconds = Math.round(Math.abs(after));
        String length = seconds < MINUTE_S
                ? TEXTS.text("states.seconds", Long.toString(seconds))
                : TEXTS.text("states.minutes", Long.toString(seconds / MINUTE_S), Figures.fixed(seconds % MINUTE_S, 0));
        String touch = TEXTS.text(nearest.key()).toLowerCase(java.util.Locale.ROOT);
        return TEXTS.text(after < 0 ? "states.before" : "states.after", length, touch);
    }

    private double after(Happening.Touch touch) {
        return UtcTime.of(time()).clockSecondsSince(touch.contact().time());
    }
}
