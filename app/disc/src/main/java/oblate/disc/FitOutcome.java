/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/** What came of a fit: a disc, or a refusal with its reason. A picture without a disc is an outcome, not an exception. */
public sealed interface FitOutcome {

    /**
     * A disc was found.
     *
     * @param fit trusted or doubtful
     */
    record Fitted(DiscFit fit) implements FitOutcome {}

    /**
     * No disc worth a number was found.
     *
     * @param reason one sentence: what was seen instead and what to do
     */
    record Refused(String reason) implements FitOutcome {}
}
