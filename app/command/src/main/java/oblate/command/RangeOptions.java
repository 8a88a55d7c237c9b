/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import oblate.base.ProblemException;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import picocli.CommandLine.Option;

/** The stretch of time a command is asked about. */
final class RangeOptions {

    @Option(
            names = "--from",
            required = true,
            paramLabel = "TIME",
            description = "its beginning, ISO 8601 with Z, e.g. 2024-12-07T20:00:00Z")
    private String from;

    @Option(names = "--to", required = true, paramLabel = "TIME", description = "its end")
    private String to;

    /**
     * The stretch.
     *
     * @throws UsageException when an end is no time, or the end lies before the beginning
     */
    TimeSpan span(Services services) {
        UtcTime first = time("--from", from, services);
        UtcTime last = time("--to", to, services);
        if (last.compareTo(first) <= 0) {
            throw new UsageException(
                    "the range from " + first + " to " + last + " does not run forward; exchange the two");
        }
        return new TimeSpan(first, last);
    }

    /** A time of the command line, by the leap seconds in use. */
    static UtcTime time(String option, String text, Services services) {
        try {
            return UtcTime.parse(text, services.sky().leapSeconds());
        } catch (ProblemException e) {
            throw new UsageException(option + ": " + e.getMessage());
        }
    }
}
