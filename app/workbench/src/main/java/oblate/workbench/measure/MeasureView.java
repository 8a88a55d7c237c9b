/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BorderLayout;
import java.awt.Point;
import java.awt.event.ActionEvent;
import java.awt.event.HierarchyEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.image.Crop;
import oblate.image.PixelGrid;
import oblate.image.Preview;
import oblate.image.Previews;
import oblate.image.Tone;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.Figures;
import oblate.workbench.look.LineIcon;
import oblate.workbench.look.RedLight;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.SystemLabel;

/** Film strip, tools, canvas and readout of the measuring desk. */
final class MeasureView extends JPanel implements Desk.Listener, DiscCanvas.Events {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_SHOWN_PX = 4096;
    private static final double HIT_PX = 9;
    private static final double STEP_PX = 0.1;
    private final transient PanelContext context;
    private final transient Desk desk;
    private final DiscCanvas canvas;
    private final FilmStrip film;
    private final NamingList naming;
    private final StretchBar stretch;
    private final MeasureInspector inspector;
    private final JPanel tools = new JPanel(new MigLayout("insets 6 12 6 12, gap 2", "[]12[]push[]"));
    private final JLabel readout = new JLabel(" ");
    private final JLabel zoom = new JLabel();
    private final ToolRack rack;
    private final JLabel toolResult = new JLabel();
    private transient List<Drawn> planned = List.of();
    private final transient List<Layer> shownLayers = new ArrayList<>();
    private transient Optional<Tone> waitingTone = Optional.empty();
    private boolean toning;

