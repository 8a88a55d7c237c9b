/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.Optional;

/**
 * A claim and what stands in the way of using it.
 *
 * @param claim the claim
 * @param leapSecond whether its second is numbered 60
 * @param clockErrorS error of the clock as the source itself states it (s); 0 when it does not
 * @param barred why it is not to be used, one sentence; empty when nothing is wrong with it
 */
record Statement(TimeClaim claim, boolean leapSecond, double clockErrorS, Optional<String> barred) {

    static Statement of(TimeClaim claim) {
        return new Statement(claim, false, 0, Optional.empty());
    }

    Statement barredBecause(String reason) {
        return new Statement(claim, leapSecond, clockErrorS, Optional.of(reason));
    }
}
