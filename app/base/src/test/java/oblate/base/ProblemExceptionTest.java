/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ProblemExceptionTest {

    private enum Trouble implements ProblemKind {
        TORN;

        @Override
        public String template() {
            return "{0}: torn at {1}; mend it";
        }
    }

    @Test
    void sentenceHasItsParts() {
        ProblemException e = new ProblemException(Trouble.TORN, "a.png", 1234567);
        assertThat(e).hasMessage("a.png: torn at 1234567; mend it");
        assertThat(e.kind()).isSameAs(Trouble.TORN);
        assertThat(e.parts()).containsExactly("a.png", 1234567);
    }
}
