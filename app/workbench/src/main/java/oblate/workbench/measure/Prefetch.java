/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.base.Progress;
import oblate.disc.FitOutcome;
import oblate.image.CaptureTime;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/**
 * Decodes and fits the pictures that will be opened next, while a person looks at the one before. What is no longer wanted is stopped and forgotten; nothing is
 * put into the archive before the picture is opened. On the event thread only.
 */
final class Prefetch {
    private static final Texts TEXTS = Texts.of(Prefetch.class);
    /** Pictures beyond this are not held in memory ahead (samples). */
    private static final long MOST_SAMPLES = 50_000_000;

    private final PanelContext context;
    private final Map<Long, Ready> ready = new HashMap<>();
    private final Map<Long, Job> underWay = new HashMap<>();
    private List<Long> wanted = List.of();

    Prefetch(PanelContext context) {
        this.context = context;
    }

    /**
     * A picture made ready.
     *
     * @param opening the picture
     * @param outcome its fit; empty when it had one already or cannot be fitted
     */
    record Ready(PictureOpening opening, Optional<FitOutcome> outcome) {}

    /** Makes these ready, first things first, and forgets all others. */
    void plan(List<ArchivedPicture> next, boolean fit) {
        wanted = next.stream().map(ArchivedPicture::id).toList();
        ready.keySet().retainAll(wanted);
        underWay.entrySet().removeIf(job -> {
            boolean unwanted = !wanted.contains(job.getKey());
            if (unwanted) {
                job.getValue().stop();
            }
            return unwanted;
        });
        for (ArchivedPicture picture : next) {
            boolean small = (long) picture.widthPx() * picture.heightPx() * picture.channels() <= MOST_SAMPLES;
            if (small && !ready.containsKey(picture.id()) && !underWay.containsKey(picture.id())) {
                start(picture, fit);
            }
        }
    }

    private void start(ArchivedPicture picture, boolean fit) {
        String time =
                picture.time().map(CaptureTime::midUtc).map(Figures::clockUt).orElse(picture.originalName());
        Job job = context.background()
                .run(TEXTS.text("prefetch", time), progress -> make(picture, fit, progress), made -> {
                    if (wanted.contains(picture.id())) {
                        ready.put(picture.id(), made);
                    }
                });
        underWay.put(picture.id(), job);
        job.whenEnded(() -> underWay.remove(picture.id(), job));
    }

    private Ready make(ArchivedPicture picture, boolean fit, Progress progress) {
        if (progress.isCancelled()) {
            return new Ready(
                    new PictureOpening(Optional.empty(), Optional.empty(), Optional.empty()), Optional.empty());
        }
        PictureOpening opening = PictureOpening.of(context.workbench(), picture);
        Optional<FitOutcome> outcome = opening.picture()
                .filter(p -> fit && p.fit().isEmpty() && !progress.isCancelled())
                .flatMap(p -> p.disc().map(disc -> context.workbench()
                        .fitter()
                        .fit(p.pixels(), disc, p.hints(), progress)
                        .outcome()));
        return new Ready(opening, outcome);
    }

    /** What was made ready of a picture; it is handed out once. */
    Optional<Ready> take(long pictureId) {
        return Optional.ofNullable(ready.remove(pictureId))
                .filter(r -> r.opening().picture().isPresent());
    }

    /** Stops what is under way, so that what a person waits for comes first; what is ready stays. */
    void makeWay() {
        underWay.values().forEach(Job::stop);
        underWay.clear();
    }
}
