/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleContext;
import javax.swing.JComponent;
import oblate.archive.ArchivedPicture;
import oblate.workbench.PanelContext;
import oblate.workbench.pictures.Thumbnails;
import oblate.workbench.words.Texts;

/** A small look at one picture, turned the way the window shows discs. */
final class PicturePeek extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(PicturePeek.class);
    private static final int SIDE_PX = 384;
    private static final int LEAST_PX = 140;
    private final transient PanelContext context;
    private final transient Thumbnails thumbnails;
    private transient Optional<ArchivedPicture> picture = Optional.empty();

    PicturePeek(PanelContext context) {
        this.context = context;
        thumbnails = new Thumbnails(context, this::repaint);
        setName("moons.states.peek");
        getAccessibleContext().setAccessibleName(TEXTS.text("states.peek.name"));
        setMinimumSize(new Dimension(LEAST_PX, LEAST_PX));
        setPreferredSize(new Dimension(LEAST_PX * 2, LEAST_PX));
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1L;
            };
        }
        return accessibleContext;
    }

    /** The picture to be shown, and those that will be wanted next. */
    void show(Optional<ArchivedPicture> shown, List<ArchivedPicture> next) {
        picture = shown;
        shown.ifPresent(p -> {
            List<ArchivedPicture> wanted = new java.util.ArrayList<>(List.of(p));
            wanted.addAll(next);
            thumbnails.lookAt(wanted, SIDE_PX);
        });
        repaint();
    }

    @Override
    protected void paintComponent(Graphics g) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setColor(context.palette().night());
        g2.fillRect(0, 0, getWidth(), getHeight());
        Optional<BufferedImage> image = picture.flatMap(p -> thumbnails.of(p, SIDE_PX));
        image.ifPresent(i -> {
            g2.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
            double scale = Math.min((double) getWidth() / i.getWidth(), (double) getHeight() / i.getHeight());
            int width = (int) Math.round(i.getWidth() * scale);
            int height = (int) Math.round(i.getHeight() * scale);
            g2.drawImage(i, (getWidth() - width) / 2, (getHeight() - height) / 2, width, height, null);
        });
        g2.dispose();
    }
}
