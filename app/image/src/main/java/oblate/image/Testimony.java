/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * All that one source says about the time.
 *
 * @param statements what it says, the best first
 * @param remarks what should be known of it, one sentence each
 * @param exposureS length of the capture as it says (s)
 */
record Testimony(List<Statement> statements, List<String> remarks, OptionalDouble exposureS) {

    Testimony {
        statements = List.copyOf(statements);
        remarks = List.copyOf(remarks);
    }

    static Testimony none() {
        return new Testimony(List.of(), List.of(), OptionalDouble.empty());
    }

    /** Made of ISO times found in a text; faulty ones become remarks. */
    static Testimony of(List<IsoTime> times, TimeSource source, String place) {
        List<Statement> statements = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        for (IsoTime time : times) {
            if (time.fault().isPresent()) {
                remarks.add(fault(place, time.text(), time.fault().get()));
                continue;
            }
            time.remark().ifPresent(remarks::add);
            statements.add(statement(time, source, place, TimeMeaning.UNSTATED, OptionalDouble.empty()));
        }
        return new Testimony(statements, remarks, OptionalDouble.empty());
    }

    static Statement statement(
            IsoTime time, TimeSource source, String place, TimeMeaning meaning, OptionalDouble exposureS) {
        TimeClaim claim = new TimeClaim(
                source, place, time.text(), time.clock(), time.offset(), meaning, exposureS, time.precisionS());
        return new Statement(claim, time.leapSecond(), 0, java.util.Optional.empty());
    }

    static String fault(String place, String text, String reason) {
        return "The time \"" + text + "\" in " + place + " is not used: " + reason + ".";
    }
}
