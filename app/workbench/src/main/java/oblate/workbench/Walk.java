/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/**
 * The short walk through the loop, a strip above the panels: each step says one thing to do and is over when it was done, by whatever way. It
 * holds nothing up and can be left at any moment. On the event thread only.
 */
final class Walk extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(Walk.class);
    private final transient MainWindow window;
    private final transient Supplier<Palette> palette;
    private final JLabel place = new JLabel();
    private final JLabel words = new JLabel();
    private final JButton next = new JButton(TEXTS.text("walk.next"));
    private final transient List<Step> steps;
    private int at;
    private long pictureAtStart;
    private int marksAtStart;

    private record Step(String text, BooleanSupplier isDone) {}

    Walk(MainWindow window, Supplier<Palette> palette) {
        super(new MigLayout("insets 6 16 6 12, gap 12, fillx", "[][grow,fill][][]"));
        this.window = window;
        this.palette = palette;
        setName("walk");
        setVisible(false);
        words.setName("walk.words");
        next.setName("walk.next");
        next.addActionListener(e -> begin(at + 1));
        JButton leave = new JButton(TEXTS.text("walk.leave"));
        leave.setName("walk.leave");
        leave.addActionListener(e -> end());
        place.setFont(Theme.figureFont(0));
        add(place);
        add(words, "wmin 0");
        add(next);
        add(leave);
        steps = List.of(
                new Step("walk.open", () -> window.shown().equals("measure")),
                new Step(
                        "walk.fit",
                        () -> picture().filter(ArchivedPicture::fitted).isPresent()),
                new Step(
                        "walk.mark",
                        () -> picture().map(ArchivedPicture::markCount).orElse(0) > marksAtStart),
                new Step("walk.go.on", () -> picture().map(ArchivedPicture::id).orElse(-1L) != pictureAtStart),
                new Step("walk.drift", () -> window.shown().equals("longitude-date")),
                new Step("walk.end", () -> false));
    }

    private Optional<ArchivedPicture> picture() {
        return window.selection().pictureId().flatMap(window.shelf()::picture);
    }

    void begin() {
        begin(0);
    }

    private void begin(int step) {
        if (step >= steps.size()) {
            end();
            return;
        }
        at = step;
        pictureAtStart = picture().map(ArchivedPicture::id).orElse(-1L);
        marksAtStart = picture().map(ArchivedPicture::markCount).orElse(0);
        place.setText(TEXTS.text("walk.place", Integer.toString(at + 1), Integer.toString(steps.size())));
        words.setText(TEXTS.text(steps.get(at).text()));
        words.setToolTipText(words.getText());
        next.setText(TEXTS.text(at == steps.size() - 1 ? "walk.finish" : "walk.next"));
        colour();
        setVisible(true);
        revalidate();
    }

    /** Looks whether the present step has been done; called whenever something changed. */
    void look() {
        if (isVisible() && steps.get(at).isDone().getAsBoolean()) {
            begin(at + 1);
        }
    }

    void colour() {
        setBackground(palette.get().raised());
        setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, palette.get().accent()));
        place.setForeground(palette.get().accent());
        words.setForeground(palette.get().ink());
    }

    private void end() {
        setVisible(false);
    }
}
