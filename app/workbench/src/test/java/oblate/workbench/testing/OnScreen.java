/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import org.assertj.swing.edt.FailOnThreadViolationRepaintManager;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * For tests of real windows ({@code @ExtendWith}): they fail, with the remedy, where there is no display, and wherever a repaint is asked for off the event
 * thread.
 */
public final class OnScreen implements BeforeAllCallback, AfterAllCallback {
    private static final String REMEDY =
            "The window tests need a display: run under xvfb-run -a -s \"-screen 0 1600x1000x24\", or leave them out with"
                    + " -DexcludedTags=window";

    @Override
    public void beforeAll(ExtensionContext context) {
        try {
            if (GraphicsEnvironment.isHeadless()
                    || GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices().length == 0) {
                throw new AssertionError(REMEDY);
            }
        } catch (AWTError | NoClassDefFoundError e) {
            throw new AssertionError(REMEDY + " (" + e.getMessage() + ")", e);
        }
        FailOnThreadViolationRepaintManager.install();
    }

    @Override
    public void afterAll(ExtensionContext context) {
        FailOnThreadViolationRepaintManager.uninstall();
    }
}