    MeasureView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        desk = new Desk(context, this);
        canvas = new DiscCanvas(context::palette, this);
        film = new FilmStrip(context);
        naming = new NamingList(context::palette, this::named, this::leaveUnnamed);
        stretch = new StretchBar(s -> toneAgain());
        inspector = new MeasureInspector(context, desk, stretch);
        rack = new ToolRack(context, this, new RackBench());
        canvas.add(naming);
        canvas.setEmptyWords("Choose a picture in the nights or on the ribbon.");
        buildTools();
        layOut();
        bindKeys();
        context.showInInspector(inspector);
        context.selection().whenChanged(this::follow);
        context.shelf().whenChanged(this::follow);
        context.whenLookChanged(this::lookChanged);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                follow();
            }
        });
    }

    private void layOut() {
        JScrollPane strip =
                new JScrollPane(film, JScrollPane.VERTICAL_SCROLLBAR_NEVER, JScrollPane.HORIZONTAL_SCROLLBAR_AS_NEEDED);
        strip.setBorder(BorderFactory.createEmptyBorder());
        strip.getHorizontalScrollBar().setUnitIncrement(40);
        JPanel top = new JPanel(new BorderLayout());
        top.setOpaque(false);
        top.add(strip, BorderLayout.NORTH);
        top.add(tools, BorderLayout.CENTER);
        JPanel foot = new JPanel(new MigLayout("insets 6 16 6 16, fillx, hidemode 3", "[grow,fill][][]", "[20!]"));
        foot.setOpaque(false);
        readout.setName("readout");
        readout.setFont(Theme.figureFont(0));
        foot.add(readout, "wmin 0");
        toolResult.setName("tool.result");
        toolResult.setFont(Theme.figureFont(0));
        toolResult.setVisible(false);
        foot.add(toolResult, "gapright 16");
        foot.add(zoom);
        add(top, BorderLayout.NORTH);
        add(canvas, BorderLayout.CENTER);
        add(foot, BorderLayout.SOUTH);
    }

    private void buildTools() {
        tools.setOpaque(false);
        JButton fit = new JButton("Fit", new LineIcon(18, Drawings::fit));
        fit.setName("fit");
        fit.setToolTipText(
                "Finds the disc in the picture  (F5). Where that fails: Ctrl and drag from the disc’s centre to its edge, and it starts from there");
        fit.addActionListener(e -> desk.fit());
        tools.add(fit);
        JPanel switches = new JPanel(new MigLayout("insets 0, gap 2"));
        switches.setOpaque(false);
        for (Layer layer : Layers.all()) {
            boolean on =
                    context.settings().flag("layer." + layer.id(), !layer.id().equals("belts"));
            toggle(switches, layer.label(), layer.hint(), on, chosen -> {
                context.settings().keep("layer." + layer.id(), chosen);
                shownLayers.removeIf(l -> l.id().equals(layer.id()));
                if (chosen) {
                    shownLayers.add(layer);
                }
                shownLayers.sort(java.util.Comparator.comparingInt(l -> order(l.id())));
                plan();
            });
            if (on) {
                shownLayers.add(layer);
            }
        }
        toggle(
                switches,
                "Magnifier",
                "The pixels about the pointer, eight times as large",
                context.settings().flag("magnifier", true),
                on -> {
                    context.settings().keep("magnifier", on);
                    canvas.setMagnifying(on);
                });
        canvas.setMagnifying(context.settings().flag("magnifier", true));
        switches.add(rack, "gapbefore 10");
        tools.add(switches);
        JButton next = new JButton("Accept and next");
        next.setName("next");
        next.setToolTipText("Goes on to the next picture of the night  (Space)");
        next.addActionListener(e -> desk.step(1));
        tools.add(next);
    }

    private static int order(String id) {
        List<Layer> all = Layers.all();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).id().equals(id)) {
                return i;
            }
        }
        return all.size();
    }

    private static void toggle(
            JPanel where, String label, String hint, boolean on, java.util.function.Consumer<Boolean> whenChanged) {
        JToggleButton button = new JToggleButton(label, on);
        button.setName("layer." + label);
        button.putClientProperty("JButton.buttonType", "toolBarButton");
        button.setFocusable(false);
        button.setToolTipText(hint);
        button.addActionListener(e -> whenChanged.accept(button.isSelected()));
        where.add(button);
    }

    private void bindKeys() {
        key("fit", KeyEvent.VK_F5, 0, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, desk::fit);
        key("next", KeyEvent.VK_PAGE_DOWN, 0, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, () -> desk.step(1));
        key("previous", KeyEvent.VK_PAGE_UP, 0, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, () -> desk.step(-1));
        canvasKey("accept", KeyEvent.VK_SPACE, () -> desk.step(1));
        canvasKey("withdraw", KeyEvent.VK_DELETE, desk::withdraw);
        canvasKey("none", KeyEvent.VK_ESCAPE, () -> {
            if (!rack.layDown()) {
                desk.choose(Optional.empty());
            }
        });
        canvasKey("whole", KeyEvent.VK_0, canvas::showWhole);
        canvasKey("in", KeyEvent.VK_PLUS, () -> canvas.zoom(1.25));
        canvasKey("in2", KeyEvent.VK_EQUALS, () -> canvas.zoom(1.25));
        canvasKey("in3", KeyEvent.VK_ADD, () -> canvas.zoom(1.25));
        canvasKey("out", KeyEvent.VK_MINUS, () -> canvas.zoom(0.8));
        canvasKey("out2", KeyEvent.VK_SUBTRACT, () -> canvas.zoom(0.8));
        arrow(KeyEvent.VK_LEFT, -1, 0);
        arrow(KeyEvent.VK_RIGHT, 1, 0);
        arrow(KeyEvent.VK_UP, 0, -1);
        arrow(KeyEvent.VK_DOWN, 0, 1);
        menu("Fit the disc", KeyEvent.VK_F5, desk::fit);
        menu("Next picture of the night  (Space)", KeyEvent.VK_PAGE_DOWN, () -> desk.step(1));
        menu("Previous picture of the night", KeyEvent.VK_PAGE_UP, () -> desk.step(-1));
        menu("Name the chosen mark", KeyEvent.VK_F2, this::renameChosen);
        menu("Withdraw the chosen mark  (Delete)", 0, desk::withdraw);
        menu("Whole disc  (0)", 0, canvas::showWhole);
    }

    private void menu(String text, int code, Runnable deed) {
        Action action = action(text, deed);
        if (code != 0) {
            action.putValue(Action.ACCELERATOR_KEY, KeyStroke.getKeyStroke(code, 0));
        }
        context.offer(action);
    }

    private void arrow(int code, int dx, int dy) {
        for (int shift = 0; shift < 2; shift++) {
            double step = shift == 0 ? STEP_PX : 1;
            KeyStroke stroke = KeyStroke.getKeyStroke(code, shift == 0 ? 0 : InputEvent.SHIFT_DOWN_MASK);
            String name = "arrow " + code + " " + shift;
            canvas.getInputMap(WHEN_FOCUSED).put(stroke, name);
            canvas.getActionMap().put(name, action(name, () -> arrowPressed(dx * step, dy * step)));
        }
    }

    private void arrowPressed(double dx, double dy) {
        PixelPoint step = canvas.view().stepInPicture(dx, dy);
        if (desk.move(step.xPx(), step.yPx())) {
            canvas.hold(desk.chosenPixel());
        } else {
            canvas.pan(-Math.signum(dx) * 40, -Math.signum(dy) * 40);
        }
    }

    private void canvasKey(String name, int code, Runnable deed) {
        canvas.getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(code, 0), name);
        canvas.getActionMap().put(name, action(name, deed));
    }

    private void key(String name, int code, int modifiers, int condition, Runnable deed) {
        getInputMap(condition).put(KeyStroke.getKeyStroke(code, modifiers), name);
        getActionMap().put(name, action(name, deed));
    }

    private static Action action(String name, Runnable deed) {
        return new AbstractAction(name) {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        };
    }

    @Override
    public boolean requestFocusInWindow() {
        return canvas.requestFocusInWindow();
    }

    /** Brings the chosen picture onto the desk once the desk is seen. */
    private void follow() {
        if (!isShowing()) {
            return;
        }
        Optional<ArchivedPicture> chosen = context.selection().pictureId().flatMap(context.shelf()::picture);
        chosen.ifPresent(picture -> {
            film.show(picture.night()
                    .map(n -> context.shelf().ofNight(n, picture.planetId()))
                    .orElse(List.of(picture)));
            desk.open(picture, context.settings().flag("fit.new", true));
        });
    }

    @Override
    public void pictureChanged() {
        naming.setVisible(false);
        OpenPicture open = desk.open().orElseThrow();
        PixelGrid pixels = open.pixels();
        canvas.setImage(Optional.empty(), 1);
        canvas.setEmptyWords("");
        whole(true);
        turn();
        toneAgain();
        inspector.showPicture();
        rack.pictureChanged();
        plan();
        readout.setText(pixels.widthPx() + " × " + pixels.heightPx() + " px    "
                + open.picture().originalName());
        readout.setForeground(context.palette().quietInk());
    }

    private void whole(boolean again) {
        OpenPicture open = desk.open().orElseThrow();
        Optional<Placement> placement = open.fit().map(f -> f.fit().placement());
        PixelGrid pixels = open.pixels();
        PixelPoint middle = placement
                .map(p -> new PixelPoint(p.centreXPx(), p.centreYPx()))
                .orElse(new PixelPoint((pixels.widthPx() - 1) / 2.0, (pixels.heightPx() - 1) / 2.0));
        double radius = placement
                .map(Placement::equatorialRadiusPx)
                .orElse(Math.min(pixels.widthPx(), pixels.heightPx()) / 2.0);
        canvas.setWhole(middle, radius, again);
    }

    private void turn() {
        Optional<Placement> placement =
                desk.open().flatMap(o -> o.fit().map(f -> f.fit().placement()));
        canvas.turn(
                placement.map(p -> context.bearing().turnDeg(p.poleAngleDeg())).orElse(0.0));
        String bearing = placement.isPresent() ? context.bearing().words() : "as taken";
        String sense = placement
                .map(p -> p.mirrored() ? ", mirror image" : ", sky sense")
                .orElse(", not fitted yet");
        String grid = desk.open()
                .flatMap(OpenPicture::disc)
                .map(d -> "    grid in " + SystemLabel.usual(d.planet()).label())
                .orElse("");
        canvas.setCornerWords(bearing + sense + "  (F6 turns)" + (placement.isPresent() ? grid : ""));
    }

    @Override
    public void contentChanged() {
        if (desk.open().isPresent()) {
            whole(false);
            turn();
            rack.pictureChanged();
            plan();
            inspector.showContent();
        }
    }

    private void plan() {
        List<Drawn> plan = new ArrayList<>();
        desk.open().flatMap(OpenPicture::frame).ifPresent(frame -> {
            OpenPicture open = desk.open().orElseThrow();
            LayerInput input = new LayerInput(
                    frame,
                    open.fit().orElseThrow().fit().trust(),
                    SystemLabel.usual(frame.disc().planet()),
                    desk.shownMarks(),
                    desk.chosenMark(),
                    open.expected());
            shownLayers.forEach(l -> plan.addAll(l.plan(input)));
        });
        planned = plan;
        showPlan();
    }

    private void showPlan() {
        List<Drawn> all = new ArrayList<>(planned);
        all.addAll(rack.overlay());
        canvas.setPlan(all);
    }

    /** Makes the shown image anew; while one is being made, only the last wish is kept. */
    private void toneAgain() {
        if (desk.open().isEmpty()) {
            return;
        }
        PixelGrid pixels = desk.open().get().pixels();
        waitingTone = Optional.of(stretch.tone(pixels));
        if (!toning) {
            makeImage();
        }
    }

    private void makeImage() {
        OpenPicture open = desk.open().orElseThrow();
        Tone tone = waitingTone.orElseThrow();
        boolean red = context.palette().picturesRed();
        waitingTone = Optional.empty();
        toning = true;
        context.background().promptly(() -> render(open.pixels(), tone, red), image -> {
            toning = false;
            if (desk.open().map(o -> o.pixels() == open.pixels()).orElse(false)) {
                canvas.setImage(Optional.of(image), open.pixels().widthPx() / (double) image.getWidth());
            }
            if (waitingTone.isPresent()) {
                makeImage();
            }
        });
    }

    private static BufferedImage render(PixelGrid pixels, Tone tone, boolean red) {
        Preview preview = new Previews().draw(pixels, Crop.all(pixels), LONGEST_SHOWN_PX, tone);
        return red ? RedLight.on(preview.toImage()) : preview.toImage();
    }

    private void lookChanged() {
        readout.setFont(Theme.figureFont(0));
        zoom.setForeground(context.palette().quietInk());
        if (desk.open().isPresent()) {
            turn();
            plan();
            toneAgain();
            inspector.showPicture();
        }
    }

    @Override
    public void pointed(Optional<PixelPoint> pixel) {
        rack.moved(pixel);
        if (pixel.isEmpty() || desk.open().isEmpty()) {
            return;
        }
        Readout here = Readout.at(desk.open().get(), pixel.get());
        readout.setText(here.text());
        readout.setForeground(
                here.trusted() ? context.palette().ink() : context.palette().quietInk());
    }

    @Override
    public void clicked(PixelPoint pixel, Point screen) {
        if (naming.isVisible()) {
            leaveUnnamed();
            return;
        }
        if (rack.clicked(pixel)) {
            return;
        }
        Optional<StoredMark> hit = desk.shownMarks().stream()
                .filter(m -> canvas.view().toScreen(m.mark().pixel()).distance(screen) <= HIT_PX)
                .findFirst();
        if (hit.isPresent()) {
            desk.choose(hit.map(StoredMark::id));
        } else {
            desk.drop(pixel);
        }
    }

    @Override
    public void circled(PixelPoint centre, double radiusPx) {
        desk.fitNear(centre, radiusPx);
    }

    @Override
    public void viewChanged() {
        zoom.setText(Figures.fixed(canvas.view().scale() * 100, 0) + " %");
        placeNaming();
    }

    @Override
    public void nameWanted(StoredMark mark) {
        OpenPicture open = desk.open().orElseThrow();
        String planet = open.picture().planetId().orElseThrow();
        context.background().quietly(() -> context.archive().features(planet), features -> {
            double sigma = mark.mark().errors().map(ErrorBudget::totalLonDeg).orElse(1.0);
            List<Offer> offers = Offer.rank(
                    features,
                    open.expected(),
                    open.disc().orElseThrow(),
                    mark.mark().point(),
                    sigma);
            naming.ask(offers, planet, mark.mark().point().isEmpty());
            placeNaming();
        });
    }

    private void renameChosen() {
        desk.shownMarks().stream()
                .filter(m -> desk.chosenMark().equals(Optional.of(m.id())))
                .findFirst()
                .ifPresent(this::nameWanted);
    }

    private void placeNaming() {
        if (!naming.isVisible()) {
            return;
        }
        desk.chosenPixel().ifPresent(pixel -> {
            Point2D.Double at = canvas.view().toScreen(pixel);
            int x = (int) Math.max(8, Math.min(canvas.getWidth() - naming.getWidth() - 8.0, at.x - 40));
            double below = at.y + 22;
            double y = below + naming.getHeight() < canvas.getHeight() ? below : at.y - 22 - naming.getHeight();
            naming.setLocation(x, (int) Math.max(8, y));
            naming.revalidate();
        });
    }

    private void named(oblate.archive.Feature feature) {
        naming.setVisible(false);
        desk.name(feature);
        canvas.requestFocusInWindow();
    }

    private void leaveUnnamed() {
        naming.setVisible(false);
        canvas.requestFocusInWindow();
    }

    /** What the plugged-in tools work on. */
    private final class RackBench implements ToolRack.Bench {
        @Override
        public Optional<OpenPicture> open() {
            return desk.open();
        }

        @Override
        public void overlayChanged() {
            showPlan();
        }

        @Override
        public void drop(PixelPoint at) {
            desk.drop(at);
        }

        @Override
        public void tell(Optional<String> result) {
            toolResult.setText(result.orElse(""));
            toolResult.setToolTipText(result.orElse(null));
            toolResult.setVisible(result.isPresent());
        }
    }
}
