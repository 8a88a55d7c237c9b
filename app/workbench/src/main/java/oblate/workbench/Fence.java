/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Graphics;
import java.util.function.BiConsumer;
import javax.swing.JComponent;
import javax.swing.JPanel;
import oblate.workbench.words.Texts;

/** Stands round a stranger's component, so that what it throws while it is added, laid out, painted or removed stops here and is told. */
final class Fence extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(Fence.class);
    private final JComponent inside;
    private final transient BiConsumer<String, Runnable> guard;

    /**
     * @param guard does something for the stranger: what it is, completing "failed while …", and the deed
     */
    Fence(JComponent inside, BiConsumer<String, Runnable> guard) {
        super(new BorderLayout());
        this.inside = inside;
        this.guard = guard;
        setOpaque(false);
        add(inside, BorderLayout.CENTER);
    }

    JComponent inside() {
        return inside;
    }

    @Override
    public void addNotify() {
        guard.accept(TEXTS.text("doing.added"), super::addNotify);
    }

    @Override
    public void removeNotify() {
        guard.accept(TEXTS.text("doing.removed"), super::removeNotify);
    }

    @Override
    protected void validateTree() {
        guard.accept(TEXTS.text("doing.laid.out"), super::validateTree);
    }

    @Override
    public void doLayout() {
        guard.accept(TEXTS.text("doing.laid.out"), super::doLayout);
    }

    @Override
    public void paint(Graphics g) {
        guard.accept(TEXTS.text("doing.painted"), () -> super.paint(g));
    }

    @Override
    public Dimension getPreferredSize() {
        Dimension[] size = {new Dimension(100, 100)};
        guard.accept(TEXTS.text("doing.sized"), () -> size[0] = super.getPreferredSize());
        return size[0];
    }

    @Override
    public Dimension getMinimumSize() {
        Dimension[] size = {new Dimension(0, 0)};
        guard.accept(TEXTS.text("doing.sized"), () -> size[0] = super.getMinimumSize());
        return size[0];
    }
}
