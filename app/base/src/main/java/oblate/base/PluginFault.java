/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/**
 * A plug-in that failed, or was switched off by hand.
 *
 * @param jar file name of its jar; the whole jar is switched off, since its plug-ins share their classes
 * @param plugin label of the plug-in that failed, or of all that the jar brought where it is not known which
 * @param reason one sentence without its first words, e.g. "failed while making its panel (IllegalStateException: no lamp)"
 * @param details what a developer wants to see: the stack trace; may be empty
 */
public record PluginFault(String jar, String plugin, String reason, String details) {

    /** The whole sentence. */
    public String sentence() {
        return "The plug-in \"" + plugin + "\" in " + jar + " " + reason + ".";
    }

    /** Sentence and details, for a message to whoever wrote the plug-in. */
    public String text() {
        return details.isBlank() ? sentence() + "\n" : sentence() + "\n\n" + details;
    }
}
