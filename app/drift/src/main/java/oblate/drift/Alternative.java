/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * One kind of motion that was compared.
 *
 * @param curve what was fitted
 * @param criterion information criterion less that of the chosen kind: 0 for the chosen, else positive; under 4 the choice is no more than "perhaps"
 * @param weight share of belief when predicting, exp(−criterion/2) without the toll of the search, made to sum to 1
 */
public record Alternative(Curve curve, double criterion, double weight) {}
