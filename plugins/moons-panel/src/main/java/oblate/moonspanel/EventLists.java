/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import oblate.sky.UtcTime;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** The span's events twice: as bands, and as a table under them; what is chosen is chosen in both. */
final class EventLists extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(EventLists.class);
    private final EventBands bands;
    private final EventTable table;
    private final JLabel count = new JLabel(" ");
    private boolean filling;

    EventLists(Supplier<Palette> palette, EventBands.Listener listener, Consumer<Optional<Happening>> whenChosen) {
        super(new MigLayout("insets 0, gap 0, fill, wrap 1", "[grow,fill]", "[][][][grow,fill]"));
        setOpaque(false);
        bands = new EventBands(palette, listener);
        table = new EventTable(palette);
        count.setName("moons.count");
        add(count, "gapleft 16, gaptop 4, gapbottom 2, wmin 0");
        add(bands, "wmin 0");
        JLabel legend = new JLabel(TEXTS.text("bands.legend"));
        legend.setToolTipText(legend.getText());
        legend.putClientProperty("FlatLaf.styleClass", "small");
        add(legend, "gapleft 16, gapbottom 6, wmin 0");
        JScrollPane events = new JScrollPane(table);
        events.setBorder(BorderFactory.createEmptyBorder());
        add(events, "wmin 0, hmin 80");
        table.getSelectionModel().addListSelectionListener(e -> {
            if (!filling && !e.getValueIsAdjusting()) {
                bands.choose(chosen());
                whenChosen.accept(chosen());
            }
        });
    }

    void showSearching(Wish wish) {
        fill(new Found(wish, List.of(), List.of()));
        count.setText(TEXTS.text("count.searching"));
    }

    void show(Found found) {
        fill(found);
        long seen = found.events().stream().filter(e -> e.hindrance().isEmpty()).count();
        count.setText(
                found.events().isEmpty()
                        ? TEXTS.text("count.none")
                        : TEXTS.text(
                                found.events().size() == 1 ? "count.one" : "count.many",
                                Integer.toString(found.events().size()),
                                Long.toString(seen)));
    }

    private void fill(Found found) {
        filling = true;
        table.show(found.events());
        filling = false;
        bands.choose(Optional.empty());
        bands.show(Optional.of(found));
    }

    /** The mid-times of the planet's pictures. */
    void showPictures(List<UtcTime> times) {
        bands.showPictures(times);
    }

    void instant(UtcTime time) {
        bands.instant(time);
    }

    /** Chooses an event that is listed. */
    void choose(Happening event) {
        table.choose(event);
    }

    Optional<Happening> chosen() {
        return table.chosen();
    }
}
