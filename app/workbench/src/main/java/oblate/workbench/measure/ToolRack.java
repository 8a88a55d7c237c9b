/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.AbstractAction;
import javax.swing.Icon;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import oblate.disc.PixelPoint;
import oblate.workbench.MeasureTool;
import oblate.workbench.PanelContext;
import oblate.workbench.ToolContext;
import oblate.workbench.ToolInHand;
import oblate.workbench.ToolPicture;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The plugged-in tools of the desk: their buttons, the one in hand, and what it draws. A tool that throws is laid down and switched off. */
final class ToolRack extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ToolRack.class);

    private final transient PanelContext context;
    private final transient Supplier<Optional<OpenPicture>> open;
    private final transient Runnable overlayChanged;
    private final transient Consumer<PixelPoint> drop;
    private final JLabel result = new JLabel();
    private final JComponent keys;
    private final transient List<KeyStroke> bound = new ArrayList<>();
    private transient Optional<Held> held = Optional.empty();
    private transient List<Drawn> overlay = List.of();

    private record Held(MeasureTool tool, ToolInHand hand) {}

    /**
     * @param keys component below which the tools' keys work
     * @param open the picture on the desk
     * @param overlayChanged draws anew what lies over the picture
     * @param drop sets a mark
     */
    ToolRack(
            PanelContext context,
            JComponent keys,
            Supplier<Optional<OpenPicture>> open,
            Runnable overlayChanged,
            Consumer<PixelPoint> drop) {
        super(new MigLayout("insets 0, gap 2"));
        this.context = context;
        this.open = open;
        this.overlayChanged = overlayChanged;
        this.drop = drop;
        this.keys = keys;
        result.setName("tool.result");
        result.setFont(Theme.figureFont(0));
        tell(Optional.empty());
        setOpaque(false);
        setName("tools");
        context.plugins().whenChanged(this::fill);
        fill();
    }

    /** Where the tool in hand shows its result. */
    JLabel result() {
        return result;
    }

    private void tell(Optional<String> words) {
        result.setText(words.orElse(""));
        result.setToolTipText(words.orElse(null));
        result.setVisible(words.isPresent());
    }

    private void fill() {
        List<MeasureTool> tools = context.plugins().tools();
        if (held.isPresent() && !tools.contains(held.get().tool())) {
            held = Optional.empty();
            overlay = List.of();
            tell(Optional.empty());
            overlayChanged.run();
        }
        removeAll();
        bound.forEach(k -> keys.getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).remove(k));
        bound.clear();
        for (MeasureTool tool : tools) {
            context.plugins()
                    .ask(tool, TEXTS.text("doing.button"), () -> button(tool))
                    .ifPresent(this::add);
        }
        revalidate();
        repaint();
    }

    private JToggleButton button(MeasureTool tool) {
        Optional<Icon> icon = tool.icon();
        Optional<KeyStroke> key = tool.key();
        JToggleButton button = new JToggleButton(tool.label(), icon.orElse(null), isHeld(tool));
        button.setName("tool." + tool.id());
        button.putClientProperty("JButton.buttonType", "toolBarButton");
        button.setFocusable(false);
        button.setToolTipText(tool.hint() + key.map(k -> "  (" + words(k) + ")").orElse(""));
        button.addActionListener(e -> toggle(tool));
        key.ifPresent(k -> {
            keys.getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(k, "tool." + tool.id());
            keys.getActionMap().put("tool." + tool.id(), new Toggle(tool));
            bound.add(k);
        });
        return button;
    }

    private static String words(KeyStroke key) {
        String with = InputEvent.getModifiersExText(key.getModifiers());
        return (with.isEmpty() ? "" : with + "+") + KeyEvent.getKeyText(key.getKeyCode());
    }

    private boolean isHeld(MeasureTool tool) {
        return held.isPresent() && held.get().tool().equals(tool);
    }

    private void toggle(MeasureTool tool) {
        boolean wasHeld = isHeld(tool);
        layDown();
        if (!wasHeld) {
            held = context.plugins()
                    .ask(tool, TEXTS.text("doing.taken"), () -> tool.take(new Context()))
                    .map(hand -> new Held(tool, hand));
            askOverlay();
        }
        for (java.awt.Component child : getComponents()) {
            ((JToggleButton) child)
                    .setSelected(held.isPresent()
                            && child.getName()
                                    .equals("tool." + held.get().tool().id()));
        }
    }

    /** Lays the tool down that is in hand; false when there is none. */
    boolean layDown() {
        if (held.isEmpty()) {
            return false;
        }
        Held before = held.get();
        held = Optional.empty();
        overlay = List.of();
        context.plugins().tell(before.tool(), TEXTS.text("doing.laid.down"), () -> before.hand()
                .laidDown());
        tell(Optional.empty());
        overlayChanged.run();
        for (java.awt.Component child : getComponents()) {
            ((JToggleButton) child).setSelected(false);
        }
        return true;
    }

    /** Hands a click to the tool in hand; false when there is none. */
    boolean clicked(PixelPoint at) {
        return with(TEXTS.text("doing.click"), hand -> hand.clicked(at));
    }

    /** Tells the tool in hand where the pointer is. */
    void moved(Optional<PixelPoint> at) {
        with(TEXTS.text("doing.pointer"), hand -> hand.moved(at));
    }

    /** Tells the tool in hand that picture, fit or marks are others. */
    void pictureChanged() {
        if (held.isPresent()) {
            Held now = held.get();
            context.plugins().tell(now.tool(), TEXTS.text("doing.picture"), () -> now.hand()
                    .pictureChanged());
            overlay = asked(now);
        }
    }

    private boolean with(String doing, Consumer<ToolInHand> deed) {
        if (held.isEmpty()) {
            return false;
        }
        Held now = held.get();
        context.plugins().tell(now.tool(), doing, () -> deed.accept(now.hand()));
        askOverlay();
        return true;
    }

    private void askOverlay() {
        List<Drawn> before = overlay;
        overlay = held.map(this::asked).orElse(List.of());
        if (!overlay.equals(before)) {
            overlayChanged.run();
        }
    }

    private List<Drawn> asked(Held now) {
        return context.plugins()
                .ask(
                        now.tool(),
                        TEXTS.text("doing.drawing"),
                        () -> List.copyOf(now.hand().overlay()))
                .orElse(List.of());
    }

    /** What the tool in hand draws. */
    List<Drawn> overlay() {
        return overlay;
    }

    private final class Toggle extends AbstractAction {
        private static final long serialVersionUID = 1L;
        private final transient MeasureTool tool;

        Toggle(MeasureTool tool) {
            this.tool = tool;
        }

        @Override
        public void actionPerformed(ActionEvent e) {
            toggle(tool);
        }
    }

    private final class Context implements ToolContext {
        @Override
        public Optional<ToolPicture> picture() {
            return open.get()
                    .map(o -> new ToolPicture(
                            o.picture(),
                            o.pixels(),
                            o.fit(),
                            o.frame(),
                            o.timeSigmaS(),
                            MarkDesk.PICK_SIGMA_PX,
                            o.marks()));
        }

        @Override
        public void redraw() {
            askOverlay();
        }

        @Override
        public void tell(String words) {
            ToolRack.this.tell(Optional.of(words));
        }

        @Override
        public void addMark(PixelPoint at) {
            drop.accept(at);
        }

        @Override
        public PanelContext panel() {
            return context;
        }
    }
}
