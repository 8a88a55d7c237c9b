/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * One kind of motion that was compared. Three criteria are at work: the strictest chooses, because a curve that is not there must not be named; Schwarz's tells how
 * probable each kind is; Akaike's, made for predicting, asks the least of a curve.
 *
 * @param curve what was fitted
 * @param criterion information criterion less that of the chosen kind: 0 for the chosen, else positive; under 4 the choice is no more than "perhaps"
 * @param belief share in the error of the mean rate: exp(−½ of Schwarz's criterion, without the toll of the choice), made to sum to 1
 * @param weight share in predictions: exp(−½ of Akaike's corrected criterion), made to sum to 1
 */
public record Alternative(Curve curve, double criterion, double belief, double weight) {

    /** The same of a curve moved to another turn or system. */
    Alternative with(Curve moved) {
        return new Alternative(moved, criterion, belief, weight);
    }
}
