/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.List;
import java.util.Optional;
import javax.swing.Timer;
import oblate.archive.Archive;
import oblate.drift.Drift;
import oblate.report.SeriesChart;
import oblate.report.ladder.LadderBuilder;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderFrame;
import oblate.report.ladder.StripCache;
import oblate.workbench.Bearing;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** Builds the ladder of the chosen feature in the background, with strips made before kept; a new wish stops the work for the old one. On the event thread. */
final class LadderWork {
    private static final Texts TEXTS = Texts.of(LadderWork.class);
    private static final int PATIENCE_MS = 350;
    private final PanelContext context;
    private final Runnable whenChanged;
    private final StripCache cache = new StripCache();
    private final Timer timer;
    private Optional<Wish> wish = Optional.empty();
    private Optional<Job> job = Optional.empty();
    private Optional<LadderChart> ladder = Optional.empty();
    private String words = "";

    /**
     * A ladder as it is wished for.
     *
     * @param fitted the feature the frame moves with
     * @param range stretch of time
     * @param mostStrips strips there is room for
     */
    record Wish(Fitted fitted, Optional<DriftScene.Range> range, int mostStrips) {}

    /**
     * @param whenChanged told when the ladder or its words have changed
     */
    LadderWork(PanelContext context, Runnable whenChanged) {
        this.context = context;
        this.whenChanged = whenChanged;
        timer = new Timer(PATIENCE_MS, e -> build());
        timer.setRepeats(false);
    }

    /** The ladder, once there is one. */
    Optional<LadderChart> ladder() {
        return ladder;
    }

    /** What is said in its place; empty while no feature is chosen, which leaves the chart the whole width. */
    String words() {
        return words;
    }

    /** Wants no ladder. */
    void none() {
        stop();
        wish = Optional.empty();
        tell(Optional.empty(), "");
    }

    /** Wants the ladder of a feature; empty when none is chosen. */
    void want(Optional<Fitted> fitted, Optional<DriftScene.Range> range, int mostStrips) {
        stop();
        if (fitted.isEmpty()) {
            wish = Optional.empty();
            tell(Optional.empty(), "");
            return;
        }
        if (fitted.get().drift().isEmpty()) {
            wish = Optional.empty();
            tell(Optional.empty(), TEXTS.text("ladder.no.drift", fitted.get().why()));
            return;
        }
        boolean same =
                wish.map(w -> w.fitted().name().equals(fitted.get().name())).orElse(false);
        wish = Optional.of(new Wish(fitted.get(), range, mostStrips));
        tell(same ? ladder : Optional.empty(), TEXTS.text("ladder.building"));
        if (same) {
            // Time that is being moved or zoomed moves on; the same feature's strips can wait until it rests.
            timer.restart();
        } else {
            build();
        }
    }

    private void stop() {
        timer.stop();
        job.ifPresent(Job::stop);
        job = Optional.empty();
    }

    private void tell(Optional<LadderChart> fresh, String said) {
        ladder = fresh;
        words = said;
        whenChanged.run();
    }

    private void build() {
        if (wish.isEmpty()) {
            return;
        }
        Wish wanted = wish.get();
        Drift drift = wanted.fitted().drift().orElseThrow();
        if (drift.meanLatDeg().isEmpty()) {
            tell(
                    Optional.empty(),
                    TEXTS.text("ladder.no.latitude", wanted.fitted().name()));
            return;
        }
        double lat = drift.meanLatDeg().getAsDouble();
        LadderFrame frame = LadderFrame.movingWith(
                drift,
                LadderFrame.USUAL_WIDTH_DEG,
                Math.max(-90, lat - LadderFrame.USUAL_HALF_HEIGHT_DEG),
                Math.min(90, lat + LadderFrame.USUAL_HALF_HEIGHT_DEG));
        Archive archive = context.archive();
        boolean southUp = context.bearing() == Bearing.SOUTH_UP;
        job = Optional.of(context.background()
                .run(
                        TEXTS.text("ladder.job", wanted.fitted().name()),
                        progress -> new LadderBuilder(
                                        archive,
                                        context.sky(),
                                        context.workbench().reader(),
                                        cache)
                                .build(
                                        frame,
                                        time -> wanted.range()
                                                .map(r -> time.toEpochMilli() >= r.fromMs()
                                                        && time.toEpochMilli() <= r.toMs())
                                                .orElse(true),
                                        wanted.mostStrips(),
                                        progress),
                        built -> built(wanted, frame, built, southUp)));
        job.get().whenEnded(() -> {
            if (job.map(Job::isCancelled).orElse(false) && wish.equals(Optional.of(wanted))) {
                tell(Optional.empty(), TEXTS.text("ladder.stopped"));
            }
        });
    }

    private void built(Wish wanted, LadderFrame frame, LadderBuilder.Built built, boolean southUp) {
        if (!wish.equals(Optional.of(wanted))) {
            return;
        }
        if (built.strips().isEmpty()) {
            tell(
                    Optional.empty(),
                    TEXTS.text("ladder.no.pictures", wanted.fitted().name(), String.join("; ", built.remarks())));
            return;
        }
        List<SeriesChart.Feature> features = List.of(new SeriesChart.Feature(
                wanted.fitted().series(), wanted.fitted().drift()));
        tell(
                Optional.of(new LadderChart(
                        frame,
                        built.strips(),
                        List.of(wanted.fitted().name()),
                        LadderChart.marksOf(features),
                        built.remarks(),
                        southUp)),
                "");
    }
}
