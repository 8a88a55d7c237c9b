/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;

/** How a feature's longitude goes with time: one of four kinds, each with its own numbers and their standard errors. */
public sealed interface DriftModel
        permits DriftModel.ConstantRate, DriftModel.Acceleration, DriftModel.RateChange, DriftModel.Oscillation {

    /** Its word in tables: "rate", "acceleration", "change" or "oscillation". */
    String id();

    /**
     * A straight line.
     *
     * @param rateDegPerDay its rate (deg per day)
     * @param sigmaRateDegPerDay its standard error
     */
    record ConstantRate(double rateDegPerDay, double sigmaRateDegPerDay) implements DriftModel {
        @Override
        public String id() {
            return CurveKind.RATE.id();
        }
    }

    /**
     * A rate that grows evenly.
     *
     * @param rateDegPerDay rate at the drift's epoch (deg per day)
     * @param sigmaRateDegPerDay its standard error
     * @param accelerationDegPerDay2 what the rate gains each day (deg per day per day)
     * @param sigmaAccelerationDegPerDay2 its standard error
     */
    record Acceleration(
            double rateDegPerDay,
            double sigmaRateDegPerDay,
            double accelerationDegPerDay2,
            double sigmaAccelerationDegPerDay2)
            implements DriftModel {
        @Override
        public String id() {
            return CurveKind.ACCELERATION.id();
        }
    }

    /**
     * One change from one rate to another.
     *
     * @param changeUtc when it changed
     * @param sigmaChangeDays its standard error (days)
     * @param beforeDegPerDay rate before (deg per day)
     * @param sigmaBeforeDegPerDay its standard error
     * @param afterDegPerDay rate after (deg per day)
     * @param sigmaAfterDegPerDay its standard error
     */
    record RateChange(
            Instant changeUtc,
            double sigmaChangeDays,
            double beforeDegPerDay,
            double sigmaBeforeDegPerDay,
            double afterDegPerDay,
            double sigmaAfterDegPerDay)
            implements DriftModel {
        @Override
        public String id() {
            return CurveKind.CHANGE.id();
        }
    }

    /**
     * A swing to and fro about a straight line: amplitude · sin(2π (t − zero) / period).
     *
     * @param rateDegPerDay rate of the line (deg per day)
     * @param sigmaRateDegPerDay its standard error
     * @param amplitudeDeg half of the whole swing (deg), positive
     * @param sigmaAmplitudeDeg its standard error
     * @param periodDays time of one swing (days)
     * @param sigmaPeriodDays its standard error; 0 where the period was given
     * @param zeroUtc instant nearest to the epoch at which the feature passes its line with growing longitude
     * @param sigmaZeroDays its standard error (days)
     */
    record Oscillation(
            double rateDegPerDay,
            double sigmaRateDegPerDay,
            double amplitudeDeg,
            double sigmaAmplitudeDeg,
            double periodDays,
            double sigmaPeriodDays,
            Instant zeroUtc,
            double sigmaZeroDays)
            implements DriftModel {
        @Override
        public String id() {
            return CurveKind.OSCILLATION.id();
        }
    }
}
