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

/** What the inspector shows of the picture on the desk: fit, marks, facts, view. */
final class MeasureInspector extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final double USUAL_HINT_SIGMA_DEG = 10;
    private final transient PanelContext context;
    private final transient Desk desk;
    private final JPanel fitBody = body();
    private final JPanel factsBody = body();
    private final FoldSection fitSection = new FoldSection("Fit", fitBody);
    private final FoldSection marksSection;
    private final MarksTable marks;
    private final JTextField angle = new JTextField(5);
    private final JTextField sigma = new JTextField("10", 3);
    private final JComboBox<String> mirrored = new JComboBox<>(new String[] {"not said", "as the sky", "mirror image"});
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
        handSection = new FoldSection("Outline by hand", hand);
        handSection.setVisible(false);
        JPanel marksBody = body();
        marksBody.add(held);
        marksBody.add(marks, "wmin 0");
        marksSection = new FoldSection("Marks", marksBody);
        buildHints();
        add(handSection, "wmin 0");
        section(fitSection, "fit", true);
        section(marksSection, "marks", true);
        section(new FoldSection("Orientation, if you know it", hints), "hints", false);
        section(new FoldSection("Picture", factsBody), "picture", true);
        section(new FoldSection("Stretch, for the eye only", stretch), "stretch", false);
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
        angle.setToolTipText("Direction of the north pole, counter-clockwise from straight up (deg), roughly");
        row.add(new JLabel("North pole at"));
        row.add(angle);
        row.add(new JLabel("° ±"));
        row.add(sigma);
        row.add(new JLabel("°"));
        hints.add(row);
        JPanel sense = new JPanel(new MigLayout("insets 0, gap 4"));
        sense.setOpaque(false);
        sense.add(new JLabel("The picture is"));
        sense.add(mirrored);
        hints.add(sense);
        JButton again = new JButton("Fit with this");
        again.setToolTipText("Fits the disc again, starting from this orientation");
        again.addActionListener(e -> fitWithHints());
        hints.add(again, "growx 0");
        JCheckBox auto = new JCheckBox(
                "Fit new pictures when they are opened", context.settings().flag("fit.new", true));
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
            fitSection.setTitle("Fit");
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
                        ? "Marks: one is not kept yet"
                        : count == 0 ? "Marks: none yet, click on a feature" : "Marks (" + count + ")");
        held.removeAll();
        if (desk.hand().isHeldBack()) {
            FactList list = new FactList(context::palette);
            list.alarm(desk.hand().trouble().orElseThrow());
            list.remark("It stays in your hand: Enter tries again, Delete lets go of it.");
            held.add(list, "wmin 0");
        }
        revalidate();
        repaint();
    }

    private FactList fitFacts(OpenPicture open) {
        FactList list = new FactList(context::palette);
        if (desk.fits().isFitting()) {
            fitSection.setTitle("Fit: at work …");
        } else if (desk.fits().refusal().isPresent()) {
            fitSection.setTitle("Fit: refused");
            list.alarm(desk.fits().refusal().get());
            list.remark(
                    "If you know how the camera was turned, say so below and fit again; or hold Ctrl and drag from the disc’s centre to its edge; or draw the outline by hand (H).");
        } else if (open.fit().isEmpty()) {
            fitSection.setTitle("Fit: none yet");
            list.remark(
                    open.disc().isPresent() ? "F5 fits the disc." : "Without planet and time there is nothing to fit.");
        }
        open.fit().ifPresent(fit -> addFit(list, fit));
        return list;
    }

    private void addFit(FactList list, StoredFit stored) {
        DiscFit fit = stored.fit();
        boolean trusted = fit.trust() == Trust.TRUSTED;
        if (!desk.fits().isFitting() && desk.fits().refusal().isEmpty()) {
            fitSection.setTitle(trusted ? "Fit: trusted" : "Fit: doubtful");
        }
        fit.reasons().forEach(list::alarm);
        PlacementCovariance c = fit.covariance();
        list.figure(
                "Centre",
                Figures.withSigma(fit.placement().centreXPx(), c.sigmaCentrePx(), "") + "\n"
                        + Figures.withSigma(fit.placement().centreYPx(), c.sigmaCentrePx(), "px"));
        list.figure("Radius", Figures.withSigma(fit.placement().equatorialRadiusPx(), c.sigmaRadiusPx(), "px"));
        list.figure("Pole angle", Figures.withSigma(fit.placement().poleAngleDeg(), c.sigmaPoleAngleDeg(), "°"));
        list.fact("Sense", fit.placement().mirrored() ? "mirror image" : "as the sky");
        if (fit.witnesses().stream().anyMatch(w -> w.quantity().equals("pole angle"))) {
            JLabel heading = new JLabel("Pole angle, by witness");
            heading.setFont(Theme.bodyFont(-2));
            heading.setForeground(context.palette().quietInk());
            list.part(heading);
            list.part(new WitnessPlot(context::palette, fit));
        }
        if (fit.method().equals("hand")) {
            list.remark("Drawn by hand; the errors are those stated when it was drawn.");
        }
        list.remark(fit.method() + ", " + fit.channel()
                + (fit.edgePoints() > 0 ? ", " + fit.edgePoints() + " edge points" : ""));
    }
}
