/** Starts the program and puts the runnable distribution together. */
package oblate.launcher;
