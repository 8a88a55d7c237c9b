/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Time keywords of FITS 4.0 (and the time paper, Rots et al. 2015, A&amp;A 574, A36): DATE-AVG, DATE-BEG, DATE-END, DATE-OBS, their MJD
 * forms, and lengths from TELAPSE, XPOSURE, EXPTIME or EXPOSURE. Dates take no zone and are UTC unless TIMESYS says otherwise.
 */
final class FitsTimes {
    private static final String GROUP = "FITS";
    private static final String COMMENT = "FITS comment";
    private static final double SHORTEST_CAPTURE_S = 1;

    private final PictureHeader header;
    private final List<Statement> statements = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private OptionalDouble exposureS = OptionalDouble.empty();

    private FitsTimes(PictureHeader header) {
        this.header = header;
    }

    static Testimony of(PictureHeader header) {
        FitsTimes times = new FitsTimes(header);
        times.exposure();
        times.both("AVG", TimeMeaning.MIDDLE);
        times.both("BEG", TimeMeaning.START);
        times.both("END", TimeMeaning.END);
        times.both("OBS", TimeMeaning.UNSTATED);
        return new Testimony(times.statements, times.remarks, times.exposureS);
    }

    /** Whether a claim is the date whose meaning FITS leaves open; by custom it is the start. */
    static boolean startByCustom(TimeClaim claim) {
        return claim.source() == TimeSource.FITS
                && (claim.place().startsWith("DATE-OBS") || claim.place().equals("MJD-OBS"));
    }

    private void exposure() {
        for (String key : List.of("TELAPSE", "XPOSURE", "EXPTIME", "EXPOSURE")) {
            OptionalDouble value = number(key);
            if (value.isEmpty() || value.getAsDouble() <= 0) {
                continue;
            }
            boolean ambiguous = key.startsWith("EXP");
            if (ambiguous && value.getAsDouble() < SHORTEST_CAPTURE_S) {
                remarks.add(key + " of " + value.getAsDouble()
                        + " s is likely that of one frame, so the length of the capture is not known from the file.");
                continue;
            }
            exposureS = value;
            return;
        }
    }

    private OptionalDouble number(String key) {
        return header.fact(GROUP, key).map(FitsTimes::parse).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble parse(String text) {
        try {
            double value =
                    Double.parseDouble(text.strip().toUpperCase(Locale.ROOT).replace('D', 'E'));
            return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    private void both(String moment, TimeMeaning meaning) {
        date("DATE-" + moment, meaning);
        julian("MJD-" + moment, meaning);
    }

    private void date(String key, TimeMeaning meaning) {
        Optional<String> value = header.fact(GROUP, key);
        if (value.isEmpty()) {
            return;
        }
        String text = value.get().strip();
        String place = key;
        if (text.matches("\\d{1,2}/\\d{1,2}/\\d{2,4}")) {
            remarks.add(Testimony.fault(key, text, "a date with slashes and a short year is ambiguous"));
            return;
        }
        if (text.matches("[+-]?\\d{4,5}-\\d{2}-\\d{2}")) {
            Optional<String> clock = key.equals("DATE-OBS") ? header.fact(GROUP, "TIME-OBS") : Optional.empty();
            if (clock.isEmpty()) {
                remarks.add(Testimony.fault(key, text, "it is a date without a time of day"));
                return;
            }
            text = text + "T" + clock.get().strip();
            place = "DATE-OBS and TIME-OBS";
        }
        Optional<IsoTime> time = IsoTimes.whole(text);
        if (time.isEmpty() || !text.contains("T")) {
            remarks.add(Testimony.fault(key, text, "it is no FITS date"));
        } else if (time.get().fault().isPresent()) {
            remarks.add(Testimony.fault(key, text, time.get().fault().get()));
        } else {
            IsoTime t = time.get();
            t.offset()
                    .filter(o -> !o.equals(ZoneOffset.UTC))
                    .ifPresent(o -> remarks.add(
                            key + " gives the offset " + o + ", which FITS dates do not have; it is allowed for."));
            add(place, text, t.clock(), t.offset(), meaning(key, meaning), t.precisionS(), t.leapSecond());
        }
    }

    private void julian(String key, TimeMeaning meaning) {
        Optional<String> value = header.fact(GROUP, key);
        if (value.isEmpty()) {
            return;
        }
        String text = value.get().strip();
        OptionalDouble number = parse(text);
        if (number.isEmpty() || number.getAsDouble() < 1 || number.getAsDouble() > 100_000) {
            remarks.add(Testimony.fault(key, text, "it is no modified Julian date of our times"));
            return;
        }
        BigDecimal days;
        try {
            days = new BigDecimal(text.toUpperCase(Locale.ROOT).replace('D', 'E'));
        } catch (NumberFormatException e) {
            days = BigDecimal.valueOf(number.getAsDouble());
        }
        long day = days.setScale(0, RoundingMode.FLOOR).longValueExact();
        long nanos = days.subtract(BigDecimal.valueOf(day))
                .multiply(BigDecimal.valueOf(86_400_000_000_000L))
                .setScale(0, RoundingMode.HALF_EVEN)
                .longValueExact();
        LocalDateTime clock =
                LocalDate.ofEpochDay(day - 40_587).atTime(LocalTime.MIDNIGHT).plusNanos(nanos);
        double precisionS = Math.max(1e-6, 43_200 * Math.pow(10, -Math.max(0, days.scale())));
        add(key, text, clock, Optional.empty(), meaning(key, meaning), precisionS, false);
    }

    /** DATE-OBS may say in its comment which moment it is. */
    private TimeMeaning meaning(String key, TimeMeaning meaning) {
        if (meaning != TimeMeaning.UNSTATED) {
            return meaning;
        }
        return header.fact(COMMENT, key).map(MeaningWords::of).orElse(TimeMeaning.UNSTATED);
    }

    private void add(
            String place,
            String text,
            LocalDateTime clock,
            Optional<ZoneOffset> stated,
            TimeMeaning meaning,
            double precisionS,
            boolean leap) {
        String scale =
                header.fact(GROUP, "TIMESYS").map(String::strip).orElse("UTC").toUpperCase(Locale.ROOT);
        boolean utc = scale.isEmpty() || scale.matches("UTC(\\(.*\\))?|UT|UT1|GMT");
        TimeClaim claim = new TimeClaim(
                TimeSource.FITS,
                place,
                text,
                clock,
                stated.isPresent() ? stated : utc ? Optional.of(ZoneOffset.UTC) : Optional.empty(),
                meaning,
                exposureS,
                precisionS);
        double systematic = number("TIMSYER").orElse(0);
        double random = number("TIMRDER").orElse(0);
        Statement statement = new Statement(claim, leap, Math.hypot(systematic, random), Optional.empty());
        statements.add(
                utc
                        ? statement
                        : statement.barredBecause(place + " \"" + text
                                + "\" is not used: TIMESYS says its time scale is " + scale + " and not UTC."));
    }
}
