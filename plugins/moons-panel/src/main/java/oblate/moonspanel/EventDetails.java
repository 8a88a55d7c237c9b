/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.Site;
import oblate.sky.GroundView;
import oblate.workbench.look.Figures;
import oblate.workbench.look.FoldSection;
import oblate.workbench.look.Palette;
import oblate.workbench.pictures.FactList;
import oblate.workbench.words.Texts;

/** The chosen event in the inspector: its touches with their errors, what the site sees, and the pictures about it; below, the figures for the instant. */
final class EventDetails extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(EventDetails.class);
    private static final String WIDE = "wmin 0";
    private static final int MOST_ROWS = 8;
    private final transient Supplier<Palette> palette;
    private final JPanel place = new JPanel(new MigLayout("insets 0, gap 4, wrap 1, fillx", "[grow,fill]"));
    private final JLabel title = new JLabel(TEXTS.text("pictures.title"));
    private final NearPictures pictures;
    private final JScrollPane shown;

    EventDetails(Supplier<Palette> palette, LongConsumer open, JComponent below) {
        super(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        this.palette = palette;
        setOpaque(false);
        place.setOpaque(false);
        place.setName("moons.details");
        pictures = new NearPictures(open);
        JPanel near = new JPanel(new MigLayout("insets 0, gap 4, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        near.setOpaque(false);
        near.add(title, WIDE);
        shown = new JScrollPane(pictures);
        near.add(shown, "wmin 0");
        add(new FoldSection(TEXTS.text("section.event"), place), WIDE);
        add(new FoldSection(TEXTS.text("section.pictures"), near), WIDE);
        add(below, WIDE);
        show(Optional.empty(), Optional.empty(), List.of());
    }

    void show(Optional<Happening> event, Optional<Site> site, List<ArchivedPicture> near) {
        FactList list = new FactList(palette);
        event.ifPresentOrElse(e -> facts(list, e, site), () -> list.remark(TEXTS.text("event.none")));
        place.removeAll();
        place.add(list, WIDE);
        place.revalidate();
        place.repaint();
        pictures.show(near);
        pictures.setVisibleRowCount(Math.max(1, Math.min(MOST_ROWS, near.size())));
        shown.setVisible(!near.isEmpty());
        title.setText(
                event.isEmpty()
                        ? TEXTS.text("pictures.choose")
                        : near.isEmpty()
                                ? TEXTS.text("pictures.none")
                                : TEXTS.text(
                                        near.size() == 1 ? "pictures.found.one" : "pictures.found.many",
                                        Integer.toString(near.size())));
    }

    private static void facts(FactList list, Happening event, Optional<Site> site) {
        list.fact(TEXTS.text("event.what"), event.moonName() + ": " + event.what());
        for (Happening.Touch touch : event.touches()) {
            double sigmaS = Math.max(1, touch.contact().sigmaS());
            list.figure(
                    TEXTS.text(touch.key()),
                    TEXTS.text(
                            "touch.time",
                            EventClock.clock(touch.contact().time()),
                            Figures.fixed(sigmaS, Math.min(0, Figures.decimalsFor(sigmaS)))));
        }
        if (site.isPresent() && event.begin().isPresent() && event.end().isPresent()) {
            GroundView begin = event.begin().get();
            GroundView end = event.end().get();
            list.fact(
                    TEXTS.text("event.over"),
                    TEXTS.text(
                            "event.stand",
                            Figures.fixed(begin.altitudeDeg(), 0),
                            Figures.fixed(end.altitudeDeg(), 0),
                            Figures.fixed(begin.sunAltitudeDeg(), 0),
                            Figures.fixed(end.sunAltitudeDeg(), 0)));
        }
        if (!event.words().isEmpty()) {
            list.fact(TEXTS.text("event.notes"), event.words());
        }
    }
}
