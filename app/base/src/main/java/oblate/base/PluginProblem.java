/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/** Trouble with a plug-in that came in a jar. */
public enum PluginProblem implements ProblemKind {
    /** It threw something. */
    FAILED("{0} It is switched off; \"Plug-ins\" in the window and \"oblate plugins\" can switch it on again"),
    /** It is asked for something although it is switched off. */
    SWITCHED_OFF("the plug-in \"{0}\" in {1} is switched off; switch it on in \"Plug-ins\" or with \"oblate plugins\"");

    private final String template;

    PluginProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
