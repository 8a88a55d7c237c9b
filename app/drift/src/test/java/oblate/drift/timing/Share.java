/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;

/** Errors in units of the standard errors stated for them. */
final class Share {
    private final List<Double> sigmas = new ArrayList<>();

    void add(double ofSigma) {
        assertThat(ofSigma).isFinite();
        sigmas.add(ofSigma);
    }

    int count() {
        return sigmas.size();
    }

    private double within(double limit) {
        return sigmas.stream().filter(s -> Math.abs(s) <= limit).count() / (double) sigmas.size();
    }

    /** No fewer than should. */
    void isNotTooSmall() {
        assertThat(within(1)).as("within one sigma, of " + count()).isGreaterThanOrEqualTo(0.60);
        assertThat(within(2)).as("within two sigmas, of " + count()).isGreaterThanOrEqualTo(0.92);
    }

    /** 68 % should lie within one and 95 % within two. */
    void isHonest() {
        assertThat(within(1)).as("within one sigma, of " + count()).isBetween(0.60, 0.80);
        assertThat(within(2)).as("within two sigmas, of " + count()).isGreaterThanOrEqualTo(0.92);
    }
}
