/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.StateGlyph;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.PictureState;
import oblate.workbench.pictures.Thumbnails;
import oblate.workbench.words.Texts;

/** The pictures of the night in order of time. */
final class FilmStrip extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(FilmStrip.class);
    private static final int FRAME = 64;
    private static final int STEP = 78;
    private static final int LEFT = 12;
    private final transient PanelContext context;
    private final transient Thumbnails thumbnails;
    private transient List<ArchivedPicture> pictures = List.of();

    FilmStrip(PanelContext context) {
        this.context = context;
        thumbnails = new Thumbnails(context, this::repaint);
        setName("film");
        setToolTipText("");
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                at(e).ifPresent(p -> context.selection().choosePicture(p.id()));
            }
        });
    }

    void show(List<ArchivedPicture> night) {
        pictures = List.copyOf(night);
        revalidate();
        repaint();
        int index = chosenIndex();
        if (index >= 0) {
            scrollRectToVisible(new Rectangle(LEFT + index * STEP - STEP, 0, 3 * STEP, 10));
        }
    }

    /** Has the small images of pictures made before they are seen. */
    void warm(List<ArchivedPicture> next) {
        next.forEach(thumbnails::of);
    }

    private int chosenIndex() {
        for (int i = 0; i < pictures.size(); i++) {
            if (context.selection()
                    .pictureId()
                    .equals(Optional.of(pictures.get(i).id()))) {
                return i;
            }
        }
        return -1;
    }

    private Optional<ArchivedPicture> at(MouseEvent e) {
        int index = Math.floorDiv(e.getX() - LEFT, STEP);
        return index >= 0 && index < pictures.size() ? Optional.of(pictures.get(index)) : Optional.empty();
    }

    @Override
    public String getToolTipText(MouseEvent event) {
        return at(event)
                .map(p -> TEXTS.text(
                        "film.tip",
                        p.originalName(),
                        PictureState.of(p, context.shelf()).word()))
                .orElse(null);
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(LEFT * 2 + pictures.size() * STEP, FRAME + 26);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = context.palette();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g2.setColor(colours.ground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        Rectangle clip = g.getClipBounds();
        for (int i = 0; i < pictures.size(); i++) {
            int x = LEFT + i * STEP;
            if (x > clip.x + clip.width || x + STEP < clip.x) {
                continue;
            }
            paintFrame(g2, colours, pictures.get(i), x);
        }
        g2.dispose();
    }

    private void paintFrame(Graphics2D g, Palette colours, ArchivedPicture picture, int x) {
        boolean chosen = context.selection().pictureId().equals(Optional.of(picture.id()));
        g.setColor(colours.night());
        g.fill(new RoundRectangle2D.Double(x, 4, STEP - 8.0, FRAME, 8, 8));
        thumbnails
                .of(picture)
                .ifPresent(image -> g.drawImage(image, x + (STEP - 8 - FRAME + 6) / 2, 7, FRAME - 6, FRAME - 6, null));
        if (chosen) {
            g.setColor(colours.accent());
            g.setStroke(new BasicStroke(2.2f));
            g.draw(new RoundRectangle2D.Double(x + 1, 5, STEP - 10.0, FRAME - 2, 8, 8));
        }
        StateGlyph.State state = PictureState.of(picture, context.shelf());
        Color tone = state == StateGlyph.State.NEEDS_A_LOOK
                ? colours.alarm()
                : state == StateGlyph.State.NEW ? colours.quietInk() : colours.accent();
        StateGlyph.paint(g, state, x + 2.0, FRAME + 9.0, 10, tone);
        g.setFont(Theme.figureFont(-3));
        g.setColor(chosen ? colours.ink() : colours.quietInk());
        String time =
                picture.time().map(CaptureTime::midUtc).map(Figures::clockUt).orElse(TEXTS.text("film.no.time"));
        g.drawString(time.replace(" UT", ""), x + 18, FRAME + 18);
    }
}
