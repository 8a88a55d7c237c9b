/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import picocli.CommandLine.IVersionProvider;

/** Name and version of the program, from the jar's manifest. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }

    /** E.g. "Oblate 0.1.0". */
    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return "Oblate " + (version == null ? "(built in place)" : version);
    }
}
