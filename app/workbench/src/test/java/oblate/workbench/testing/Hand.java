/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import java.awt.AWTEvent;
import java.awt.AWTException;
import java.awt.Component;
import java.awt.KeyboardFocusManager;
import java.awt.MouseInfo;
import java.awt.Point;
import java.awt.PointerInfo;
import java.awt.Robot;
import java.awt.Toolkit;
import java.awt.Window;
import java.awt.event.AWTEventListener;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * A person's hand on mouse and keyboard. Each deed is known to have reached the program before the next one is begun: a display loses a click that falls
 * between a window's asking for its place and having it, and on a busy machine such moments are long. A click or a key that no component was given is done
 * again; one that was given is never repeated, so that a program which does not heed it fails its test.
 */
public final class Hand implements AutoCloseable {
    private static final int TRIES = 5;
    private static final long PATIENCE_MS = 3000;
    private static final long MOTION_MS = 1500;
    private static final long GRACE_MS = 300;
    private static final long LOOK_MS = 15;
    private final Robot robot;
    private final AtomicInteger presses = new AtomicInteger();
    private final AtomicInteger releases = new AtomicInteger();
    private final AtomicInteger keysDown = new AtomicInteger();
    private final AtomicInteger keysUp = new AtomicInteger();
    private final AWTEventListener given = this::given;
    private volatile Component lastGivenTo;
    private volatile MouseEvent lastMotion;

    /** Takes mouse and keyboard; {@link #close()} lets them go. */
    public Hand() {
        try {
            robot = new Robot();
        } catch (AWTException e) {
            throw new IllegalStateException(e);
        }
        Toolkit.getDefaultToolkit()
                .addAWTEventListener(
                        given, AWTEvent.MOUSE_EVENT_MASK | AWTEvent.MOUSE_MOTION_EVENT_MASK | AWTEvent.KEY_EVENT_MASK);
    }

    private void given(AWTEvent event) {
        if (event instanceof KeyEvent) {
            if (event.getID() == KeyEvent.KEY_PRESSED) {
                keysDown.incrementAndGet();
            } else if (event.getID() == KeyEvent.KEY_RELEASED) {
                keysUp.incrementAndGet();
            }
        } else if (event instanceof MouseEvent mouse
                && (mouse.getID() == MouseEvent.MOUSE_MOVED || mouse.getID() == MouseEvent.MOUSE_DRAGGED)) {
            lastMotion = mouse;
        } else if (event instanceof MouseEvent && !(event.getSource() instanceof Window)) {
            if (event.getID() == MouseEvent.MOUSE_PRESSED) {
                lastGivenTo = (Component) event.getSource();
                presses.incrementAndGet();
            } else if (event.getID() == MouseEvent.MOUSE_RELEASED) {
                releases.incrementAndGet();
            }
        }
    }

    /** Clicks the middle of a component. */
    public void click(Component on) {
        click(on, OpenWindow.ask(() -> new Point(on.getWidth() / 2, on.getHeight() / 2)), 1);
    }

    /** Clicks a place of a component, in its own pixels. */
    public void click(Component on, Point place) {
        click(on, place, 1);
    }

    /** Clicks a place of a component several times running. */
    public void click(Component on, Point place, int times) {
        for (int i = 0; i < TRIES; i++) {
            move(on, place);
            int pressesBefore = presses.get();
            int releasesBefore = releases.get();
            for (int c = 0; c < times; c++) {
                robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
                robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
            }
            boolean whole = within(
                    PATIENCE_MS,
                    () -> presses.get() >= pressesBefore + times && releases.get() >= releasesBefore + times);
            if (presses.get() > pressesBefore) {
                Component to = lastGivenTo;
                if (!whole || to != on && !SwingUtilities.isDescendingFrom(to, on)) {
                    throw new IllegalStateException("a click meant for " + on + " came to " + to);
                }
                rest();
                return;
            }
            nudge(on);
        }
        throw new IllegalStateException("the display gave the program none of " + TRIES + " clicks on " + on);
    }

    /** Moves the pointer to a place of a component, in its own pixels, and waits until the program says that it is there. */
    public void move(Component on, Point place) {
        for (int i = 0; i < TRIES; i++) {
            Point target = settled(on, place);
            if (target.equals(pointer().orElse(null))) {
                robot.mouseMove(target.x + 2, target.y + 1);
                rest();
            }
            lastMotion = null;
            robot.mouseMove(target.x, target.y);
            if (within(MOTION_MS, () -> OpenWindow.ask(() -> isHeardOf(on, place)))) {
                rest();
                return;
            }
            nudge(on);
        }
        throw new IllegalStateException(
                "the pointer does not come to rest at " + place + " of " + on + "; last it was " + lastMotion);
    }

    private boolean isHeardOf(Component on, Point place) {
        MouseEvent motion = lastMotion;
        if (motion == null || !on.isShowing()) {
            return false;
        }
        Point there = SwingUtilities.convertPoint(motion.getComponent(), motion.getPoint(), on);
        return Math.abs(there.x - place.x) <= 1 && Math.abs(there.y - place.y) <= 1;
    }

    /** Drags with the left button from the first place of a component over the others to the last. */
    public void drag(Component on, Point... places) {
        move(on, places[0]);
        int pressesBefore = presses.get();
        int releasesBefore = releases.get();
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        within(PATIENCE_MS, () -> presses.get() > pressesBefore);
        rest();
        for (Point place : places) {
            move(on, place);
        }
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        within(PATIENCE_MS, () -> releases.get() > releasesBefore);
        rest();
    }

    /** Does something while a key is held. */
    public void holding(int code, Runnable deed) {
        robot.keyPress(code);
        rest();
        try {
            deed.run();
        } finally {
            robot.keyRelease(code);
            rest();
        }
    }

