/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.sky.LeapSeconds;

/**
 * A statement turned into an instant, or the reason why it cannot be.
 *
 * @param statement what was said
 * @param instant the moment stated, UTC; empty when it cannot be known
 * @param zoneAssumed whether the user's zone was used
 * @param why when {@code instant} is empty: one sentence
 */
record ReadTime(Statement statement, Optional<Instant> instant, boolean zoneAssumed, Optional<String> why) {

    /**
     * Applies the zone, the source's own or the user's.
     *
     * @param zone the user's zone for times without one
     */
    static ReadTime of(Statement statement, Optional<ZoneId> zone) {
        TimeClaim claim = statement.claim();
        if (statement.barred().isPresent()) {
            return refused(statement, statement.barred().get());
        }
        if (claim.offset().isPresent()) {
            return at(statement, claim.offset().get(), false);
        }
        if (zone.isEmpty()) {
            return refused(
                    statement,
                    named(claim)
                            + " has no zone and is not used; give its zone, or write the time with Z or an offset.");
        }
        List<ZoneOffset> offsets = zone.get().getRules().getValidOffsets(claim.stated());
        if (offsets.isEmpty()) {
            return refused(
                    statement,
                    named(claim) + " did not exist in " + zone.get()
                            + " (clocks were put forward then) and is not used; give the time" + " with an offset.");
        }
        if (offsets.size() > 1) {
            return refused(
                    statement,
                    named(claim) + " came twice in " + zone.get() + " (clocks were put back then: " + offsets.get(0)
                            + " or " + offsets.get(1) + ") and is not used; give the time with an offset.");
        }
        return at(statement, offsets.get(0), true);
    }

    private static ReadTime at(Statement statement, ZoneOffset offset, boolean zoneAssumed) {
        LocalDateTime stated = statement.claim().stated();
        Instant instant = stated.toInstant(offset);
        if (statement.leapSecond() && !inLeapSecond(instant)) {
            return refused(
                    statement,
                    named(statement.claim()) + " is not used: no minute of that day had a second numbered 60.");
        }
        return new ReadTime(statement, Optional.of(instant), zoneAssumed, Optional.empty());
    }

    private static boolean inLeapSecond(Instant nextDay) {
        long second = nextDay.getEpochSecond();
        return Math.floorMod(second, 86_400L) == 0
                && LeapSeconds.bundled().secondsInDay(Math.floorDiv(second, 86_400L) - 1) == 86_401;
    }

    private static ReadTime refused(Statement statement, String why) {
        return new ReadTime(statement, Optional.empty(), false, Optional.of(why));
    }

    private static String named(TimeClaim claim) {
        return "The time \"" + claim.originalText() + "\" in " + claim.place();
    }

    TimeClaim claim() {
        return statement.claim();
    }

    /** Start, middle or end: as stated, as the user says, by the custom of FITS, else the middle. */
    TimeMeaning meaning(TimeWish wish) {
        if (claim().meaning() != TimeMeaning.UNSTATED) {
            return claim().meaning();
        }
        Optional<TimeMeaning> wished = wish.meaning().filter(m -> m != TimeMeaning.UNSTATED);
        if (wished.isPresent()) {
            return wished.get();
        }
        return FitsTimes.startByCustom(claim()) ? TimeMeaning.START : TimeMeaning.MIDDLE;
    }

    /** Whether nobody said which moment it is. */
    boolean meaningAssumed(TimeWish wish) {
        return claim().meaning() == TimeMeaning.UNSTATED
                && wish.meaning().filter(m -> m != TimeMeaning.UNSTATED).isEmpty();
    }

    /** The middle of the capture, with half its length added or taken off as the meaning asks; the moment itself when the length is unknown. */
    Optional<Instant> middle(TimeWish wish, OptionalDouble exposureS) {
        double halfS = exposureS.orElse(0) / 2;
        double shiftS =
                switch (meaning(wish)) {
                    case START -> halfS;
                    case END -> -halfS;
                    default -> 0;
                };
        return instant.map(i -> i.plusNanos(Math.round(shiftS * 1e9)));
    }
}
