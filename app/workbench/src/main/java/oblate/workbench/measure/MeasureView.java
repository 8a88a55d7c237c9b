/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BorderLayout;
import java.awt.Point;
import java.awt.event.HierarchyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureFacts;
import oblate.archive.StoredMark;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.image.PixelGrid;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** Film strip, tools, canvas and readout of the measuring desk. */
final class MeasureView extends JPanel implements Desk.Listener, DiscCanvas.Events {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MeasureView.class);
    private final transient PanelContext context;
    private final transient ViewSettings settings;
    private final transient Desk desk;
    private final transient HandOutline outline;
    private final DiscCanvas canvas;
    private final FilmStrip film;
    private final transient NamingDesk naming;
    private final StretchBar stretch;
    private final MeasureInspector inspector;
    private final DeskTools tools;
    private final DeskCards cards;
    private final transient DeskGestures gestures;
    private final JLabel readout = new JLabel(" ");
    private final JLabel zoom = new JLabel();
    private final ToolRack rack;
    private transient List<Drawn> planned = List.of();

    MeasureView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        settings = new ViewSettings(context.settings(), this::settingsChanged);
        desk = new Desk(context, this);
        outline = new HandOutline(desk, this::outlineChanged);
        canvas = new DiscCanvas(context::palette, context.background(), this);
        film = new FilmStrip(context);
        naming = new NamingDesk(context, desk, canvas);
        stretch = new StretchBar(settings, this::settingsChanged);
        inspector = new MeasureInspector(context, desk, stretch, outline);
        canvas.setEmptyWords(TEXTS.text("empty"));
        rack = new ToolRack(context, this, desk::open, this::showPlan, desk.hand()::drop);
        gestures = new DeskGestures(context, desk, canvas, outline, naming, inspector, rack);
        MeasureActions actions = new MeasureActions(this);
        tools = new DeskTools(actions, settings, rack);
        cards = new DeskCards(context, desk, canvas, this::otherViewShown);
        cards.bind(actions);
        layOut();
        actions.bind(canvas, this);
        actions.all().forEach(context::offer);
        context.showInInspector(inspector);
        context.selection().whenChanged(this::follow);
        context.shelf().whenChanged(this::follow);
        context.whenLookChanged(this::lookChanged);
        canvas.setMagnifying(settings.magnifies());
        refreshTools();
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
        foot.add(rack.result(), "gapright 16");
        foot.add(zoom);
        add(top, BorderLayout.NORTH);
        add(cards, BorderLayout.CENTER);
        add(foot, BorderLayout.SOUTH);
    }

    Desk desk() {
        return desk;
    }

    HandOutline outline() {
        return outline;
    }

    DiscCanvas canvas() {
        return canvas;
    }

    DeskGestures gestures() {
        return gestures;
    }

    ViewSettings settings() {
        return settings;
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
        if (context.shelf().isRead() && context.shelf().pictures().isEmpty()) {
            canvas.setEmptyWords(TEXTS.text("empty.archive"));
        }
        chosen.ifPresent(picture -> {
            film.show(picture.night()
                    .map(n -> context.shelf().ofNight(n, picture.planetId()))
                    .orElse(List.of(picture)));
            boolean corrected = desk.open()
                    .map(OpenPicture::picture)
                    .filter(p -> p.id() == picture.id())
                    .filter(p -> !PictureFacts.of(p).equals(PictureFacts.of(picture)))
                    .isPresent();
            if (corrected) {
                desk.reopen();
            } else {
                desk.open(picture);
            }
        });
    }

    @Override
    public boolean isSeen() {
        return isShowing();
    }

    @Override
    public void pictureChanged() {
        naming.close();
        outline.leave();
        cards.showOne();
        canvas.hold(Optional.empty());
        canvas.setEmptyWords(desk.trouble().orElse(""));
        canvas.setPicture(desk.pyramid(), look());
        if (desk.open().isPresent()) {
            OpenPicture open = desk.open().get();
            whole(open, true);
            PixelGrid pixels = open.pixels();
            readout.setText(
                    TEXTS.text("readout.size", Integer.toString(pixels.widthPx()), Integer.toString(pixels.heightPx()))
                            + "    " + open.picture().originalName());
        } else {
            readout.setText(" ");
        }
        readout.setForeground(context.palette().quietInk());
        inspector.showPicture();
        refreshTools();
        turn();
        rack.pictureChanged();
        plan();
    }

    private void whole(OpenPicture open, boolean again) {
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

    /** The readout speaks of the one picture: while another view lies over it there is nothing to read. */
    private void otherViewShown(boolean other) {
        readout.setVisible(!other);
        zoom.setVisible(!other);
    }

    private Optional<Placement> placement() {
        return desk.open().flatMap(o -> o.fit().map(f -> f.fit().placement()));
    }

    private void turn() {
        Optional<Placement> placement = placement();
        double turn =
                placement.map(p -> context.bearing().turnDeg(p.poleAngleDeg())).orElse(0.0);
        canvas.turn(turn + settings.turnDeg(), settings.isFlipped());
        Optional<String> grid = desk.open()
                .filter(o -> placement.isPresent())
                .flatMap(OpenPicture::disc)
                .map(d -> TEXTS.text(
                        "words.grid",
                        Integer.toString(settings.gridStepDeg()),
                        settings.system(d.planet()).label()));
        List<String> lines = new ArrayList<>();
        if (desk.open().isPresent()) {
            String looks = ViewWords.looks(grid, settings.channel(), stretch.isStretched(), settings.sharpen());
            if (!looks.isEmpty()) {
                lines.add(looks);
            }
            lines.add(ViewWords.of(placement, canvas.view()));
        }
        canvas.setCornerWords(lines);
    }

    @Override
    public void contentChanged() {
        desk.open().ifPresent(open -> {
            whole(open, false);
            turn();
            rack.pictureChanged();
            plan();
            inspector.showContent();
        });
    }

    @Override
    public void nextPlanned(List<ArchivedPicture> next) {
        film.warm(next);
    }

    private void plan() {
        List<Drawn> plan = new ArrayList<>();
        desk.open().flatMap(OpenPicture::frame).ifPresent(frame -> {
            OpenPicture open = desk.open().orElseThrow();
            LayerInput input = new LayerInput(
                    frame,
                    open.fit().orElseThrow().fit().trust(),
                    settings.system(frame.disc().planet()),
                    desk.hand().shown(),
                    desk.hand().chosenId(),
                    open.expected(),
                    open.moonSpots(),
                    settings.gridStepDeg());
            settings.layers().forEach(l -> plan.addAll(l.plan(input)));
        });
        planned = plan;
        showPlan();
    }

    private void showPlan() {
        List<Drawn> all = new ArrayList<>(planned);
        all.addAll(rack.overlay());
        canvas.setPlan(all);
    }

    private Look look() {
        return stretch.look(
                desk.open().map(OpenPicture::pixels), context.palette().picturesRed());
    }

    private void settingsChanged() {
        canvas.setMagnifying(settings.magnifies());
        canvas.setLook(look());
        stretch.refresh();
        refreshTools();
        turn();
        plan();
    }

    private void refreshTools() {
        tools.refresh(desk.open()
                .flatMap(OpenPicture::disc)
                .map(d -> SystemLabel.brief(settings.system(d.planet())))
                .orElse(TEXTS.text("tools.system")));
    }

    private void outlineChanged() {
        canvas.setTool(outline.isOpen() ? Optional.of(outline) : Optional.empty());
        inspector.showOutline();
    }

    private void lookChanged() {
        readout.setFont(Theme.figureFont(0));
        readout.setForeground(context.palette().quietInk());
        zoom.setForeground(context.palette().quietInk());
        canvas.setLook(look());
        if (desk.open().isPresent()) {
            turn();
            plan();
            inspector.showPicture();
        }
        cards.refresh();
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
        gestures.clicked(pixel, screen);
    }

    @Override
    public void circled(PixelPoint centre, double radiusPx) {
        desk.fits().fitNear(centre, radiusPx);
    }

    @Override
    public void viewChanged() {
        zoom.setText(desk.open().isEmpty() ? "" : Figures.fixed(canvas.view().scale() * 100, 0) + " %");
        naming.place();
    }

    @Override
    public void nameWanted(StoredMark mark) {
        naming.ask(mark);
    }

    /** Draws the grid in the planet's next system. */
    void nextSystem() {
        desk.open().flatMap(OpenPicture::disc).ifPresent(d -> settings.nextSystem(d.planet()));
    }

    /** Shows two pictures, or one again. */
    void toggleCompare() {
        cards.toggleCompare();
    }

    /** Shows the chosen mark's place, or the pointer's, through the season, or one picture again. */
    void toggleSeason() {
        cards.toggleSeason(gestures.chosenMark());
    }

    /** Begins an outline by hand on the one picture, or puts it away. */
    void toggleHand() {
        cards.showOne();
        gestures.toggleHand();
    }
}
