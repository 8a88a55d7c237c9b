/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BorderLayout;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.DiscFrame;
import oblate.disc.MapBuilder;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.PlanetMap;
import oblate.disc.SurfacePoint;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.workbench.Bearing;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.RedLight;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** One place of the planet on every fitted picture of the season that shows it, each cut to the same little map. On the event thread only. */
final class SeasonPane extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SeasonPane.class);
    private static final double LARGEST_EMISSION_DEG = 68;
    private static final double CELL_DEG = 0.25;
    private final transient PanelContext context;
    private final transient Desk desk;
    private final JComboBox<Carry> carry = new JComboBox<>();
    private final JLabel title = new JLabel();
    private final CutCells cells;
    private transient Optional<Job> job = Optional.empty();
    private transient Optional<Start> start = Optional.empty();

    /** Where the place was on the picture it was chosen on. */
    private record Start(ApparentDisc disc, SurfacePoint point, Optional<String> feature) {}

    SeasonPane(PanelContext context, Desk desk, Runnable leave) {
        super(new BorderLayout());
        this.context = context;
        this.desk = desk;
        setName("season.pane");
        setOpaque(false);
        cells = new CutCells(context, id -> {
            leave.run();
            context.openPicture(id);
        });
        JPanel bar = new JPanel(new MigLayout("insets 4 12 4 12, gap 8", "[][]push[]"));
        bar.setOpaque(false);
        bar.add(title, "wmin 0");
        carry.setName("season.carry");
        carry.addActionListener(e -> gather());
        bar.add(carry, "wmin 140, wmax 220");
        JButton away = new JButton(TEXTS.text("season.leave"));
        away.setName("season.leave");
        away.addActionListener(e -> leave.run());
        bar.add(away);
        JScrollPane scroll = new JScrollPane(
                cells, JScrollPane.VERTICAL_SCROLLBAR_AS_NEEDED, JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.getVerticalScrollBar().setUnitIncrement(40);
        add(bar, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
    }

    @Override
    public boolean requestFocusInWindow() {
        return cells.requestFocusInWindow();
    }

    /** Follows a place of the picture on the desk; says why not where it cannot. */
    Optional<String> begin(Optional<SurfacePoint> point, Optional<String> feature) {
        Optional<ApparentDisc> disc = desk.open().flatMap(OpenPicture::disc);
        if (disc.isEmpty() || point.isEmpty()) {
            return Optional.of(TEXTS.text("season.choose"));
        }
        start = Optional.of(new Start(disc.get(), point.get(), feature));
        title.setText(feature.orElse(TEXTS.text("season.place")));
        cells.clear(TEXTS.text("season.gathering"));
        carry.removeAllItems();
        context.background().aside(() -> Carry.all(context.archive(), disc.get().planet()), this::offer);
        return Optional.empty();
    }

    private void offer(List<Carry> ways) {
        start.ifPresent(s -> {
            String usual = Carry.in(s.disc().planet().customarySystem(s.point().latGraphicDeg()))
                    .label();
            String wanted = s.feature().map(Carry::with).orElse(usual);
            Optional<Carry> chosen = ways.stream()
                    .filter(w -> w.label().equals(wanted))
                    .findFirst()
                    .or(() -> ways.stream().filter(w -> w.label().equals(usual)).findFirst());
            // The choice that is added first is taken at once, so that the season is gathered only once.
            chosen.ifPresent(carry::addItem);
            ways.stream().filter(w -> !Optional.of(w).equals(chosen)).forEach(carry::addItem);
        });
    }

    /** Stops what is under way. */
    void leave() {
        job.ifPresent(Job::stop);
        job = Optional.empty();
        start = Optional.empty();
    }

    private void gather() {
        if (start.isEmpty() || !(carry.getSelectedItem() instanceof Carry way)) {
            return;
        }
        job.ifPresent(Job::stop);
        Start from = start.get();
        Optional<String> planet = Optional.of(from.disc().planet().id());
        List<ArchivedPicture> pictures = context.shelf().pictures().stream()
                .filter(p -> p.fitted() && p.time().isPresent() && p.planetId().equals(planet))
                .toList();
        cells.clear(TEXTS.text("season.gathering"));
        boolean southUp = context.bearing() == Bearing.SOUTH_UP;
        boolean red = context.palette().picturesRed();
        job = Optional.of(context.background()
                .run(
                        TEXTS.text("season.following"),
                        progress -> run(pictures, from, way, southUp, red, progress),
                        n -> cells.finished(n == 0 ? TEXTS.text("season.none") : "")));
        title.setText(TEXTS.text(
                        southUp ? "season.title.south.up" : "season.title.north.up",
                        from.feature().orElse(TEXTS.text("season.place")),
                        Figures.fixed(from.point().latGraphicDeg(), 1))
                + "  ");
    }

    private int run(
            List<ArchivedPicture> pictures, Start from, Carry way, boolean southUp, boolean red, Progress progress) {
        int found = 0;
        for (int i = 0; i < pictures.size() && !progress.isCancelled(); i++) {
            ArchivedPicture picture = pictures.get(i);
            progress.report(i, pictures.size(), picture.originalName());
            Optional<CutCells.Cut> cut = cut(picture, from, way, southUp, red);
            if (cut.isPresent()) {
                found++;
                SwingUtilities.invokeLater(() -> {
                    if (!progress.isCancelled()) {
                        cells.add(cut.get());
                    }
                });
            }
        }
        return found;
    }

    private Optional<CutCells.Cut> cut(ArchivedPicture picture, Start from, Carry way, boolean southUp, boolean red) {
        try {
            PlanetModel planet = from.disc().planet();
            ApparentDisc disc =
                    context.sky().disc(planet, picture.time().orElseThrow().midUtc());
            Optional<StoredFit> fit = context.archive().currentFit(picture.id());
            double lon = way.lonIauDeg(from.point().lonIauDeg(), from.disc(), disc);
            double lat = from.point().latGraphicDeg();
            Optional<DiscFrame> frame = fit.map(f -> new DiscFrame(disc, f.fit().placement()));
            Optional<SurfacePoint> seen = frame.flatMap(f -> f.place(lon, lat).flatMap(p -> f.locate(p.xPx(), p.yPx())))
                    .filter(p -> p.emissionDeg() < LARGEST_EMISSION_DEG && p.incidenceDeg() < 90);
            if (seen.isEmpty()) {
                return Optional.empty();
            }
            PixelGrid pixels = context.workbench()
                    .reader()
                    .decode(context.archive().fileOf(picture))
                    .pixels();
            double there = seen.get().lonDeg(disc, way.system());
            BufferedImage image = image(pixels, frame.orElseThrow(), way, there, lat, southUp);
            String words = SystemLabel.brief(way.system()) + " " + Figures.longitude(there);
            return Optional.of(new CutCells.Cut(
                    picture.id(), picture.time().orElseThrow().midUtc(), words, red ? RedLight.on(image) : image));
        } catch (ProblemException e) {
            // A picture whose file is broken or gone has no cut-out; opening it tells why.
            return Optional.empty();
        }
    }

    private static BufferedImage image(
            PixelGrid pixels, DiscFrame frame, Carry way, double lonDeg, double latDeg, boolean southUp) {
        MapFrame sheet = new MapFrame(
                frame.disc().planet(),
                way.system(),
                MapProjection.CYLINDRICAL,
                true,
                lonDeg,
                latDeg,
                CutCells.SIDE_PX,
                CutCells.SIDE_PX,
                CELL_DEG);
        PlanetMap map = new MapBuilder()
                .draw(
                        sheet,
                        List.of(new MapBuilder.Source("", pixels, frame)),
                        new MapBuilder.Manner(80, true),
                        Progress.SILENT);
        BufferedImage image = SameFrame.toned(PixelGrid.ranged(CutCells.SIDE_PX, CutCells.SIDE_PX, map.planes()));
        return southUp ? CutCells.turned(image) : image;
    }
}
