/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * One kind of motion that was compared.
 *
 * @param curve what was fitted
 * @param criterion information criterion less that of the chosen kind: 0 for the chosen, else positive; under 4 the choice is no more than "perhaps"
 * @param weight share in predictions and in the errors of rates: exp(−½ of the corrected criterion of Akaike), made to sum to 1. That criterion is the one made for predicting; the
 *     stricter {@code criterion} chooses, because a curve that is not there must not be named
 */
public record Alternative(Curve curve, double criterion, double weight) {}
