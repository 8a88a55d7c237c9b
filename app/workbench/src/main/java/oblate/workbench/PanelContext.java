/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.JComponent;
import oblate.archive.Archive;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.workbench.look.Palette;

/** What a panel gets from the window. To be used on the event thread only; what it hands out says for itself when it may be used elsewhere. */
public interface PanelContext {
    /** The open archive; safe for many threads, but slow enough to be asked through {@link #background()}. */
    Archive archive();

    /** Answers what a planet looks like; safe for many threads. */
    Sky sky();

    /** The planet being looked at: that of the chosen picture, else the one with most pictures. */
    PlanetModel planet();

    /** The archive's pictures as last read, and word of changes. */
    Shelf shelf();

    /** What is chosen: a picture, a feature. */
    Selection selection();

    /** Runs long work off the event thread, with progress and a way to stop it. */
    Background background();

    /** Colours of the present theme, for what is painted by hand; ask again on every painting. */
    Palette palette();

    /** Settings of this panel, kept between sessions. */
    PanelSettings settings();

    /** Chooses a picture and shows it in the panel that measures. */
    void openPicture(long pictureId);

    /** Puts a component into the inspector; it is shown while this panel is. */
    void showInInspector(JComponent inspector);

    /** Offers an action in the panel's menu; its accelerator works while the panel is shown. */
    void offer(Action action);

    /** What can be undone in this session. */
    EditHistory edits();

    /** Whether discs are shown north up, as taken or south up; one choice for the whole window. */
    Bearing bearing();

    /** Called after the bearing, the theme or the panel shown has changed. */
    void whenLookChanged(Runnable listener);

    /** Asks to be given files that are dropped on the window; the panel is shown first. */
    void takeDroppedFiles(Consumer<List<Path>> taker);

    /** All plug-ins and what was refused. */
    PluginRoll plugins();

    /** Says one sentence at the foot of the window. */
    void say(String sentence);

    /** Everything else the window was opened with. */
    WorkbenchContext workbench();
}
