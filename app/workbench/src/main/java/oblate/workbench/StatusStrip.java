/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Color;
import java.awt.Graphics;
import java.awt.Toolkit;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.words.Texts;

/** The foot of the window: the last sentence said, and work under way with a way to stop it. */
final class StatusStrip extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(StatusStrip.class);
    private static final long STALE_NS = 4_000_000_000L;
    private final JLabel sentence = new JLabel(" ");
    private final JLabel work = new JLabel();
    private final JProgressBar bar = new JProgressBar(0, 1000);
    private final JButton stop = new JButton(TEXTS.text("status.stop"));
    private final transient Background background;
    private final Timer patience;
    private long saidNs = System.nanoTime();
    private volatile Color shoutGround = Color.BLACK;
    private volatile Color shoutInk = Color.WHITE;
    private volatile String shouted = "";

    StatusStrip(Background background) {
        super(new MigLayout("insets 2 12 2 12, gap 8, fillx, hidemode 3", "[grow,fill][][120!][]", "[24!]"));
        this.background = background;
        setOpaque(false);
        sentence.setName("status");
        stop.setName("stop");
        stop.putClientProperty("JButton.buttonType", "toolBarButton");
        stop.setToolTipText(TEXTS.text("status.stop.tip"));
        stop.addActionListener(e -> background.jobs().stream().findFirst().ifPresent(Job::stop));
        add(sentence, "wmin 0");
        add(work);
        add(bar, "h 6!");
        add(stop, "h 22!");
        // What is over within a fifth of a second is not worth a bar that flashes.
        patience = new Timer(200, e -> shows(true));
        patience.setRepeats(false);
        shows(false);
        background.whenChanged(this::follow);
    }

    private void follow() {
        List<Job> jobs = background.jobs();
        if (jobs.isEmpty()) {
            patience.stop();
            shows(false);
            return;
        }
        Job first = jobs.get(0);
        String more = jobs.size() > 1 ? "  " + TEXTS.text("status.waiting", Integer.toString(jobs.size() - 1)) : "";
        work.setText(first.title() + (first.message().isEmpty() ? "" : ": " + first.message()) + more);
        bar.setIndeterminate(first.share() < 0);
        bar.setValue((int) (1000 * Math.max(0, first.share())));
        if (!bar.isVisible() && !patience.isRunning()) {
            patience.start();
        }
    }

    private void shows(boolean busy) {
        boolean now = busy && !background.jobs().isEmpty();
        work.setVisible(now);
        bar.setVisible(now);
        stop.setVisible(now);
    }

    /** Another page is turned to: what was said a while ago would be taken for something about it. */
    void pageTurned() {
        if (System.nanoTime() - saidNs > STALE_NS) {
            say("");
        }
    }

    void say(String text) {
        saidNs = System.nanoTime();
        sentence.setText(text.isEmpty() ? " " : text);
        sentence.setToolTipText(text);
    }

    /**
     * Paints a sentence straight onto the screen, for the time when the event thread, which paints everything else, does not come back. From any
     * thread. The next painting by the event thread wipes it away.
     */
    void shout(String text) {
        shouted = text;
        Graphics g = getGraphics();
        if (g == null) {
            return;
        }
        g.setColor(shoutGround);
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(shoutInk);
        g.setFont(sentence.getFont());
        g.drawString(text, 12, (getHeight() + g.getFontMetrics().getAscent()) / 2 - 1);
        g.dispose();
        Toolkit.getDefaultToolkit().sync();
    }

    /** What was last shouted; empty when nothing was. */
    String shouted() {
        return shouted;
    }

    /** Colours for what is shouted. */
    void shoutColours(Color ground, Color ink) {
        shoutGround = ground;
        shoutInk = ink;
    }

    void colour(Color ink) {
        sentence.setForeground(ink);
        work.setForeground(ink);
    }
}
