/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.event.ActionEvent;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import javax.swing.AbstractAction;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.text.JTextComponent;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureFacts;
import oblate.archive.Site;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.look.TypingBox;
import oblate.workbench.words.Texts;

/** Corrects the facts of one picture or of many: only what was touched is changed. */
final class FactsEditor extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(FactsEditor.class);
    private static final String SEVERAL = TEXTS.text("facts.several");
    private static final String NONE = TEXTS.text("facts.none");
    private final transient PanelContext context;
    private final transient Corrector corrector;
    private final transient Map<FactField, JComponent> inputs = new EnumMap<>(FactField.class);
    private final transient Map<FactField, String> shown = new EnumMap<>(FactField.class);
    private final JTextField reason = new JTextField();
    private final JLabel trouble = new JLabel();
    private final JButton apply = new JButton(TEXTS.text("facts.correct"));
    private final JButton revert = new JButton(TEXTS.text("facts.revert"));
    private transient List<ArchivedPicture> pictures = List.of();
    private transient List<String> sites = List.of();
    private boolean filling;

    FactsEditor(PanelContext context, Corrector corrector) {
        super(new MigLayout("insets 0, gap 10 4, wrap 2, fillx, hidemode 3", "[76!,left][grow,fill]"));
        this.context = context;
        this.corrector = corrector;
        setOpaque(false);
        setName("facts");
        for (FactField field : FactField.values()) {
            JComponent input = input(field);
            input.setName("facts." + field.name().toLowerCase(java.util.Locale.ROOT));
            inputs.put(field, input);
            JLabel label = new JLabel(field.label());
            label.setLabelFor(input);
            add(label);
            add(input, "wmin 0");
            text(input).getDocument().addDocumentListener(new Typed(this::touched));
        }
        text(inputs.get(FactField.TIME)).setToolTipText("<html>" + TEXTS.text("fact.time.how") + "</html>");
        text(inputs.get(FactField.LENGTH)).setToolTipText(TEXTS.text("facts.length.tip"));
        text(inputs.get(FactField.SEEING)).setToolTipText(TEXTS.text("facts.seeing.tip"));
        reason.setName("facts.reason");
        reason.getAccessibleContext().setAccessibleName(TEXTS.text("facts.reason.name"));
        reason.setToolTipText(TEXTS.text("facts.reason.tip"));
        reason.getDocument().addDocumentListener(new Typed(this::touched));
        add(new JLabel(TEXTS.text("facts.reason")));
        add(reason, "wmin 0");
        trouble.setName("facts.trouble");
        add(trouble, "span 2, wmin 0");
        apply.setName("facts.apply");
        apply.setToolTipText(TEXTS.text("facts.correct.tip"));
        apply.addActionListener(e -> apply());
        revert.setName("facts.revert");
        revert.setToolTipText(TEXTS.text("facts.revert.tip"));
        revert.addActionListener(e -> fill());
        add(apply, "span 2, split 2, growx 0");
        add(revert, "growx 0");
        key("ctrl ENTER", this::apply);
        key("ESCAPE", this::fill);
        readSites();
    }

    private static JComponent input(FactField field) {
        return switch (field) {
            case PLANET, SITE, OBSERVER, KIT, FILTER -> new TypingBox();
            default -> new JTextField();
        };
    }

    private static JTextComponent text(JComponent input) {
        return input instanceof JComboBox<?> box
                ? (JTextComponent) box.getEditor().getEditorComponent()
                : (JTextComponent) input;
    }

    private void key(String stroke, Runnable deed) {
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(stroke), stroke);
        getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    private void readSites() {
        context.background()
                .quietly(
                        () -> context.archive().sites().stream().map(Site::name).toList(), names -> sites = names);
    }

    /** Shows the facts of these; what was typed for others is forgotten, what was typed for the same stays. */
    void show(List<ArchivedPicture> chosen) {
        boolean same = ids(pictures).equals(ids(chosen));
        pictures = List.copyOf(chosen);
        if (same && isTouched()) {
            return;
        }
        readSites();
        fill();
    }

    private static List<Long> ids(List<ArchivedPicture> of) {
        return of.stream().map(ArchivedPicture::id).toList();
    }

    /** Puts the caret into a field, with a text to begin with and a reason. */
    void begin(FactField field, String text, String why) {
        JTextComponent input = text(inputs.get(field));
        if (!text.isEmpty()) {
            input.setText(text);
        }
        if (!why.isEmpty()) {
            reason.setText(why);
        }
        scrollRectToVisible(new java.awt.Rectangle(0, 0, 10, getHeight()));
        input.requestFocusInWindow();
        input.selectAll();
    }

    private void fill() {
        filling = true;
        for (FactField field : FactField.values()) {
            Set<String> values = pictures.stream()
                    .map(PictureFacts::of)
                    .map(f -> shownText(field, f))
                    .distinct()
                    .limit(2)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            String value = values.size() == 1 ? values.iterator().next() : "";
            JComponent input = inputs.get(field);
            if (input instanceof JComboBox<?> box) {
                offer(field, box);
            }
            text(input).setText(value);
            // A box speaks for its editor.
            input.putClientProperty("JTextField.placeholderText", values.size() > 1 ? SEVERAL : "");
            text(input).setCaretPosition(0);
            shown.put(field, values.size() > 1 ? SEVERAL : value);
            input.setEnabled(!pictures.isEmpty());
        }
        reason.setText("");
        filling = false;
        touched();
        repaint();
    }

    private String shownText(FactField field, PictureFacts facts) {
        return field == FactField.PLANET ? label(facts.planetId().orElse("")) : field.text(facts);
    }

    private String label(String planetId) {
        return context.workbench().planets().stream()
                .filter(p -> p.id().equals(planetId))
                .map(PlanetModel::label)
                .findFirst()
                .orElse(planetId);
    }

    @SuppressWarnings("unchecked") // every box here was made with texts
    private void offer(FactField field, JComboBox<?> raw) {
        JComboBox<String> box = (JComboBox<String>) raw;
        box.removeAllItems();
        List<String> names =
                switch (field) {
                    case PLANET ->
                        context.workbench().planets().stream()
                                .map(PlanetModel::label)
                                .toList();
                    case SITE -> sites;
                    case OBSERVER -> known(ArchivedPicture::observer);
                    case KIT -> known(ArchivedPicture::kit);
                    default -> known(ArchivedPicture::filter);
                };
        names.forEach(box::addItem);
        box.setSelectedItem(null);
    }

    private List<String> known(Function<ArchivedPicture, Optional<String>> fact) {
        return List.copyOf(context.shelf().pictures().stream()
                .flatMap(p -> fact.apply(p).stream())
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    private String typed(FactField field) {
        return text(inputs.get(field)).getText().strip();
    }

    /** Fields whose text is another than was shown; a mixed one that is still empty was not touched. */
    private List<FactField> touchedFields() {
        List<FactField> touched = new ArrayList<>();
        for (FactField field : FactField.values()) {
            String before = shown.getOrDefault(field, "");
            String now = typed(field);
            if (before.equals(SEVERAL) ? !now.isEmpty() : !now.equals(before)) {
                touched.add(field);
            }
        }
        return touched;
    }

    private boolean isTouched() {
        return !touchedFields().isEmpty();
    }

    private void touched() {
        if (filling) {
            return;
        }
        List<FactField> touched = touchedFields();
        Optional<String> fault = touched.stream()
                .flatMap(f -> check().fault(f, value(f)).stream())
                .findFirst();
        boolean timed = touched.contains(FactField.TIME) || touched.contains(FactField.LENGTH);
        if (fault.isEmpty() && timed && reason.getText().isBlank()) {
            fault = Optional.of(TEXTS.text("facts.say.why"));
        }
        trouble.setText(
                fault.map(f -> "<html>" + f.replace("<", "&lt;") + "</html>").orElse(""));
        trouble.setVisible(fault.isPresent());
        trouble.setForeground(context.palette().alarm());
        apply.setEnabled(!touched.isEmpty() && fault.isEmpty());
        revert.setEnabled(!touched.isEmpty());
        apply.setText(TEXTS.counted("facts.correct.pictures", Math.max(1, pictures.size())));
        revalidate();
    }

    private FactsCheck check() {
        return new FactsCheck(pictures, sites, context.workbench().planets());
    }

    /** What was typed; the word none empties a fact. */
    private String value(FactField field) {
        return typed(field).equalsIgnoreCase(NONE) ? "" : typed(field);
    }

    private void apply() {
        if (!apply.isEnabled() || pictures.isEmpty()) {
            return;
        }
        List<FactField> touched = touchedFields();
        Map<FactField, String> values = new EnumMap<>(FactField.class);
        touched.forEach(f ->
                values.put(f, f == FactField.PLANET ? check().planetId(value(f)).orElse("") : value(f)));
        UnaryOperator<PictureFacts> change = facts -> {
            PictureFacts made = facts;
            for (Map.Entry<FactField, String> one : values.entrySet()) {
                made = one.getKey().with(made, one.getValue());
            }
            return made;
        };
        String names = touched.stream().map(FactField::said).collect(Collectors.joining(", "));
        String what = TEXTS.counted("facts.of", pictures.size(), names);
        String why = reason.getText().isBlank()
                ? TEXTS.text("why.corrected")
                : reason.getText().strip();
        List<Long> mine = ids(pictures);
        Map<FactField, String> typed = new EnumMap<>(FactField.class);
        touched.forEach(f -> typed.put(f, typed(f)));
        apply.setEnabled(false);
        corrector.correct(mine, change, what, why, done -> {
            if (ids(pictures).equals(mine)) {
                if (done) {
                    // No longer pending: the next reading of the archive shows what became of it.
                    shown.putAll(typed);
                    reason.setText("");
                }
                touched();
            }
        });
    }
}
