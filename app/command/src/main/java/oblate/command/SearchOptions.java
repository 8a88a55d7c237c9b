/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oblate.archive.PictureSearch;
import oblate.archive.PictureSearch.MeridianRange;
import picocli.CommandLine.Option;

/** Which pictures of an archive are wanted. */
final class SearchOptions {
    private static final Pattern MERIDIAN = Pattern.compile("(1|2|3|iau):(\\d+(?:\\.\\d+)?)-(\\d+(?:\\.\\d+)?)");

    @Option(names = "--of", paramLabel = "PLANET", description = "only pictures of this planet")
    private String ofPlanet;

    @Option(names = "--night", paramLabel = "DATE", description = "only this night (evening's date, 2031-03-24)")
    private String night;

    @Option(names = "--from", paramLabel = "TIME", description = "not before this date or instant")
    private String from;

    @Option(names = "--to", paramLabel = "TIME", description = "before this date or instant")
    private String to;

    @Option(
            names = "--cm",
            paramLabel = "SYSTEM:FROM-TO",
            description = "only with a central meridian in this range, e.g. 2:340-20")
    private String meridian;

    @Option(names = "--with-kit", paramLabel = "NAME", description = "only with this kit")
    private String kit;

    @Option(names = "--by", paramLabel = "NAME", description = "only by this observer")
    private String observer;

    @Option(names = "--fitted", paramLabel = "yes|no", description = "only fitted, or only unfitted")
    private PictureOptions.YesNo fitted;

    @Option(names = "--marked", paramLabel = "yes|no", description = "only marked, or only unmarked")
    private PictureOptions.YesNo marked;

    @Option(names = "--limit", paramLabel = "N", description = "at most so many")
    private int limit;

    PictureSearch search(Services services) {
        return search(services, Optional.empty());
    }

    PictureSearch search(Services services, Optional<String> words) {
        return new PictureSearch(
                Optional.ofNullable(ofPlanet).map(p -> services.planet(p).id()),
                Optional.ofNullable(night).map(SearchOptions::date),
                Optional.ofNullable(from).map(SearchOptions::instant),
                Optional.ofNullable(to).map(SearchOptions::instant),
                Optional.ofNullable(meridian).map(SearchOptions::range),
                Optional.ofNullable(observer),
                Optional.ofNullable(kit),
                Optional.empty(),
                words,
                Optional.ofNullable(fitted).map(f -> f == PictureOptions.YesNo.YES),
                Optional.ofNullable(marked).map(m -> m == PictureOptions.YesNo.YES),
                limit);
    }

    /** All pictures of one night. */
    static PictureSearch night(String text) {
        return PictureSearch.ofNight(date(text));
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new UsageException("\"" + text + "\" is no date; write it as 2031-03-24");
        }
    }

    static Instant instant(String text) {
        try {
            return text.length() == 10
                    ? LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant()
                    : Instant.parse(text);
        } catch (DateTimeException e) {
            throw new UsageException(
                    "\"" + text + "\" is no date or instant; write it as 2031-03-24 or 2031-03-24T21:05:30Z");
        }
    }

    private static MeridianRange range(String text) {
        Matcher matcher = MERIDIAN.matcher(text);
        if (!matcher.matches()) {
            throw new UsageException("\"" + text + "\" is no range of central meridians; write it as 2:340-20");
        }
        return new MeridianRange(
                matcher.group(1), Double.parseDouble(matcher.group(2)), Double.parseDouble(matcher.group(3)));
    }
}
