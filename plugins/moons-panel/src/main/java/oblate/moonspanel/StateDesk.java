/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import oblate.archive.Archive;
import oblate.archive.SeenState;
import oblate.base.Progress;
import oblate.drift.timing.MoonState;
import oblate.drift.timing.MoonTimings;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.Shots;
import oblate.drift.timing.StateSaid;
import oblate.drift.timing.TimedPoint;
import oblate.drift.timing.Timing;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.workbench.Edit;
import oblate.workbench.EditHistory;
import oblate.workbench.words.Texts;

/**
 * Archive work of the sheet of states: says them by new rows, and tells what they say of an event's touches. Slow: off the event thread.
 *
 * @param archive the open archive
 * @param sky foretells
 * @param measurer who says so
 */
record StateDesk(Archive archive, Sky sky, String measurer) {
    private static final Texts TEXTS = Texts.of(StateDesk.class);

    static Phenomenon phenomenon(MoonEvent event) {
        return Phenomenon.valueOf(event.kind().name());
    }

    /**
     * Says of some pictures of one event what was seen, or that nothing is said.
     *
     * @param lines at least one
     * @return what can be undone; how many pictures it changed
     */
    EditHistory.Done<Integer> say(List<StateLine> lines, Optional<MoonState> state) {
        List<Edit.StateChange> changes = new ArrayList<>();
        List<SeenState> known =
                archive.seenStates(lines.get(0).event().passage().planet().id());
        for (StateLine line : lines) {
            SeenState word = SeenState.in(
                    line.picture().id(),
                    line.event().passage().planet().id(),
                    line.event().passage().moon().id(),
                    line.event().kind().id(),
                    state.map(MoonState::id).orElse(SeenState.OPEN),
                    measurer);
            Optional<SeenState> before =
                    known.stream().filter(word::isAboutTheSame).findFirst();
            boolean isNew = before.map(b -> !b.state().equals(word.state())).orElse(!word.isOpen());
            if (isNew) {
                changes.add(new Edit.StateChange(before, word));
            }
        }
        if (changes.isEmpty()) {
            return new EditHistory.Done<>(Optional.empty(), 0);
        }
        archive.saySeen(changes.stream().map(Edit.StateChange::after).toList());
        return EditHistory.Done.of(new Edit.StatesSeen(changes), changes.size());
    }

    /** What the states of an event's pictures say of its touches, in words; empty when they say nothing. */
    List<String> results(List<StateLine> lines) {
        Shots shots = new Shots(archive);
        List<StateSaid> states = new ArrayList<>();
        for (StateLine line : lines) {
            line.said()
                    .flatMap(s -> shots.of(line.picture()).map(shot -> said(line.event(), s, shot)))
                    .ifPresent(states::add);
        }
        if (states.isEmpty()) {
            return List.of();
        }
        PlanetModel planet = lines.get(0).event().passage().planet();
        return new MoonTimings(sky, planet)
                .of(List.of(), states, Progress.SILENT).events().stream()
                        .filter(t -> t.point() != TimedPoint.MID)
                        .map(StateDesk::words)
                        .toList();
    }

    private static StateSaid said(MoonEvent event, SeenState state, oblate.drift.timing.Shot shot) {
        Phenomenon about = phenomenon(event);
        return new StateSaid(
                shot,
                event.passage().moon(),
                Optional.of(about),
                MoonState.valueOf(state.state().toUpperCase(Locale.ROOT)),
                about == Phenomenon.SHADOW_TRANSIT);
    }

    private static String words(Timing t) {
        String point = TEXTS.text(
                "states.result.point",
                TEXTS.text("touch." + t.point().id()).toLowerCase(Locale.ROOT),
                TEXTS.text("point." + t.point().id()));
        if (t.hasTime()) {
            String result = TEXTS.text("states.result", point, TimingRows.oMinusP(t));
            return t.doubts().isEmpty() ? result : result + " (" + doubts(t) + ")";
        }
        return t.doubts().isEmpty()
                ? TEXTS.text("states.result.limit", point, TimingRows.oMinusP(t))
                : TEXTS.text("states.result.doubt", point, doubts(t));
    }

    private static String doubts(Timing t) {
        return t.doubts().stream().collect(Collectors.joining("; "));
    }
}
