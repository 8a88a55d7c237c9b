/**
 * How quick the window feels: from start to use, while a picture is moved, while the wall is scrolled, and the longest wait in a session. Each is a
 * program of its own that drives the real window and prints a table; {@code benchmarks/window} runs them.
 */
package oblate.bench.window;
