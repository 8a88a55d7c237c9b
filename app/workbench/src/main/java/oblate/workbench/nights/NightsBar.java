/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The bar above the views: which view, the search and what it found, which way up, which system. */
final class NightsBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NightsBar.class);
    private final transient PanelContext context;
    private final transient SystemChoice systems;
    private final transient Listener listener;
    private final transient Map<View, JToggleButton> toggles = new EnumMap<>(View.class);
    private final SearchBox search;
    private final JLabel count = new JLabel();
    private final JButton span = new JButton();
    private final JLabel bearing = new JLabel();
    private final JComboBox<String> system = new JComboBox<>();
    private transient String systemsOf = "";
    private boolean countWrong;
    private boolean filling;

    /** The views of the panel. */
    enum View {
        PICTURES,
        COVERAGE,
        TO_DO;

        String label() {
            return TEXTS.word("nights.bar", this);
        }

        /** Id of the deed that shows it. */
        String deed() {
            return Texts.key("nights.view", this);
        }

        String word() {
            return name().toLowerCase(Locale.ROOT).replace("_", "");
        }
    }

    /** What a person asks for with the bar. */
    interface Listener {
        /** The text of the search has changed. */
        void searchChanged();

        /** The person is done with the search. */
        void searchLeft();

        /** Another view is wanted. */
        void viewChosen(View view);

        /** Another rotation system is wanted. */
        void systemChosen();

        /** Pictures are to be added. */
        void addWanted();

        /** What the search can go on with. */
        Completions completions();
    }

    NightsBar(PanelContext context, SystemChoice systems, Listener listener) {
        super(new MigLayout("insets 8 16 8 16, gap 8, fillx, hidemode 3", "[][shrinkprio 200][grow,fill][][][][][]"));
        this.context = context;
        this.systems = systems;
        this.listener = listener;
        setOpaque(false);
        search = new SearchBox(context, listener::completions, listener::searchChanged, listener::searchLeft);
        ButtonGroup group = new ButtonGroup();
        JPanel views = new JPanel(new MigLayout("insets 0, gap 0"));
        views.setOpaque(false);
        for (View view : View.values()) {
            JToggleButton toggle = new JToggleButton(view.label(), view == View.PICTURES);
            toggle.setName("view." + view.word());
            toggle.putClientProperty("JButton.buttonType", "toolBarButton");
            toggle.setToolTipText(
                    TEXTS.text("bar.view.tip", TEXTS.text(view.deed() + ".tip"), Integer.toString(view.ordinal() + 1)));
            toggle.addActionListener(e -> listener.viewChosen(view));
            group.add(toggle);
            toggles.put(view, toggle);
            views.add(toggle);
        }
        count.setName("found");
        span.setName("span");
        span.setToolTipText(TEXTS.text("bar.span.tip"));
        span.addActionListener(e -> context.selection().chooseSpan(Optional.empty()));
        span.setVisible(false);
        bearing.setName("bearing");
        bearing.setToolTipText(TEXTS.text("bar.bearing.tip"));
        system.setName("system");
        system.getAccessibleContext().setAccessibleName(TEXTS.text("bar.system.name"));
        system.setToolTipText(TEXTS.text("bar.system.tip"));
        system.addActionListener(e -> chooseSystem());
        JButton add = new JButton(TEXTS.text("bar.add"), new LineIcon(16, Drawings::add));
        add.setName("add");
        add.setToolTipText(TEXTS.text("bar.add.tip"));
        add.addActionListener(e -> listener.addWanted());
        add(views);
        add(search, "w 150:320:360, shrinkprio 200");
        add(count, "wmin pref");
        add(span);
        add(bearing);
        add(new JLabel(TEXTS.text("bar.system")));
        add(system);
        add(add);
        lookChanged();
    }

    void search() {
        search.requestFocusInWindow();
    }

    void clearSearch() {
        search.clear();
    }

    String searched() {
        return search.text();
    }

    void setView(View view) {
        toggles.get(view).setSelected(true);
    }

    void setTodoCount(int things) {
        toggles.get(View.TO_DO).setText(things == 0 ? View.TO_DO.label() : View.TO_DO.label() + " " + things);
    }

    /** Says what the search found, or what is wrong with it. */
    void say(String sentence, boolean wrong) {
        count.setText(sentence);
        count.setToolTipText(sentence);
        countWrong = wrong;
        colourCount();
    }

    private void colourCount() {
        count.setForeground(
                countWrong ? context.palette().alarm() : context.palette().quietInk());
    }

    void setSpan(Optional<String> words) {
        span.setVisible(words.isPresent());
        span.setText(words.map(w -> w + "   ×").orElse(""));
    }

    void lookChanged() {
        search.lookChanged();
        colourCount();
        bearing.setText(context.bearing().words());
        bearing.setForeground(context.palette().quietInk());
        fillSystems();
    }

    /** Offers the systems of the planet looked at. */
    void fillSystems() {
        PlanetModel planet = context.planet();
        if (planet.id().equals(systemsOf)) {
            return;
        }
        filling = true;
        systemsOf = planet.id();
        List<RotationSystem> all = planet.globe().systems();
        system.removeAllItems();
        all.forEach(s -> system.addItem(s.label()));
        system.setSelectedItem(systems.of(planet).label());
        system.setEnabled(all.size() > 1);
        filling = false;
    }

    private void chooseSystem() {
        if (filling) {
            return;
        }
        PlanetModel planet = context.planet();
        planet.globe().systems().stream()
                .filter(s -> s.label().equals(system.getSelectedItem()))
                .findFirst()
                .ifPresent(s -> {
                    systems.choose(planet, s);
                    listener.systemChosen();
                });
    }
}
