/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.workbench.Selection;

/**
 * Which pictures of the wall are chosen: several, of which the window's chosen picture is the last one pointed at. On the event thread only.
 */
final class ChosenPictures {
    private final Selection selection;
    private final Set<Long> ids = new LinkedHashSet<>();
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<Long> anchor = Optional.empty();
    private boolean own;

    ChosenPictures(Selection selection) {
        this.selection = selection;
        selection.whenChanged(this::follow);
    }

    /** Somebody else in the window chose a picture: then it is the only one. */
    private void follow() {
        if (own) {
            return;
        }
        Optional<Long> lead = selection.pictureId();
        if (lead.isPresent() && ids.contains(lead.get())) {
            return;
        }
        ids.clear();
        lead.ifPresent(ids::add);
        anchor = lead;
        tell();
    }

    Set<Long> ids() {
        return Set.copyOf(ids);
    }

    boolean contains(long id) {
        return ids.contains(id);
    }

    /** Where a range begins. */
    Optional<Long> anchor() {
        return anchor.or(selection::pictureId);
    }

    /** Chooses one and no other. */
    void only(long id) {
        anchor = Optional.of(id);
        set(List.of(id), id);
    }

    /** Takes one in, or leaves it out if it was in. */
    void toggle(long id) {
        anchor = Optional.of(id);
        List<Long> all = new ArrayList<>(ids);
        if (!all.remove(id)) {
            all.add(id);
        }
        set(all, all.contains(id) ? id : all.isEmpty() ? id : all.get(all.size() - 1));
    }

    /** Chooses several, with the one pointed at. */
    void set(Collection<Long> all, long lead) {
        ids.clear();
        ids.addAll(all);
        own = true;
        selection.choosePicture(lead);
        own = false;
        tell();
    }

    /** Called after every change. */
    void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
