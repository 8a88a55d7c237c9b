package oblate.image;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The days that ended with a second numbered 60 (IERS Bulletin C; the last so far is 2016-12-31). */
final class LeapSeconds {
    private static final Set<LocalDate> DAYS = List.of(
                    "1972-06-30", "1972-12-31", "1973-12-31", "1974-12-31", "1975-12-31", "1976-12-31", "1977-12-31", "1978-12-31",
                    "1979-12-31", "1981-06-30", "1982-06-30", "1983-06-30", "1985-06-30", "1987-12-31", "1989-12-31", "1990-12-31",
                    "1992-06-30", "1993-06-30", "1994-06-30", "1995-12-31", "1997-06-30", "1998-12-31", "2005-12-31", "2008-12-31",
                    "2012-06-30", "2015-06-30", "2016-12-31")
            .stream()
            .map(LocalDate::parse)
            .collect(Collectors.toUnmodifiableSet());

    private LeapSeconds() {}

    /** Whether the second before the start of a day was numbered 60. */
    static boolean justBefore(Instant startOfDay) {
        var utc = startOfDay.atOffset(ZoneOffset.UTC);
        return utc.getHour() == 0 && utc.getMinute() == 0 && utc.getSecond() == 0 && DAYS.contains(utc.toLocalDate().minusDays(1));
    }
}
