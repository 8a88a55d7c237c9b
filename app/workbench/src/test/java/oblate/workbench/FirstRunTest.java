/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Frame;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.swing.JButton;
import javax.swing.JFrame;
import javax.swing.JTextArea;
import oblate.base.Progress;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The window before the first archive, with a real mouse. */
@Tag("window")
@Timeout(value = 90, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class FirstRunTest {
    private final Hand hand = new Hand();

    @AfterEach
    void end() {
        hand.close();
    }

    private static JFrame frame(String name) {
        OpenWindow.await("the window " + name, () -> found(name).isPresent());
        return OpenWindow.ask(() -> found(name).orElseThrow());
    }

    private static Optional<JFrame> found(String name) {
        return Arrays.stream(Frame.getFrames())
                .filter(f -> name.equals(f.getName()) && f.isShowing())
                .map(JFrame.class::cast)
                .findFirst();
    }

    private void press(JFrame frame, String button) {
        hand.click(OpenWindow.ask(
                () -> OpenWindow.find(frame.getContentPane(), button).orElseThrow()));
    }

    @Test
    void theSampleSeasonIsOneClickAway() throws Exception {
        CompletableFuture<Optional<FirstRun.Choice>> answer =
                CompletableFuture.supplyAsync(() -> FirstRun.ask(Path.of("nowhere"), Path.of("no settings"), ""));
        press(frame("first"), "first.sample");
        assertThat(answer.get(20, TimeUnit.SECONDS)).contains(new FirstRun.Sample());
    }

    @Test
    void leavingChoosesNothingAndWhatWentWrongIsSaid() throws Exception {
        CompletableFuture<Optional<FirstRun.Choice>> answer = CompletableFuture.supplyAsync(
                () -> FirstRun.ask(Path.of("nowhere"), Path.of("no settings"), "It was none. Try another."));
        JFrame frame = frame("first");
        JTextArea problem = (JTextArea) OpenWindow.ask(
                () -> OpenWindow.find(frame.getContentPane(), "first.problem").orElseThrow());
        assertThat(OpenWindow.<String>ask(problem::getText)).isEqualTo("It was none. Try another.");
        assertThat(OpenWindow.<Boolean>ask(() -> problem.getHeight() >= problem.getPreferredSize().height))
                .as("nothing is cut off")
                .isTrue();
        press(frame, "first.leave");
        assertThat(answer.get(20, TimeUnit.SECONDS)).isEmpty();
    }

    @Test
    void longWorkShowsItsProgressAndCanBeStopped() throws Exception {
        CompletableFuture<Optional<String>> work = CompletableFuture.supplyAsync(() -> FirstRun.prepare(this::endless));
        JFrame frame = frame("prepare");
        JButton stop = (JButton) OpenWindow.ask(
                () -> OpenWindow.find(frame.getContentPane(), "prepare.stop").orElseThrow());
        hand.click(stop);
        assertThat(work.get(20, TimeUnit.SECONDS)).isEmpty();
        OpenWindow.await("it is gone", () -> found("prepare").isEmpty());
        assertThat(FirstRun.prepare(progress -> "done")).contains("done");
    }

    private String endless(Progress progress) {
        long step = 0;
        while (!progress.isCancelled()) {
            progress.report(step % 100, 100, "step " + step++);
            try {
                Thread.sleep(5);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return "interrupted";
            }
        }
        return "stopped";
    }
}
