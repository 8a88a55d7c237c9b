/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.workbench.PanelContext;
import oblate.workbench.look.FoldSection;
import oblate.workbench.pictures.FactList;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.pictures.PictureFacts;
import oblate.workbench.words.Texts;

/** What is known of the chosen pictures, and the form that corrects it. */
final class NightsInspector extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NightsInspector.class);
    private final transient PanelContext context;
    private final transient ChosenPictures chosen;
    private final transient Corrector corrector;
    private final JPanel editing = new JPanel(new BorderLayout());
    private final JPanel facts = new JPanel(new MigLayout("insets 0, gap 0, wrap 1, fillx", "[grow,fill]"));
    private final FoldSection correcting;
    private transient Optional<FactsEditor> editor = Optional.empty();
    private boolean editorComes;

    NightsInspector(PanelContext context, ChosenPictures chosen, Corrector corrector) {
        super(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        this.context = context;
        this.chosen = chosen;
        this.corrector = corrector;
        editing.setOpaque(false);
        setOpaque(false);
        facts.setOpaque(false);
        correcting = new FoldSection(TEXTS.text("facts.correct"), editing);
        correcting.setOpen(context.settings().flag("correct.open", true));
        correcting.whenFolded(open -> context.settings().keep("correct.open", open));
        add(facts, "wmin 0");
        add(correcting, "wmin 0");
    }

    /** Pictures chosen that are there. */
    List<ArchivedPicture> pictures() {
        return chosen.ids().stream()
                .map(id -> context.shelf().picture(id).orElse(null))
                .filter(Objects::nonNull)
                .sorted(java.util.Comparator.comparingLong(ArchivedPicture::id))
                .toList();
    }

    void refresh() {
        List<ArchivedPicture> pictures = pictures();
        facts.removeAll();
        if (pictures.size() == 1) {
            facts.add(
                    new FoldSection(TEXTS.text("inspector.picture"), PictureFacts.of(context, pictures.get(0))),
                    "wmin 0");
            JButton open = new JButton(TEXTS.text("inspector.open"));
            open.setToolTipText(TEXTS.text("inspector.open.tip"));
            open.addActionListener(e -> context.openPicture(pictures.get(0).id()));
            facts.add(open, "gapleft 12, gapright 12, growx 0, gapbottom 4");
        } else if (pictures.size() > 1) {
            facts.add(
                    new FoldSection(
                            TEXTS.text("found.pictures", Integer.toString(pictures.size())), severals(pictures)),
                    "wmin 0");
        }
        correcting.setVisible(!pictures.isEmpty());
        editor.ifPresent(e -> e.show(pictures));
        if (editor.isEmpty() && !editorComes && !pictures.isEmpty()) {
            // The form has many fields; what is known of the picture is to be seen before.
            editorComes = true;
            context.background().soon(() -> editor().show(pictures()));
        }
        revalidate();
        repaint();
    }

    private FactsEditor editor() {
        if (editor.isEmpty()) {
            editor = Optional.of(new FactsEditor(context, corrector));
            editing.add(editor.get());
            editing.revalidate();
        }
        return editor.get();
    }

    private FactList severals(List<ArchivedPicture> pictures) {
        FactList list = new FactList(context::palette);
        List<NightGroup> nights = NightGroup.of(pictures);
        list.fact(
                TEXTS.text("inspector.nights"),
                nights.size() == 1 ? nights.get(0).title() : Integer.toString(nights.size()));
        list.fact(
                TEXTS.text("inspector.fitted"),
                TEXTS.text(
                        "inspector.of",
                        Long.toString(pictures.stream()
                                .filter(ArchivedPicture::fitted)
                                .count()),
                        Integer.toString(pictures.size())));
        list.fact(
                TEXTS.text("inspector.marks"),
                Long.toString(
                        pictures.stream().mapToLong(ArchivedPicture::markCount).sum()));
        long conflicts =
                pictures.stream().filter(p -> !p.timeConflicts().isEmpty()).count();
        if (conflicts > 0) {
            list.alarm(TEXTS.text("inspector.conflicts", Long.toString(conflicts)));
        }
        list.remark(TEXTS.text("inspector.several"));
        return list;
    }

    /** Chooses pictures and puts the caret into a field. */
    void begin(List<Long> ids, FactField field, String text, String reason) {
        if (ids.isEmpty()) {
            return;
        }
        Optional<Long> lead = context.selection().pictureId().filter(ids::contains);
        chosen.set(ids, lead.orElse(ids.get(0)));
        editor();
        refresh();
        correcting.setOpen(true);
        editor().begin(field, text, reason);
    }
}
