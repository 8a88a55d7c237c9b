/**
 * An invented observing season of Jupiter: pictures as an observer would have them before filing, and the truth about every one of them.
 *
 * <p>Everything follows from a seed and a few plain tables (kits, bands of cloud, features with their drifts, nights): the same scenario gives the same pixels whatever
 * the number of threads. Where the planet stands, how it is turned and lit comes from {@code sky}; the path from the globe to the pixels is written here a second time,
 * apart from the stages that measure, so that the season can show up their mistakes. Nothing here is an observation.
 *
 * <pre>{@code
 * SampleTruth truth = SampleSeason.standard().writeTo(folder, Progress.SILENT);
 * List<SampleTruth.Picture> wrong = truth.wrongClocks();
 * }</pre>
 */
package oblate.sample;
