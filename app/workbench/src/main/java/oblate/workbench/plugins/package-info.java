/** The panel that lists all plug-ins, and those that were refused with the reason. */
package oblate.workbench.plugins;
