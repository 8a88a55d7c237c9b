/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.image.RenderedImage;
import java.io.IOException;
import java.io.OutputStream;
import javax.imageio.ImageIO;
import org.apache.batik.svggen.ImageHandlerBase64Encoder;
import org.apache.batik.svggen.SVGGraphics2DIOException;

/** Puts pictures into SVG as PNG, written by the Java library: the SVG library's own writer is a module of its own. */
final class PngInSvg extends ImageHandlerBase64Encoder {
    @Override
    public void encodeImage(RenderedImage image, OutputStream out) throws SVGGraphics2DIOException {
        try {
            ImageIO.write(image, "png", out);
        } catch (IOException e) {
            throw new SVGGraphics2DIOException(e.getMessage(), e);
        }
    }
}
