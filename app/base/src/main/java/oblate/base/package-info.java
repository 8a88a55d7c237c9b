/**
 * What every stage stands on and no stage owns: a problem told in one sentence, progress with cancel, and the host that finds plug-ins.
 *
 * <p>It is not a place for leftovers: a class belongs here only when at least two stages need it and none of them owns its word.
 */
package oblate.base;
