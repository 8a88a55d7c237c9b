/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseEvent;
import java.time.Instant;
import java.time.InstantSource;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import javax.swing.JComponent;
import oblate.archive.ArchivedPicture;
import oblate.archive.Rating;
import oblate.workbench.look.Figures;
import oblate.workbench.look.NightName;
import oblate.workbench.look.Palette;
import oblate.workbench.pictures.PictureState;
import oblate.workbench.words.Texts;

/**
 * Time from left to right: a tick per picture, as tall as the seeing was good; the apparent size as a soft curve; oppositions and conjunctions;
 * today. The archive's scroll bar.
 */
final class SeasonRibbon extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SeasonRibbon.class);
    private static final double NEAR_PX = 24;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private final transient Supplier<Palette> palette;
    private final transient Selection selection;
    private final transient InstantSource clock;
    private transient RibbonTicks ticks = RibbonTicks.none();
    private transient Season season = Season.none();
    private transient Optional<ArchivedPicture> chosen = Optional.empty();
    private transient Optional<Selection.Span> dragged = Optional.empty();
    private transient RibbonScale scale = new RibbonScale(0, 86_400 * 300, 600);
    private boolean unfitted = true;

    /**
     * @param palette the colours now
     * @param selection what is chosen: the span is put there
     * @param whenClicked gets the number of a picture whose night is to be shown
     * @param clock for today's line
     */
    SeasonRibbon(Supplier<Palette> palette, Selection selection, LongConsumer whenClicked, InstantSource clock) {
        this.palette = palette;
        this.selection = selection;
        this.clock = clock;
        setName("ribbon");
        setToolTipText("");
        setFocusable(true);
        setCursor(Cursor.getPredefinedCursor(Cursor.TEXT_CURSOR));
        new RibbonInput(this, selection, whenClicked).install();
        selection.whenChanged(this::repaint);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                resizeScale();
            }
        });
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                repaint();
            }

            @Override
            public void focusLost(FocusEvent e) {
                repaint();
            }
        });
    }

    private void resizeScale() {
        if (getWidth() > 0) {
            scale = unfitted && !ticks.isEmpty()
                    ? RibbonScale.covering(ticks.ends(), getWidth())
                    : scale.resized(getWidth());
            repaint();
        }
    }

    /** Shows the pictures of a shelf. */
    void show(Shelf shelf) {
        ticks = RibbonTicks.of(shelf.pictures(), p -> PictureState.of(p, shelf));
        chosen = chosen.flatMap(p -> shelf.picture(p.id())).filter(p -> p.time().isPresent());
        resizeScale();
        repaint();
    }

    void show(Season newSeason) {
        season = newSeason;
        repaint();
    }

    /** Marks the chosen picture; one without a time has no place. */
    void choose(Optional<ArchivedPicture> picture) {
        chosen = picture.filter(p -> p.time().isPresent());
        repaint();
    }

    /** All of the time again. */
    void showAll() {
        unfitted = true;
        resizeScale();
    }

    RibbonScale scale() {
        return scale;
    }

    void setScale(RibbonScale wanted) {
        unfitted = false;
        scale = wanted;
        repaint();
    }

    RibbonTicks ticks() {
        return ticks;
    }

    Optional<ArchivedPicture> chosen() {
        return chosen;
    }

    /** A span being dragged; empty when none is. */
    void drag(Optional<Selection.Span> span) {
        dragged = span;
        repaint();
    }

    /** The picture near a place, within a few pixels. */
    Optional<ArchivedPicture> nearest(double xPx) {
        return ticks.nearest(scale.secondsAt(xPx)).filter(p -> Math.abs(xOf(p) - xPx) < NEAR_PX);
    }

    private double xOf(ArchivedPicture picture) {
        return scale.xPx(picture.time().orElseThrow().midUtc());
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(600, 72);
    }

    @Override
    public String getToolTipText(MouseEvent event) {
        Instant at = scale.instantAt(event.getX());
        String what = season.events().stream()
                .filter(e -> Math.abs(scale.xPx(e.time()) - event.getX()) < 5)
                .map(e ->
                        TEXTS.text("ribbon.event", e.name(), DAY.format(e.time().atOffset(java.time.ZoneOffset.UTC))))
                .findFirst()
                .or(() -> nearest(event.getX())
                        .map(p -> p.night().map(NightName::of).orElse("") + ", "
                                + Figures.clockUt(p.time().orElseThrow().midUtc())))
                .orElseGet(() -> DAY.format(at.atOffset(java.time.ZoneOffset.UTC)));
        String size = season.diameterArcsec(at)
                .map(d -> ", " + TEXTS.text("ribbon.disc", Figures.fixed(d, 1)))
                .orElse("");
        return TEXTS.text("ribbon.tip", what + size);
    }

    /** Share of the full tick height, 0.25…1: Antoniadi runs from 1 (best) to 5, Pickering from 1 to 10 (best); a middling one when not known. */
    static double quality(Optional<Rating> seeing) {
        String value = seeing.map(r -> r.value().strip().replace(',', '.')).orElse("");
        int roman = List.of("I", "II", "III", "IV", "V").indexOf(value) + 1;
        boolean plain = value.matches("\\d{1,2}(\\.\\d)?");
        if (roman == 0 && !plain) {
            return 0.6;
        }
        double number = roman > 0 ? roman : Double.parseDouble(value);
        boolean downward = roman > 0
                || seeing.map(r -> r.scale().toLowerCase(Locale.ROOT).contains("antoniadi"))
                        .orElse(false);
        double share = downward ? (5 - number) / 4 : (number - 1) / 9;
        return 0.25 + 0.75 * Math.max(0, Math.min(1, share));
    }

    @Override
    protected void paintComponent(Graphics g) {
        Graphics2D g2 = (Graphics2D) g.create();
        RibbonPainter painter =
                new RibbonPainter(g2, palette.get(), scale.resized(Math.max(1, getWidth())), getHeight());
        painter.ground(isFocusOwner());
        if (ticks.isEmpty()) {
            painter.empty();
            g2.dispose();
            return;
        }
        painter.sizes(season.sizes());
        painter.axis();
        painter.events(season.events());
        painter.ticks(ticks.columns(scale));
        chosen.ifPresent(painter::chosen);
        painter.today(clock.instant());
        dragged.or(selection::span).ifPresent(span -> painter.span(span, dragged.map(this::words)));
        g2.dispose();
    }

    private String words(Selection.Span span) {
        int count = ticks.countIn(span);
        return DAY.format(span.from().atOffset(java.time.ZoneOffset.UTC)) + " – "
                + DAY.format(span.to().atOffset(java.time.ZoneOffset.UTC)) + ", "
                + TEXTS.counted("ribbon.pictures", count);
    }
}
