/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.tutorial;

import java.awt.Font;
import java.util.Map;
import java.util.TreeMap;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import oblate.archive.ArchivedPicture;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;

/** Lists how many pictures each observer has in the archive. */
public final class ObserverCountPanel implements WorkbenchPanel {
    @Override
    public String id() {
        return "observer-count";
    }

    @Override
    public String label() {
        return "Counts";
    }

    @Override
    public JComponent create(PanelContext context) {
        JTextArea text = new JTextArea();
        text.setName("counts");
        text.setEditable(false);
        text.setFont(new Font(Font.MONOSPACED, Font.PLAIN, 14));
        context.shelf().whenChanged(() -> text.setText(counts(context)));
        text.setText(counts(context));
        return new JScrollPane(text);
    }

    private static String counts(PanelContext context) {
        Map<String, Integer> counts = new TreeMap<>();
        for (ArchivedPicture picture : context.shelf().pictures()) {
            counts.merge(picture.observer().orElse("not said"), 1, Integer::sum);
        }
        StringBuilder lines = new StringBuilder();
        counts.forEach((observer, count) ->
                lines.append(observer).append(": ").append(count).append('\n'));
        return lines.toString();
    }
}
