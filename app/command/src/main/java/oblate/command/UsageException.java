/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

/** The words of the command line cannot be followed; the message is one sentence. Ends the run with status 2. */
public final class UsageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param sentence what is wrong and what to write instead */
    public UsageException(String sentence) {
        super(sentence);
    }
}
