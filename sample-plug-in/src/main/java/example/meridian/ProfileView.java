/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import java.awt.BorderLayout;
import java.awt.GridLayout;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.disc.DiscFrame;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.Region;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Theme;

/** Two charts, one above the other, and a sentence that says whose they are. */
final class ProfileView extends JPanel {
    private static final long serialVersionUID = 1L;
    private final transient PanelContext context;
    private final JLabel words = new JLabel(" ");
    private final JButton copy = new JButton("Copy as table");
    private final ProfileChart meridian;
    private final ProfileChart equator;
    private transient Optional<Profiles> shown = Optional.empty();

    /** What is worked out in the background. */
    private record Profiles(BrightnessProfile meridian, BrightnessProfile equator, List<Region> belts) {}

    ProfileView(PanelContext context) {
        super(new BorderLayout(0, 8));
        this.context = context;
        setOpaque(false);
        setBorder(BorderFactory.createEmptyBorder(16, 24, 16, 24));
        words.setName("profile.words");
        words.setFont(Theme.bodyFont(0));
        copy.setName("profile.copy");
        copy.setEnabled(false);
        copy.addActionListener(e -> copy());
        JPanel top = new JPanel(new BorderLayout(16, 0));
        top.setOpaque(false);
        top.add(words, BorderLayout.CENTER);
        top.add(copy, BorderLayout.EAST);
        meridian = new ProfileChart(context, "Central meridian", "planetographic latitude");
        meridian.setName("profile.meridian");
        equator = new ProfileChart(context, "Equator", "longitude minus central meridian");
        equator.setName("profile.equator");
        JPanel charts = new JPanel(new GridLayout(2, 1, 0, 16));
        charts.setOpaque(false);
        charts.add(meridian);
        charts.add(equator);
        add(top, BorderLayout.NORTH);
        add(charts, BorderLayout.CENTER);
        context.selection().whenChanged(this::follow);
        context.shelf().whenChanged(this::follow);
        follow();
    }

    /** Reads the chosen picture in the background; the window never waits for it. */
    private void follow() {
        Optional<ArchivedPicture> picture =
                context.selection().pictureId().flatMap(context.shelf()::picture);
        if (picture.isEmpty()) {
            show(Optional.empty(), "Choose a picture in the nights or on the ribbon.");
            return;
        }
        context.background().promptly(() -> work(picture.get()), found -> {
            boolean still = context.selection().pictureId().equals(Optional.of(picture.get().id()));
            if (still) {
                String name = picture.get().originalName();
                show(
                        found,
                        found.isPresent()
                                ? name + ": green or grey brightness as the picture has it, 0 black to 1 white, with its"
                                        + " standard error; mean over 6° across the line"
                                : name + ": fit its disc first (Measure, F5).");
            }
        });
    }

    private Optional<Profiles> work(ArchivedPicture picture) {
        Archive archive = context.archive();
        Optional<StoredFit> fit = archive.currentFit(picture.id());
        Optional<PlanetModel> planet = context.workbench().planets().stream()
                .filter(p -> picture.planetId().equals(Optional.of(p.id())))
                .findFirst();
        if (fit.isEmpty() || planet.isEmpty() || picture.time().isEmpty()) {
            return Optional.empty();
        }
        ApparentDisc disc = context.sky().disc(planet.get(), picture.time().get().midUtc());
        DiscFrame frame = new DiscFrame(disc, fit.get().fit().placement());
        PixelGrid pixels =
                context.workbench().reader().decode(archive.fileOf(picture)).pixels();
        return Optional.of(new Profiles(
                BrightnessProfile.alongMeridian(pixels, frame),
                BrightnessProfile.alongEquator(pixels, frame),
                planet.get().regions()));
    }

    private void show(Optional<Profiles> found, String sentence) {
        shown = found;
        words.setText(sentence);
        words.setToolTipText(sentence);
        copy.setEnabled(found.isPresent());
        meridian.show(found.map(Profiles::meridian), found.map(Profiles::belts).orElse(List.of()));
        equator.show(found.map(Profiles::equator), List.of());
    }

    private void copy() {
        StringBuilder table = new StringBuilder("line\tangle_deg\tbrightness\tsigma\n");
        shown.ifPresent(s -> {
            append(table, "central-meridian", s.meridian());
            append(table, "equator", s.equator());
        });
        Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new StringSelection(table.toString()), null);
        context.say("The profiles are in the clipboard, to be pasted into a table.");
    }

    private static void append(StringBuilder table, String line, BrightnessProfile profile) {
        for (BrightnessProfile.Point p : profile.points()) {
            table.append(String.format(
                    Locale.ROOT, "%s\t%.0f\t%.4f\t%.4f%n", line, p.angleDeg(), p.brightness(), p.sigma()));
        }
    }
}
