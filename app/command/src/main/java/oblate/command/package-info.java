/**
 * The command line: words in, tables out. Results go to standard output, words to standard error; exit 0 done, 1 some inputs were refused (each
 * named, with why), 2 wrong usage.
 *
 * <p>Only this package sees picocli and the standard streams. What a command computes it asks of the stages; it computes nothing itself.
 */
package oblate.command;
