/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import oblate.drift.Alternative;
import oblate.drift.Drift;
import oblate.drift.DriftModel;
import oblate.drift.LatitudeTrend;
import oblate.drift.WindProfile;
import oblate.sky.PlanetModel;

/** The columns of a drift that belong to its kind of motion; empty for other kinds. */
final class DriftModelColumns {
    private static final String RATE = "phys.veloc.ang;pos.bodyrc.lon";
    private static final String ERROR = "stat.error;";

    private DriftModelColumns() {}

    static void add(TableDraft<Drift> draft, PlanetModel planet) {
        wind(draft, planet);
        acceleration(draft);
        change(draft);
        oscillation(draft);
        latitude(draft);
        draft.column(
                new Column(
                        "runners_up",
                        "Compared with",
                        "",
                        "meta.note",
                        "other kinds of motion, each with what its criterion has more; under 4 the choice is unsure",
                        -1),
                DriftModelColumns::runnersUp);
        draft.column(
                new Column(
                        "shares", "Shares", "", "meta.note", "what each kind of motion counts for in predictions", -1),
                DriftModelColumns::shares);
    }

    private static void wind(TableDraft<Drift> draft, PlanetModel planet) {
        Optional<WindProfile> profile = WindProfile.of(planet);
        if (profile.isPresent()) {
            draft.fact("wind", profile.get().source());
            number(
                    draft,
                    "wind_m_s",
                    "m/s",
                    "phys.veloc",
                    "published mean wind at the latitude, to hold the speed against",
                    1,
                    d -> wind(profile.get(), d));
        }
    }

    private static Double wind(WindProfile profile, Drift drift) {
        OptionalDouble wind = drift.meanLatDeg().isPresent()
                ? profile.windMSAt(drift.meanLatDeg().getAsDouble())
                : OptionalDouble.empty();
        return wind.isPresent() ? (Double) wind.getAsDouble() : null;
    }

    private static void acceleration(TableDraft<Drift> draft) {
        number(
                draft,
                "acceleration_deg_per_day2",
                "deg/d**2",
                RATE,
                "what the rate gains each day",
                6,
                of(DriftModel.Acceleration.class, DriftModel.Acceleration::accelerationDegPerDay2));
        number(
                draft,
                "sigma_acceleration_deg_per_day2",
                "deg/d**2",
                ERROR + RATE,
                "its standard error",
                6,
                of(DriftModel.Acceleration.class, DriftModel.Acceleration::sigmaAccelerationDegPerDay2));
    }

    private static void change(TableDraft<Drift> draft) {
        draft.column(
                new Column("change_utc", "Changed", "", "time.epoch", "when the rate changed, UTC", -1),
                of(DriftModel.RateChange.class, DriftModel.RateChange::changeUtc));
        number(
                draft,
                "sigma_change_days",
                "d",
                "stat.error;time.epoch",
                "standard error of that date",
                2,
                of(DriftModel.RateChange.class, DriftModel.RateChange::sigmaChangeDays));
        number(
                draft,
                "rate_before_deg_per_day",
                "deg/d",
                RATE,
                "drift before the change",
                5,
                of(DriftModel.RateChange.class, DriftModel.RateChange::beforeDegPerDay));
        number(
                draft,
                "sigma_rate_before_deg_per_day",
                "deg/d",
                ERROR + RATE,
                "its standard error",
                5,
                of(DriftModel.RateChange.class, DriftModel.RateChange::sigmaBeforeDegPerDay));
        number(
                draft,
                "rate_after_deg_per_day",
                "deg/d",
                RATE,
                "drift after the change",
                5,
                of(DriftModel.RateChange.class, DriftModel.RateChange::afterDegPerDay));
        number(
                draft,
                "sigma_rate_after_deg_per_day",
                "deg/d",
                ERROR + RATE,
                "its standard error",
                5,
                of(DriftModel.RateChange.class, DriftModel.RateChange::sigmaAfterDegPerDay));
    }

    private static void oscillation(TableDraft<Drift> draft) {
        number(
                draft,
                "amplitude_deg",
                "deg",
                "pos.bodyrc.lon",
                "half of the whole swing in longitude",
                3,
                of(DriftModel.Oscillation.class, DriftModel.Oscillation::amplitudeDeg));
        number(
                draft,
                "sigma_amplitude_deg",
                "deg",
                ERROR + "pos.bodyrc.lon",
                "its standard error",
                3,
                of(DriftModel.Oscillation.class, DriftModel.Oscillation::sigmaAmplitudeDeg));
        number(
                draft,
                "period_days",
                "d",
                "time.period",
                "time of one swing",
                2,
                of(DriftModel.Oscillation.class, DriftModel.Oscillation::periodDays));
        number(
                draft,
                "sigma_period_days",
                "d",
                ERROR + "time.period",
                "its standard error; 0 where the period was given",
                2,
                of(DriftModel.Oscillation.class, DriftModel.Oscillation::sigmaPeriodDays));
        draft.column(
                new Column(
                        "phase_utc",
                        "Zero of swing",
                        "",
                        "time.phase",
                        "instant nearest to the epoch at which the feature passes its line with growing longitude, UTC",
                        -1),
                of(DriftModel.Oscillation.class, DriftModel.Oscillation::zeroUtc));
        number(
                draft,
                "sigma_phase_days",
                "d",
                ERROR + "time.phase",
                "its standard error",
                2,
                of(DriftModel.Oscillation.class, DriftModel.Oscillation::sigmaZeroDays));
    }

    private static void latitude(TableDraft<Drift> draft) {
        number(
                draft,
                "lat_rate_deg_per_30d",
                "0.03333333deg/d",
                "phys.veloc.ang;pos.bodyrc.lat",
                "change of latitude in degrees per 30 days, positive northward",
                3,
                d -> LatitudeTrend.of(d).map(t -> 30 * t.degPerDay()).orElse(null));
        number(
                draft,
                "sigma_lat_rate_deg_per_30d",
                "0.03333333deg/d",
                ERROR + "phys.veloc.ang;pos.bodyrc.lat",
                "its standard error",
                3,
                d -> LatitudeTrend.of(d).map(t -> 30 * t.sigmaDegPerDay()).orElse(null));
    }

    private static void number(
            TableDraft<Drift> draft,
            String name,
            String unit,
            String ucd,
            String description,
            int decimals,
            Function<Drift, ?> value) {
        draft.column(new Column(name, name.replace('_', ' '), unit, ucd, description, decimals), value);
    }

    private static <M extends DriftModel> Function<Drift, Object> of(Class<M> kind, Function<M, ?> value) {
        return drift -> kind.isInstance(drift.motion()) ? value.apply(kind.cast(drift.motion())) : null;
    }

    private static String runnersUp(Drift drift) {
        return drift.alternatives().stream()
                .skip(1)
                .map((Alternative a) ->
                        String.format(Locale.ROOT, "%s +%.1f", a.curve().modelId(), a.criterion()))
                .collect(Collectors.joining(", "));
    }

    private static String shares(Drift drift) {
        return drift.alternatives().stream()
                .map(a -> String.format(Locale.ROOT, "%s %.2f", a.curve().modelId(), a.weight()))
                .collect(Collectors.joining(", "));
    }
}