    /** Strikes a key several times in one go. */
    public void strikeTimes(int times, int code) {
        int before = keysDown.get();
        for (int i = 0; i < times; i++) {
            robot.keyPress(code);
            robot.keyRelease(code);
        }
        if (!within(PATIENCE_MS, () -> keysDown.get() >= before + times)) {
            throw new IllegalStateException("the display gave the program not all of " + times + " strokes");
        }
        rest();
    }

    /** Strikes one key, with those before it held if several are given. */
    public void strike(int... codes) {
        for (int i = 0; i < TRIES; i++) {
            if (!within(TRIES * PATIENCE_MS, () -> OpenWindow.ask(Hand::isHeard))) {
                throw new IllegalStateException("no part of the program has the keyboard");
            }
            int downBefore = keysDown.get();
            int upBefore = keysUp.get();
            for (int code : codes) {
                robot.keyPress(code);
            }
            for (int k = codes.length - 1; k >= 0; k--) {
                robot.keyRelease(codes[k]);
            }
            within(PATIENCE_MS, () -> keysDown.get() >= downBefore + codes.length);
            if (keysDown.get() > downBefore) {
                // A key that closes its window is let go in no window.
                within(GRACE_MS, () -> keysUp.get() >= upBefore + codes.length);
                rest();
                return;
            }
        }
        throw new IllegalStateException("the display gave the program none of " + TRIES + " strokes");
    }

    /**
     * Types lower-case letters, digits, blanks, hyphens and colons at the end of what stands in the field with the keyboard. On a busy machine a display takes
     * a key that is let go late for one that is held, and repeats it; what such repeats put into the field is put right afterwards.
     */
    public void type(String text) {
        Optional<JTextComponent> field = OpenWindow.ask(Hand::focused);
        String before = field.map(f -> OpenWindow.ask(f::getText)).orElse("");
        for (char c : text.toCharArray()) {
            if (c == ':') {
                strike(KeyEvent.VK_SHIFT, KeyEvent.VK_SEMICOLON);
            } else {
                strike(KeyEvent.getExtendedKeyCodeForChar(c));
            }
        }
        field.ifPresent(f -> OpenWindow.act(() -> {
            String now = f.getText();
            if (f.isFocusOwner() && !now.equals(before + text) && isWithRepeats(now, before + text)) {
                f.setText(before + text);
            }
        }));
    }

    private static Optional<JTextComponent> focused() {
        return KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent text
                ? Optional.of(text)
                : Optional.empty();
    }

    /** Whether a text is the wished one with letters repeated, and nothing else amiss. */
    private static boolean isWithRepeats(String text, String wished) {
        int at = 0;
        for (int i = 0; i < text.length(); i++) {
            if (at < wished.length() && text.charAt(i) == wished.charAt(at)) {
                at++;
            } else if (at == 0 || text.charAt(i) != wished.charAt(at - 1)) {
                return false;
            }
        }
        return at == wished.length();
    }

    /**
     * Moves a window by a pixel. A display without a window manager now and then leaves a new window believing it stands where it does not; once it is moved
     * it knows its place again.
     */
    private static void nudge(Component on) {

        OpenWindow.act(() -> {
            Window window = on instanceof Window own ? own : SwingUtilities.getWindowAncestor(on);
            window.setLocation(window.getX() + 1, window.getY() + 1);
        });
        rest();
    }

    private static boolean isHeard() {
        return KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() != null;
    }

    private static Optional<Point> pointer() {
        return Optional.ofNullable(MouseInfo.getPointerInfo()).map(PointerInfo::getLocation);
    }

    /**
     * Where a place is on the screen once its component shows, its window has the keyboard and both have been so for some moments: a button that loses the
     * focus while it is pressed forgets the press, and a new window gives its focus away more than once.
     */
    private static Point settled(Component on, Point place) {
        within(PATIENCE_MS, () -> OpenWindow.ask(() -> isAttended(on)));
        Optional<Point> last = Optional.empty();
        long end = System.nanoTime() + 20 * PATIENCE_MS * 1_000_000;
        int calm = 0;
        while (calm < 2) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("it is not shown or does not keep its place: " + on);
            }
            Optional<Point> now = OpenWindow.ask(() -> onScreen(on, place));
            calm = now.isPresent() && now.equals(last) ? calm + 1 : 0;
            last = now;
            pause();
        }
        return last.orElseThrow();
    }

    private static boolean isAttended(Component on) {
        Window window = on instanceof Window own ? own : SwingUtilities.getWindowAncestor(on);
        return window != null && (!window.isFocusableWindow() || window.isFocused() && window.getFocusOwner() != null);
    }

    private static Optional<Point> onScreen(Component on, Point place) {
        if (!on.isShowing() || !on.isEnabled() || on.getWidth() == 0) {
            return Optional.empty();
        }
        Point at = new Point(place);
        SwingUtilities.convertPointToScreen(at, on);
        return Optional.of(at);
    }

    private interface Condition {
        boolean holds();
    }

    private static boolean within(long ms, Condition condition) {
        long end = System.nanoTime() + ms * 1_000_000;
        while (!condition.holds()) {
            if (System.nanoTime() > end) {
                return false;
            }
            pause();
        }
        return true;
    }

    /** Lets what a deed set off on the event thread be done. */
    public static void rest() {
        for (int i = 0; i < 3; i++) {
            pause();
            OpenWindow.ask(() -> null);
        }
    }

    private static void pause() {
        try {
            Thread.sleep(LOOK_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        Toolkit.getDefaultToolkit().removeAWTEventListener(given);
    }
}
