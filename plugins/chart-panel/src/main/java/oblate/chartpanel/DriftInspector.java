/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import oblate.drift.Drift;
import oblate.drift.DriftModel;
import oblate.drift.Prediction;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.FoldSection;
import oblate.workbench.pictures.FactList;
import oblate.workbench.words.Texts;

/** The chosen feature's figures, the kinds of motion compared, and what the ladder shows. */
final class DriftInspector extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(DriftInspector.class);
    private final transient PanelContext context;

    DriftInspector(PanelContext context) {
        super(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        this.context = context;
        setOpaque(false);
    }

    /**
     * Shows a feature.
     *
     * @param chosen the feature; empty for none
     * @param until instant a prediction is wanted for
     * @param mark the chosen mark in words; empty for none
     * @param ladder what the ladder shows, in sentences
     */
    void show(Optional<Fitted> chosen, Optional<java.time.Instant> until, String mark, List<String> ladder) {
        removeAll();
        FactList list = new FactList(context::palette);
        if (chosen.isEmpty()) {
            list.remark(TEXTS.text("choose.feature"));
            add(section("drift", TEXTS.text("section.drift"), list), "wmin 0");
        } else {
            Fitted one = chosen.get();
            if (!mark.isEmpty()) {
                list.fact(TEXTS.text("fact.mark"), mark);
            }
            one.drift().ifPresentOrElse(d -> figures(list, d, until), () -> list.alarm(one.why()));
            add(section("drift", one.name(), list), "wmin 0");
            one.drift().filter(d -> d.alternatives().size() > 1).ifPresent(d -> {
                FactList kinds = new FactList(context::palette);
                kinds.part(new ModelBars(d.alternatives(), context::palette));
                add(section("kinds", TEXTS.text("section.kinds"), kinds), "wmin 0");
            });
        }
        if (!ladder.isEmpty()) {
            FactList words = new FactList(context::palette);
            ladder.forEach(words::remark);
            add(section("ladder", TEXTS.text("section.ladder"), words), "wmin 0");
        }
        revalidate();
        repaint();
    }

    /** A section that stays folded as a person left it. */
    private FoldSection section(String key, String title, FactList content) {
        FoldSection section = new FoldSection(title, content);
        section.setOpen(context.settings().flag("open." + key, true));
        section.whenFolded(open -> context.settings().keep("open." + key, open));
        return section;
    }

    private static void figures(FactList list, Drift drift, Optional<java.time.Instant> until) {
        drift.warnings().forEach(list::alarm);
        list.figure(
                TEXTS.text("fact.rate"),
                Figures.withSigma(drift.rateDegPer30Days(), drift.sigmaRateDegPer30Days(), "°/30 d") + "\n"
                        + Figures.withSigma(drift.rateDegPerDay(), drift.sigmaRateDegPerDay(), "°/d"));
        motion(list, drift.motion());
        list.figure(TEXTS.text("fact.longitude"), Figures.longitude(drift.lonDeg(), drift.sigmaLonDeg()));
        list.fact(TEXTS.text("fact.on"), Figures.dayUt(drift.epochUtc()) + ", " + Figures.clockUt(drift.epochUtc()));
        list.fact(TEXTS.text("fact.system"), drift.series().system().label());
        until.ifPresent(time -> {
            Prediction p = drift.at(time);
            list.figure(TEXTS.text("fact.expected"), Figures.longitude(p.lonDeg(), p.sigmaLonDeg()));
            list.fact(TEXTS.text("fact.on"), Figures.dayUt(time) + ", " + Figures.clockUt(time));
        });
        list.figure(TEXTS.text("fact.period"), Figures.period(drift.periodS(), drift.sigmaPeriodS()));
        drift.speedMS()
                .ifPresent(v -> list.figure(
                        TEXTS.text("fact.speed"),
                        Figures.withSigma(v, drift.sigmaSpeedMS().orElse(0), "m/s")));
        drift.meanLatDeg()
                .ifPresent(v -> list.figure(
                        TEXTS.text("fact.latitude"),
                        Figures.latitudeGraphic(v, drift.sigmaMeanLatDeg().orElse(0))));
        int all = drift.series().points().size();
        list.fact(
                TEXTS.text("fact.marks"),
                TEXTS.text(
                        "fact.marks.counted",
                        Integer.toString(all - drift.rejected()),
                        Integer.toString(drift.rejected())));
        list.figure(TEXTS.text("fact.scatter"), Figures.fixed(drift.rmsDeg(), 2) + "°");
    }

    /** The kind of motion with its own numbers. */
    private static void motion(FactList list, DriftModel motion) {
        if (motion instanceof DriftModel.Acceleration a) {
            list.figure(
                    TEXTS.text("fact.gains"),
                    Figures.withSigma(a.accelerationDegPerDay2(), a.sigmaAccelerationDegPerDay2(), "°/d each day"));
        } else if (motion instanceof DriftModel.RateChange c) {
            list.figure(
                    TEXTS.text("fact.before"),
                    Figures.withSigma(30 * c.beforeDegPerDay(), 30 * c.sigmaBeforeDegPerDay(), "°/30 d"));
            list.figure(
                    TEXTS.text("fact.after"),
                    Figures.withSigma(30 * c.afterDegPerDay(), 30 * c.sigmaAfterDegPerDay(), "°/30 d"));
            list.figure(
                    TEXTS.text("fact.changed"),
                    Figures.dayUt(c.changeUtc()) + "\n± " + Figures.fixed(c.sigmaChangeDays(), 1) + " d");
        } else if (motion instanceof DriftModel.Oscillation o) {
            list.figure(TEXTS.text("fact.swings"), Figures.withSigma(o.amplitudeDeg(), o.sigmaAmplitudeDeg(), "°"));
            list.figure(TEXTS.text("fact.in"), Figures.withSigma(o.periodDays(), o.sigmaPeriodDays(), "d"));
        }
    }
}
