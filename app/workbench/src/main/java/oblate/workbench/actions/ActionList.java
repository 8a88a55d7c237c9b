/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.actions;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.swing.Action;

/** All actions there are at this moment, by the menu they stand in: those of the window and those of its panels. Immutable. */
public final class ActionList {
    private final Map<String, List<Action>> sections = new LinkedHashMap<>();

    /** One action with the name of its menu. */
    public record Entry(String section, Action action) {}

    /** With a section's actions more. */
    public ActionList with(String section, List<? extends Action> actions) {
        ActionList more = new ActionList();
        sections.forEach((name, some) -> more.sections.put(name, new ArrayList<>(some)));
        more.sections.computeIfAbsent(section, name -> new ArrayList<>()).addAll(actions);
        return more;
    }

    /** Names of the sections, in order. */
    public List<String> sections() {
        return List.copyOf(sections.keySet());
    }

    /** A section's actions, in order. */
    public List<Action> of(String section) {
        return List.copyOf(sections.getOrDefault(section, List.of()));
    }

    /** Those in which all words typed occur; all of them for no word. Names that begin with what is typed come first. */
    public List<Entry> matching(String typed) {
        List<Entry> first = new ArrayList<>();
        List<Entry> rest = new ArrayList<>();
        String begun = typed.strip().toLowerCase(java.util.Locale.ROOT);
        sections.forEach((section, actions) -> actions.stream()
                .filter(a -> begun.isEmpty() || Deed.matches(a, section, begun))
                .forEach(a -> {
                    boolean begins = String.valueOf(a.getValue(Action.NAME))
                            .toLowerCase(java.util.Locale.ROOT)
                            .startsWith(begun);
                    (begins ? first : rest).add(new Entry(section, a));
                }));
        first.addAll(rest);
        return first;
    }
}
