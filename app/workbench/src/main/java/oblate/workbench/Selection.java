/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;

/** What is chosen in the window, one for all panels. On the event thread only. */
public final class Selection {
    private final Listeners listeners = new Listeners();
    private Optional<Long> pictureId = Optional.empty();
    private Optional<String> featureName = Optional.empty();

    /** Number of the chosen picture. */
    public Optional<Long> pictureId() {
        return pictureId;
    }

    /** Name of the chosen feature. */
    public Optional<String> featureName() {
        return featureName;
    }

    /** Chooses a picture. */
    public void choosePicture(long id) {
        change(Optional.of(id), featureName);
    }

    /** Chooses no picture. */
    public void chooseNoPicture() {
        change(Optional.empty(), featureName);
    }

    /** Chooses a feature; empty for none. */
    public void chooseFeature(Optional<String> name) {
        change(pictureId, name);
    }

    private void change(Optional<Long> picture, Optional<String> feature) {
        if (Objects.equals(picture, pictureId) && Objects.equals(feature, featureName)) {
            return;
        }
        pictureId = picture;
        featureName = feature;
        listeners.tell();
    }

    /** Called after every change. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    /** Forgets the listeners of a jar that was switched off. */
    void forget(Predicate<Runnable> its) {
        listeners.forget(its);
    }
}
