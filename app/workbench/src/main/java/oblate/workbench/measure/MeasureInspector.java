/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.archive.StoredFit;
import oblate.disc.DiscFit;
import oblate.disc.FitHints;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.FoldSection;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.FactList;
import oblate.workbench.pictures.PictureFacts;
import oblate.workbench.words.Texts;

/** What the inspector shows of the picture on the desk: fit, marks, facts, view. */
final class MeasureInspector extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MeasureInspector.class);
    private static final double USUAL_HINT_SIGMA_DEG = 10;
    private final transient PanelContext context;
    private final transient Desk desk;
    private final JPanel fitBody = body();
    private final JPanel factsBody = body();
    private final FoldSection fitSection = new FoldSection(TEXTS.text("inspector.fit"), fitBody);
    private final FoldSection marksSection;
    private final MarksTable marks;
    private final JTextField angle = new JTextField(5);
    private final JTextField sigma = new JTextField("10", 3);
    private final JComboBox<String> mirrored = new JComboBox<>(
            new String[] {TEXTS.text("sense.not.said"), TEXTS.text("sense.sky"), TEXTS.text("sense.mirror")});
    private final JPanel hints = body();
    private final JPanel held = body();
    private final HandSection hand;
    private final FoldSection handSection;

    MeasureInspector(PanelContext context, Desk desk, StretchBar stretch, HandOutline outline) {
        super(new MigLayout("insets 4 0 8 0, gap 0, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        this.context = context;
        this.desk = desk;
        setOpaque(false);
        marks = new MarksTable(context::palette, m -> desk.hand().choose(m.map(s -> s.id())));
        hand = new HandSection(outline);
        handSection = new FoldSection(TEXTS.text("inspector.hand"), hand);
        handSection.setVisible(false);
        JPanel marksBody = body();
        marksBody.add(held);
        marksBody.add(marks, "wmin 0");
        marksSection = new FoldSection(TEXTS.text("inspector.marks"), marksBody);
        buildHints();
        add(handSection, "wmin 0");
        section(fitSection, "fit", true);
        section(marksSection, "marks", true);
        section(new FoldSection(TEXTS.text("inspector.hints"), hints), "hints", false);
        section(new FoldSection(TEXTS.text("inspector.picture"), factsBody), "picture", true);
        section(new FoldSection(TEXTS.text("inspector.stretch"), stretch), "stretch", false);
    }

    private static JPanel body() {
        JPanel body = new JPanel(new MigLayout("insets 0, gap 0 6, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        body.setOpaque(false);
        return body;
    }

    private void section(FoldSection section, String name, boolean openAtFirst) {
        section.setOpen(context.settings().flag("open." + name, openAtFirst));
        section.whenFolded(open -> context.settings().keep("open." + name, open));
        add(section, "wmin 0");
    }

    private void buildHints() {
        JPanel row = new JPanel(new MigLayout("insets 0, gap 4"));
        row.setOpaque(false);
        angle.setName("hint.angle");
        angle.setToolTipText(TEXTS.text("hints.angle.tip"));
        row.add(new JLabel(TEXTS.text("hints.angle")));
        row.add(angle);
        row.add(new JLabel("° ±"));
        row.add(sigma);
        row.add(new JLabel("°"));
        hints.add(row);
        JPanel sense = new JPanel(new MigLayout("insets 0, gap 4"));
        sense.setOpaque(false);
        sense.add(new JLabel(TEXTS.text("hints.sense")));
        sense.add(mirrored);
        hints.add(sense);
        JButton again = new JButton(TEXTS.text("hints.fit"));
        again.setToolTipText(TEXTS.text("hints.fit.tip"));
        again.addActionListener(e -> fitWithHints());
        hints.add(again, "growx 0");
        JCheckBox auto =
                new JCheckBox(TEXTS.text("hints.auto"), context.settings().flag("fit.new", true));
        auto.addActionListener(e -> context.settings().keep("fit.new", auto.isSelected()));
        hints.add(auto);
    }

    private void fitWithHints() {
        Optional<FitHints.Angle> pole = number(angle.getText())
                .map(a -> new FitHints.Angle(
                        a, number(sigma.getText()).filter(s -> s > 0).orElse(USUAL_HINT_SIGMA_DEG)));
        Optional<Boolean> sense =
                mirrored.getSelectedIndex() == 0 ? Optional.empty() : Optional.of(mirrored.getSelectedIndex() == 2);
        desk.fits().say(Optional.of(new FitHints(pole, sense, Optional.empty())));
        desk.fits().fit();
    }

    private static Optional<Double> number(String text) {
        String plain = text.strip().replace(',', '.').replace(Figures.MINUS, '-');
        return plain.matches("[-+]?\\d{1,4}(\\.\\d{1,4})?") ? Optional.of(Double.valueOf(plain)) : Optional.empty();
    }

    /** Shows the facts of another picture. */
    void showPicture() {
        factsBody.removeAll();
        desk.open().ifPresent(open -> factsBody.add(PictureFacts.of(context, open.picture()), "wmin 0"));
        showContent();
    }

    /** Shows the outline by hand, as far as there is one. */
    void showOutline() {
        hand.refresh();
        boolean open = hand.isInUse();
        if (open != handSection.isVisible()) {
            handSection.setVisible(open);
            revalidate();
        }
    }

    /** Keeps the outline by hand with the errors stated. */
    void keepOutline() {
        hand.keep();
    }

    /** Shows fit and marks as they are now. */
    void showContent() {
        fitBody.removeAll();
        desk.open().ifPresent(open -> fitBody.add(fitFacts(open), "wmin 0"));
        if (desk.open().isEmpty()) {
            fitSection.setTitle(TEXTS.text("inspector.fit"));
            desk.trouble().ifPresent(why -> {
                FactList list = new FactList(context::palette);
                list.alarm(why);
                fitBody.add(list, "wmin 0");
            });
        }
        marks.show(
                desk.hand().shown(),
                desk.open().flatMap(OpenPicture::disc),
                desk.hand().chosenId());
        int count = desk.hand().shown().size();
        marksSection.setTitle(
                desk.hand().isHeldBack()
                        ? TEXTS.text("inspector.marks.held")
                        : count == 0
                                ? TEXTS.text("inspector.marks.none")
                                : TEXTS.text("inspector.marks.some", Integer.toString(count)));
        held.removeAll();
        if (desk.hand().isHeldBack()) {
            FactList list = new FactList(context::palette);
            list.alarm(desk.hand().trouble().orElseThrow());
            list.remark(TEXTS.text("marks.held"));
            held.add(list, "wmin 0");
        }
        revalidate();
        repaint();
    }

    private FactList fitFacts(OpenPicture open) {
        FactList list = new FactList(context::palette);
        if (desk.fits().isFitting()) {
            fitSection.setTitle(TEXTS.text("inspector.fit.running"));
        } else if (desk.fits().refusal().isPresent()) {
            fitSection.setTitle(TEXTS.text(desk.fits().isHeldBack() ? "inspector.fit.held" : "inspector.fit.refused"));
            list.alarm(desk.fits().refusal().get());
            list.remark(TEXTS.text(desk.fits().isHeldBack() ? "fit.not.kept.way" : "fit.refused.way"));
        } else if (open.fit().isEmpty()) {
            fitSection.setTitle(TEXTS.text("inspector.fit.none"));
            list.remark(open.disc().isPresent() ? TEXTS.text("fit.none.way") : TEXTS.text("fit.none.facts"));
        }
        open.fit().ifPresent(fit -> addFit(list, fit));
        return list;
    }

    private void addFit(FactList list, StoredFit stored) {
        DiscFit fit = stored.fit();
        boolean trusted = fit.trust() == Trust.TRUSTED;
        if (!desk.fits().isFitting() && desk.fits().refusal().isEmpty()) {
            fitSection.setTitle(trusted ? TEXTS.text("inspector.fit.trusted") : TEXTS.text("inspector.fit.doubtful"));
        }
        fit.reasons().forEach(list::alarm);
        PlacementCovariance c = fit.covariance();
        list.figure(
                TEXTS.text("fit.centre"),
                Figures.withSigma(fit.placement().centreXPx(), c.sigmaCentrePx(), "") + "\n"
                        + Figures.withSigma(fit.placement().centreYPx(), c.sigmaCentrePx(), "px"));
        list.figure(
                TEXTS.text("fit.radius"),
                Figures.withSigma(fit.placement().equatorialRadiusPx(), c.sigmaRadiusPx(), "px"));
        list.figure(
                TEXTS.text("fit.pole.angle"),
                Figures.withSigma(fit.placement().poleAngleDeg(), c.sigmaPoleAngleDeg(), "°"));
        list.fact(
                TEXTS.text("fit.sense"),
                fit.placement().mirrored() ? TEXTS.text("sense.mirror") : TEXTS.text("sense.sky"));
        if (fit.witnesses().stream().anyMatch(w -> w.quantity().equals("pole angle"))) {
            JLabel heading = new JLabel(TEXTS.text("fit.witnesses"));
            heading.setFont(Theme.bodyFont(-2));
            heading.setForeground(context.palette().quietInk());
            list.part(heading);
            list.part(new WitnessPlot(context::palette, fit));
        }
        if (fit.method().equals("hand")) {
            list.remark(TEXTS.text("fit.by.hand"));
        }
        list.remark(
                fit.edgePoints() > 0
                        ? TEXTS.text(
                                "fit.method.points", fit.method(), fit.channel(), Integer.toString(fit.edgePoints()))
                        : TEXTS.text("fit.method", fit.method(), fit.channel()));
    }
}
