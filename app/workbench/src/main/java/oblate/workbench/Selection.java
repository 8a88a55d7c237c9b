/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;

/** What is chosen in the window, one for all panels. On the event thread only. */
public final class Selection {
    private final Listeners listeners = new Listeners();
    private Optional<Long> pictureId = Optional.empty();
    private Optional<String> featureName = Optional.empty();
    private Optional<Long> markId = Optional.empty();
    private Optional<Span> span = Optional.empty();

    /**
     * A stretch of time.
     *
     * @param from its first instant (UTC)
     * @param to its last instant (UTC), not before the first
     */
    public record Span(Instant from, Instant to) {
        /** Puts the earlier instant first. */
        public Span {
            if (to.isBefore(from)) {
                Instant later = from;
                from = to;
                to = later;
            }
        }

        /** Whether an instant lies in it. */
        public boolean contains(Instant time) {
            return !time.isBefore(from) && !time.isAfter(to);
        }
    }

    /** Number of the chosen picture. */
    public Optional<Long> pictureId() {
        return pictureId;
    }

    /** Name of the chosen feature. */
    public Optional<String> featureName() {
        return featureName;
    }

    /** Number of the chosen mark, which is one of the chosen picture. */
    public Optional<Long> markId() {
        return markId;
    }

    /** Chooses a picture; a mark of another one is chosen no more. */
    public void choosePicture(long id) {
        change(Optional.of(id), featureName, pictureId.equals(Optional.of(id)) ? markId : Optional.empty());
    }

    /** Chooses no picture. */
    public void chooseNoPicture() {
        change(Optional.empty(), featureName, Optional.empty());
    }

    /** Chooses a feature; empty for none. */
    public void chooseFeature(Optional<String> name) {
        change(pictureId, name, markId);
    }

    /** The stretch of time looked at; empty for all of it. */
    public Optional<Span> span() {
        return span;
    }

    /** Chooses a stretch of time; empty for all of it. */
    public void chooseSpan(Optional<Span> chosen) {
        if (!span.equals(chosen)) {
            span = chosen;
            tell();
        }
    }

    /**
     * Chooses a mark with its picture, and its feature where it has one.
     *
     * @param picture number of its picture
     * @param feature name of its feature; empty leaves the chosen feature as it is
     * @param mark number of the mark
     */
    public void chooseMark(long picture, Optional<String> feature, long mark) {
        change(Optional.of(picture), feature.or(() -> featureName), Optional.of(mark));
    }

    /** Chooses no mark; picture and feature stay. */
    public void chooseNoMark() {
        change(pictureId, featureName, Optional.empty());
    }

    private void change(Optional<Long> picture, Optional<String> feature, Optional<Long> mark) {
        if (Objects.equals(picture, pictureId)
                && Objects.equals(feature, featureName)
                && Objects.equals(mark, markId)) {
            return;
        }
        pictureId = picture;
        featureName = feature;
        markId = mark;
        tell();
    }

    private void tell() {
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
