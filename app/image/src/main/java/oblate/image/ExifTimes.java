/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Capture times in Exif and XMP: DateTimeOriginal with its offset, the satellite clock (UTC by definition), DateTimeOriginal of XMP, and last
 * a DateTimeOriginal without a zone. DateTime and DateTimeDigitized are times of processing and are not looked at.
 */
final class ExifTimes {
    private static final String GROUP = "Exif";
    private static final Pattern DATE =
            Pattern.compile("(\\d{4})[:-](\\d{2})[:-](\\d{2})[ T](\\d{2}):(\\d{2}):(\\d{2})");
    private static final double SHORTEST_CAPTURE_S = 1;

    private ExifTimes() {}

    static Testimony of(PictureHeader header) {
        List<Statement> zoned = new ArrayList<>();
        List<Statement> zoneless = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        OptionalDouble exposureS = exposure(header);
        original(header, exposureS, remarks).ifPresent(s -> (s.claim().offset().isPresent() ? zoned : zoneless).add(s));
        satellite(header, exposureS, remarks).ifPresent(zoned::add);
        header.fact("XMP", "exif:DateTimeOriginal").ifPresent(text -> {
            String place = "XMP exif:DateTimeOriginal";
            Optional<IsoTime> time = IsoTimes.whole(text);
            if (time.isEmpty()) {
                remarks.add(Testimony.fault(place, text, "it is no ISO 8601 time"));
            } else if (time.get().fault().isPresent()) {
                remarks.add(Testimony.fault(place, text, time.get().fault().get()));
            } else {
                Statement statement =
                        Testimony.statement(time.get(), TimeSource.EXIF, place, TimeMeaning.UNSTATED, exposureS);
                (time.get().offset().isPresent() ? zoned : zoneless).add(statement);
            }
        });
        zoned.addAll(zoneless);
        return new Testimony(zoned, remarks, exposureS);
    }

    /** ExposureTime of a camera is that of one frame unless it is a second or more. */
    private static OptionalDouble exposure(PictureHeader header) {
        Optional<String> text = header.fact(GROUP, "ExposureTime");
        if (text.isEmpty() || !text.get().matches("\\d{1,9}(\\.\\d{1,12})?")) {
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble(text.get());
        return value >= SHORTEST_CAPTURE_S ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    private static Optional<Statement> original(PictureHeader header, OptionalDouble exposureS, List<String> remarks) {
        String text = header.fact(GROUP, "DateTimeOriginal").orElse("").strip();
        if (text.isEmpty() || text.startsWith("0000") || text.startsWith(":")) {
            return Optional.empty(); // not set, in the ways cameras write that
        }
        String zone = header.fact(GROUP, "OffsetTimeOriginal").orElse("").strip();
        String fraction = header.fact(GROUP, "SubSecTimeOriginal").orElse("").strip();
        Optional<ZoneOffset> offset = Optional.empty();
        if (zone.matches("[+-]\\d{2}:\\d{2}|Z")) {
            try {
                offset = Optional.of(ZoneOffset.of(zone));
            } catch (DateTimeException e) {
                remarks.add(Testimony.fault("OffsetTimeOriginal", zone, "there is no such offset"));
            }
        }
        return clock(text, fraction, "DateTimeOriginal", remarks)
                .map(c -> statement(c, "DateTimeOriginal", text + (zone.isEmpty() ? "" : " " + zone), exposureS))
                .map(withZone(offset));
    }

    private static java.util.function.UnaryOperator<Statement> withZone(Optional<ZoneOffset> offset) {
        return s -> {
            TimeClaim c = s.claim();
            return new Statement(
                    new TimeClaim(
                            c.source(),
                            c.place(),
                            c.originalText(),
                            c.stated(),
                            offset,
                            c.meaning(),
                            c.exposureS(),
                            c.precisionS()),
                    s.leapSecond(),
                    s.clockErrorS(),
                    s.barred());
        };
    }

    private static Optional<Statement> satellite(PictureHeader header, OptionalDouble exposureS, List<String> remarks) {
        String date = header.fact(GROUP, "GPSDateStamp").orElse("").strip();
        String time = header.fact(GROUP, "GPSTimeStamp").orElse("").strip();
        if (date.isEmpty() || time.isEmpty()) {
            return Optional.empty();
        }
        int point = time.indexOf('.');
        String fraction = point < 0 ? "" : time.substring(point + 1);
        String whole = point < 0 ? time : time.substring(0, point);
        return clock(date + " " + whole, fraction, "GPSTimeStamp", remarks)
                .map(c -> statement(c, "GPSDateStamp and GPSTimeStamp", date + " " + time, exposureS))
                .map(withZone(Optional.of(ZoneOffset.UTC)));
    }

    private static Statement statement(Clock clock, String place, String text, OptionalDouble exposureS) {
        TimeClaim claim = new TimeClaim(
                TimeSource.EXIF,
                place,
                text,
                clock.reading(),
                Optional.empty(),
                TimeMeaning.UNSTATED,
                exposureS,
                clock.precisionS());
        return new Statement(claim, clock.leap(), 0, Optional.empty());
    }

    /** A reading of a clock. */
    private record Clock(LocalDateTime reading, double precisionS, boolean leap) {}

    private static Optional<Clock> clock(String text, String fraction, String place, List<String> remarks) {
        Matcher m = DATE.matcher(text);
        if (!m.matches()) {
            remarks.add(Testimony.fault(place, text, "it is no Exif time"));
            return Optional.empty();
        }
        int second = Integer.parseInt(m.group(6));
        int minute = Integer.parseInt(m.group(5));
        int hour = Integer.parseInt(m.group(4));
        String fault = IsoTimes.clockFault(hour, minute, second);
        try {
            if (fault == null) {
                boolean leap = second == 60;
                boolean fine = fraction.matches("\\d{1,9}");
                long nanos = fine ? Long.parseLong((fraction + "000000000").substring(0, 9)) : 0;
                LocalDateTime reading = LocalDateTime.of(
                                Integer.parseInt(m.group(1)),
                                Integer.parseInt(m.group(2)),
                                Integer.parseInt(m.group(3)),
                                hour,
                                minute,
                                leap ? 59 : second)
                        .plusSeconds(leap ? 1 : 0)
                        .plusNanos(nanos);
                return Optional.of(new Clock(reading, 0.5 * Math.pow(10, fine ? -fraction.length() : 0), leap));
            }
        } catch (DateTimeException e) {
            fault = "there is no such day";
        }
        remarks.add(Testimony.fault(place, text, fault));
        return Optional.empty();
    }
}
