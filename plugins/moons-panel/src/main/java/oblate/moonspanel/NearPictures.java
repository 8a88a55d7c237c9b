/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.function.LongConsumer;
import javax.swing.DefaultListModel;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.ListSelectionModel;
import oblate.archive.ArchivedPicture;
import oblate.sky.PlanetModel;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** The archive's pictures about an event; a double click or Enter opens one. */
final class NearPictures extends JList<String> {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NearPictures.class);
    /** How far from an event a picture may be. */
    static final Duration REACH = Duration.ofHours(2);

    private final DefaultListModel<String> lines = new DefaultListModel<>();
    private transient List<ArchivedPicture> pictures = List.of();

    NearPictures(LongConsumer open) {
        setModel(lines);
        setName("moons.pictures");
        setToolTipText(TEXTS.text("pictures.tip"));
        getAccessibleContext().setAccessibleName(TEXTS.text("pictures.name"));
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        Deed.of(TEXTS, "pictures.open", () -> openChosen(open)).bind(this, JComponent.WHEN_FOCUSED);
        addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                if (e.getClickCount() == 2) {
                    openChosen(open);
                }
            }
        });
    }

    private void openChosen(LongConsumer open) {
        int index = getSelectedIndex();
        if (index >= 0 && index < pictures.size()) {
            open.accept(pictures.get(index).id());
        }
    }

    /** Those of a planet within {@link #REACH} of a stretch of time, in order of time. */
    static List<ArchivedPicture> near(List<ArchivedPicture> all, PlanetModel planet, Instant from, Instant to) {
        Instant first = from.minus(REACH);
        Instant last = to.plus(REACH);
        return all.stream()
                .filter(p -> p.planetId().equals(java.util.Optional.of(planet.id())))
                .filter(p -> p.time().isPresent())
                .filter(p -> !midOf(p).isBefore(first) && !midOf(p).isAfter(last))
                .sorted(Comparator.comparing(NearPictures::midOf))
                .toList();
    }

    private static Instant midOf(ArchivedPicture picture) {
        return picture.time().orElseThrow().midUtc();
    }

    void show(List<ArchivedPicture> found) {
        pictures = List.copyOf(found);
        lines.clear();
        found.forEach(p -> lines.addElement(Figures.clockUt(midOf(p)) + "   " + p.originalName()));
    }

    List<ArchivedPicture> pictures() {
        return pictures;
    }
}
