/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/**
 * One kind of expected trouble, told as a template with numbered places, e.g. {@code "{0}: ends after {1} bytes; copy the file again"}.
 *
 * <p>Each stage has one enum of these. The first place names the file or thing, the words after it say where in it and what to do.
 */
public interface ProblemKind {

    /** Name of the constant, for tests and logs; tests compare this and not the words. */
    String name();

    /** The sentence with places {@code {0}}, {@code {1}} … */
    String template();
}
