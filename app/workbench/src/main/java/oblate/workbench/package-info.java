/**
 * The window: a frame that hosts panels, and what panels get from it.
 *
 * <p>The concept a newcomer gets wrong: the window holds no results. Everything a person does here is a call of the stages below, made off the
 * event thread, and what is shown is read back from the archive. A panel is a plug-in ({@link oblate.workbench.WorkbenchPanel}); those that ship
 * come through the same door.
 */
package oblate.workbench;
