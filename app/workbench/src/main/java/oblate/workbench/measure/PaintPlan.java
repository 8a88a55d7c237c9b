/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import oblate.disc.PixelPoint;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Pattern;

/**
 * What is to be drawn over a picture, its lines joined into few paths in picture pixels, so that a changed view only has to place them anew. Immutable.
 *
 * @param paths lines, from the lowest up
 * @param others spots and words, from the lowest up
 */
record PaintPlan(List<Stroke> paths, List<Drawn> others) {
    /** Lines of one kind. */
    record Stroke(Ink ink, Pattern pattern, boolean strong, Path2D path) {}

    PaintPlan {
        paths = List.copyOf(paths);
        others = List.copyOf(others);
    }

    static PaintPlan of(List<Drawn> plan) {
        List<Stroke> paths = new ArrayList<>();
        List<Drawn> others = new ArrayList<>();
        for (Drawn drawn : plan) {
            if (drawn instanceof Drawn.Line line) {
                add(paths, line);
            } else {
                others.add(drawn);
            }
        }
        return new PaintPlan(paths, others);
    }

    private static void add(List<Stroke> paths, Drawn.Line line) {
        Path2D path = new Path2D.Double();
        for (PixelPoint p : line.points()) {
            if (path.getCurrentPoint() == null) {
                path.moveTo(p.xPx(), p.yPx());
            } else {
                path.lineTo(p.xPx(), p.yPx());
            }
        }
        Stroke last = paths.isEmpty() ? null : paths.get(paths.size() - 1);
        if (last != null
                && last.ink() == line.ink()
                && last.pattern() == line.pattern()
                && last.strong() == line.strong()) {
            last.path().append(path, false);
        } else {
            paths.add(new Stroke(line.ink(), line.pattern(), line.strong(), path));
        }
    }
}
