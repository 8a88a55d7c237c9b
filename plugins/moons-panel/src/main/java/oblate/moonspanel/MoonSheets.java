/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JTabbedPane;
import oblate.drift.timing.Timing;
import oblate.sky.UtcTime;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** The sheets under the drawing: events to come and gone, what was observed of them against what was foretold, and what a person saw before and after their touches. */
final class MoonSheets extends JTabbedPane {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MoonSheets.class);
    private final EventLists lists;
    private final TimingPane timings;
    private final StatePane states;

    /**
     * @param whenChosen gets the event that is chosen
     * @param whenTimed gets the timing that is chosen
     */
    MoonSheets(
            PanelContext context,
            EventBands.Listener bands,
            Consumer<Optional<Happening>> whenChosen,
            Consumer<Timing> whenTimed) {
        setName("moons.tabs");
        states = new StatePane(context, this::choose);
        lists = new EventLists(context::palette, bands, event -> {
            states(event);
            whenChosen.accept(event);
        });
        timings = new TimingPane(context, whenTimed, () -> setSelectedComponent(states));
        addTab(TEXTS.text("tab.events"), lists);
        addTab(TEXTS.text("tab.timings"), timings);
        addTab(TEXTS.text("tab.states"), states);
    }

    private void states(Optional<Happening> event) {
        states.choose(event);
    }

    /** A search for events has begun. */
    void showSearching(Wish wish, List<UtcTime> pictures) {
        timings.show(wish.planet());
        lists.showSearching(wish);
        lists.showPictures(pictures);
    }

    void show(Found found) {
        lists.show(found);
        states.show(found);
    }

    void instant(UtcTime time) {
        lists.instant(time);
        states.instant(time);
    }

    /** Chooses an event that is listed. */
    void choose(Happening event) {
        lists.choose(event);
    }

    Optional<Happening> chosen() {
        return lists.chosen();
    }
}
