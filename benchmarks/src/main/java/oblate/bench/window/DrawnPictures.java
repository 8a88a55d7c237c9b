/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import javax.imageio.ImageIO;
import oblate.archive.FilingFacts;
import oblate.base.Progress;
import oblate.image.TimeWish;
import oblate.workbench.WorkbenchContext;

/** Pictures drawn for measuring: a banded disc with noise, 16 bits grey, named by their time. */
final class DrawnPictures {
    private static final DateTimeFormatter NAME =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

    private DrawnPictures() {}

    /** Draws one into a folder. */
    static Path write(Path folder, int sidePx, Instant time, long seed) throws IOException {
        Files.createDirectories(folder);
        BufferedImage image = new BufferedImage(sidePx, sidePx, BufferedImage.TYPE_USHORT_GRAY);
        Random random = new Random(seed);
        double radius = 0.45 * sidePx;
        short[] row = new short[sidePx];
        for (int y = 0; y < sidePx; y++) {
            for (int x = 0; x < sidePx; x++) {
                double dx = (x - sidePx / 2.0) / radius;
                double dy = (y - sidePx / 2.0) / (radius * 0.935);
                double edge = 1 - dx * dx - dy * dy;
                double bands = 0.7 + 0.25 * Math.sin(22 * dy);
                double value = edge > 0 ? bands * (0.35 + 0.65 * Math.sqrt(edge)) : 0;
                row[x] = (short) (int) Math.min(65535, 55000 * value + random.nextInt(900));
            }
            image.getRaster().setDataElements(0, y, sidePx, 1, row);
        }
        Path file = folder.resolve(NAME.format(time) + ".png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    /** Files what a folder holds as pictures of Jupiter. */
    static void file(WorkbenchContext context, Path folder) {
        FilingFacts facts = new FilingFacts(
                Optional.of("jupiter"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(
                        Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty()),
                true);
        context.filing().file(List.of(folder), facts, Progress.SILENT);
    }
}
