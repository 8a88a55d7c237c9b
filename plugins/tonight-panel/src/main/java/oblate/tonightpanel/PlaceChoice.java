/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.archive.Site;
import oblate.base.ProblemException;
import oblate.sky.GroundSite;
import oblate.workbench.PanelSettings;
import oblate.workbench.words.Texts;

/** A site of the archive, or a place that is typed. */
final class PlaceChoice extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(PlaceChoice.class);
    private final transient PanelSettings settings;
    private final transient Runnable whenChanged;
    private final transient Consumer<String> say;
    private final JComboBox<String> sites = new JComboBox<>();
    private final JTextField typed = new JTextField(12);
    private transient List<Site> known = List.of();
    private transient Optional<GroundSite> elsewhere = Optional.empty();
    private boolean filling;

    PlaceChoice(PanelSettings settings, Runnable whenChanged, Consumer<String> say) {
        super(new MigLayout("insets 0, gap 6, hidemode 3"));
        this.settings = settings;
        this.whenChanged = whenChanged;
        this.say = say;
        setOpaque(false);
        sites.setName("tonight.site");
        sites.setToolTipText(TEXTS.text("site.tip"));
        sites.getAccessibleContext().setAccessibleName(TEXTS.text("site.name"));
        name(typed, "tonight.place");
        typed.setText(settings.text("place", ""));
        typed.addActionListener(e -> enter(typed.getText()));
        sites.addActionListener(e -> chosen());
        add(sites, "wmax 200");
        add(typed);
        try {
            elsewhere = typed.getText().isBlank() ? Optional.empty() : Optional.of(GroundSite.parse(typed.getText()));
        } catch (ProblemException e) {
            // a settings file that was edited by hand: the field shows what it has, and nothing is planned for it
            elsewhere = Optional.empty();
        }
        show(List.of());
    }

    static void name(JTextField field, String name) {
        field.setName(name);
        field.setToolTipText(TEXTS.text("place.tip"));
        field.putClientProperty("JTextField.placeholderText", TEXTS.text("place.example"));
        field.getAccessibleContext().setAccessibleName(TEXTS.text("place.name"));
    }

    /** Offers an archive's sites; the one kept in the settings is chosen, else the first. */
    void show(List<Site> found) {
        filling = true;
        known = List.copyOf(found);
        sites.removeAllItems();
        known.forEach(s -> sites.addItem(s.name()));
        sites.addItem(TEXTS.text("site.typed"));
        String wish = settings.text("site", "");
        int index = 0;
        for (int i = 0; i < known.size(); i++) {
            index = known.get(i).name().equals(wish) ? i : index;
        }
        boolean typedWish = settings.flag("site.typed", false) && elsewhere.isPresent();
        sites.setSelectedIndex(typedWish ? known.size() : index);
        typed.setVisible(isTyped());
        filling = false;
    }

    private boolean isTyped() {
        return sites.getSelectedIndex() >= known.size();
    }

    private void chosen() {
        if (filling) {
            return;
        }
        typed.setVisible(isTyped());
        revalidate();
        settings.keep("site.typed", isTyped());
        if (!isTyped()) {
            settings.keep("site", known.get(sites.getSelectedIndex()).name());
        }
        whenChanged.run();
        if (isTyped()) {
            typed.requestFocusInWindow();
        }
    }

    /** Takes a place that was typed here or elsewhere; a wrong one is told in one sentence and changes nothing. */
    void enter(String text) {
        try {
            elsewhere = Optional.of(GroundSite.parse(text));
        } catch (ProblemException e) {
            say.accept(e.getMessage());
            return;
        }
        typed.setText(text.strip());
        settings.keep("place", text.strip());
        settings.keep("site.typed", true);
        filling = true;
        sites.setSelectedIndex(known.size());
        typed.setVisible(true);
        filling = false;
        revalidate();
        whenChanged.run();
    }

    /** Where the person stands; empty when nothing has been said yet. */
    Optional<Place> place() {
        if (isTyped()) {
            return elsewhere.map(s -> new Place(s, ""));
        }
        Site site = known.get(sites.getSelectedIndex());
        return Optional.of(new Place(new GroundSite(site.latDeg(), site.lonDeg(), site.heightM()), site.name()));
    }
}
