/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.sky.GroundCourse;
import oblate.sky.GroundEvent;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.Passage;
import oblate.workbench.look.Figures;
import oblate.workbench.look.FoldSection;
import oblate.workbench.look.Palette;
import oblate.workbench.pictures.FactList;
import oblate.workbench.words.Texts;

/** The inspector of the night: what was chosen, the night's figures, and what counts as a window. */
final class NightFigures extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NightFigures.class);
    private static final String WIDE = "wmin 0";
    private final transient Supplier<Palette> palette;
    private final JPanel chosen = place("tonight.chosen");
    private final JPanel night = place("tonight.figures");
    private final FoldSection chosenSection = new FoldSection(TEXTS.text("section.chosen"), chosen);

    NightFigures(Supplier<Palette> palette, JComponent limits) {
        super(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        this.palette = palette;
        setOpaque(false);
        add(chosenSection, WIDE);
        add(new FoldSection(TEXTS.text("section.night"), night), WIDE);
        add(new FoldSection(TEXTS.text("section.limits"), limits), WIDE);
    }

    private static JPanel place(String name) {
        JPanel place = new JPanel(new MigLayout("insets 0, gap 4, wrap 1, fillx", "[grow,fill]"));
        place.setName(name);
        place.setOpaque(false);
        return place;
    }

    private static void put(JPanel place, JComponent content) {
        place.removeAll();
        place.add(content, WIDE);
        place.revalidate();
        place.repaint();
    }

    void show(NightSheet sheet) {
        PlanNight of = sheet.night();
        FactList list = new FactList(palette);
        list.figure(TEXTS.text("fact.window"), Say.windows(of)).remark(Say.rule(sheet.wish()));
        of.bestHour().ifPresent(h -> list.figure(TEXTS.text("fact.best"), Say.span(h)));
        of.best().ifPresent(b -> list.figure("", Say.stand(b)));
        list.figure(sheet.wish().planet().label(), String.join("\n", course(of.course())));
        list.figure(TEXTS.text("fact.sun"), String.join("\n", sun(of.sun())));
        put(night, list);
    }

    void showNothing() {
        put(night, new FactList(palette));
        choose(Optional.empty());
    }

    private static List<String> course(GroundCourse course) {
        if (course.neverUp()) {
            return List.of(TEXTS.text("course.never"));
        }
        List<String> said = new ArrayList<>();
        if (course.alwaysUp()) {
            said.add(TEXTS.text("course.always"));
        }
        for (GroundEvent e : course.events()) {
            switch (e.kind()) {
                case RISE, SET -> said.add(event(e.kind() == GroundEvent.Kind.RISE ? "rises" : "sets", e));
                case UPPER_TRANSIT ->
                    said.add(TEXTS.text("course.highest", Say.clock(e.time()), Figures.fixed(e.altitudeDeg(), 0)));
                default -> {}
            }
        }
        return said;
    }

    private static List<String> sun(GroundCourse sun) {
        if (sun.alwaysUp()) {
            return List.of(TEXTS.text("course.always"));
        }
        List<String> said = new ArrayList<>();
        if (sun.neverUp()) {
            said.add(TEXTS.text("course.never"));
        }
        for (GroundEvent e : sun.events()) {
            switch (e.kind()) {
                case UPPER_TRANSIT, LOWER_TRANSIT -> {}
                case RISE -> said.add(event("rises", e));
                case SET -> said.add(event("sets", e));
                default ->
                    said.add(TEXTS.text(
                            "course." + e.kind().name().toLowerCase(java.util.Locale.ROOT), Say.clock(e.time())));
            }
        }
        return said;
    }

    /** Rising and setting with the error that the air's refraction makes. */
    private static String event(String key, GroundEvent e) {
        return TEXTS.text("course." + key, Say.clock(e.time()), Figures.fixed(Math.max(0.1, e.sigmaS() / 60), 1));
    }

    void choose(Optional<PlanItem> item) {
        FactList list = new FactList(palette);
        if (item.isEmpty()) {
            put(chosen, list.remark(TEXTS.text("chosen.none")));
            return;
        }
        PlanItem of = item.get();
        list.fact(TEXTS.text("chosen.what"), of.what());
        list.figure(TEXTS.text("chosen.when"), Say.time(of.time(), of.sigmaS()));
        of.expected().ifPresent(e -> {
            list.figure(TEXTS.text("chosen.longitude"), Say.expected(of));
            list.figure(
                    TEXTS.text("chosen.age"),
                    e.daysBeyondArc() >= 1
                            ? TEXTS.text("chosen.days", Figures.fixed(e.daysBeyondArc(), 0))
                            : TEXTS.text("chosen.within"));
        });
        of.passage().ifPresent(p -> contacts(list, p));
        list.figure(TEXTS.text("chosen.stand"), Say.stand(of.view()));
        list.figure(
                TEXTS.text("fact.sun"),
                Figures.fixed(of.view().sunAltitudeDeg(), 0) + "°, "
                        + TEXTS.text("sky." + of.view().twilight().word()));
        if (!of.isObservable()) {
            list.alarm(TEXTS.text("chosen.whynot", of.whyNot()));
        }
        if (!of.note().isBlank()) {
            list.alarm(of.note());
        }
        put(chosen, list);
    }

    private static void contacts(FactList list, Passage passage) {
        for (ContactKind kind : List.of(
                ContactKind.T1,
                ContactKind.INGRESS_CENTRE,
                ContactKind.T2,
                ContactKind.T3,
                ContactKind.EGRESS_CENTRE,
                ContactKind.T4)) {
            Optional<Contact> contact = passage.contact(kind);
            contact.ifPresent(c -> list.figure(
                    TEXTS.text("contact." + kind.name().toLowerCase(java.util.Locale.ROOT)),
                    Say.time(c.time(), c.sigmaS())));
        }
        if (!passage.words().isBlank()) {
            list.remark(passage.words());
        }
    }
}
