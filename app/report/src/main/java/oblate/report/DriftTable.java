/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.List;
import java.util.OptionalDouble;
import oblate.drift.Drift;
import oblate.sky.PlanetModel;

/** The table of fitted drifts: first the fixed columns, in their order, then what helps to judge and to repeat the figures. */
public final class DriftTable {
    private static final String DRIFT_UCD = "phys.veloc.ang;pos.bodyrc.lon";
    private static final String DRIFT_ERROR_UCD = "stat.error;phys.veloc.ang;pos.bodyrc.lon";

    private DriftTable() {}

    /** One row per drift, in the order given. */
    public static ReportTable of(PlanetModel planet, List<Drift> drifts) {
        return draft(planet).rows(drifts);
    }

    /** The same as a draft, for a caller with more columns or facts to add. */
    public static TableDraft<Drift> draft(PlanetModel planet) {
        TableDraft<Drift> draft = new TableDraft<>("Drifts on " + planet.label());
        facts(draft, planet);
        who(draft);
        motion(draft);
        turning(draft);
        quality(draft);
        more(draft, planet);
        DriftModelColumns.add(draft, planet);
        return draft;
    }

    private static void facts(TableDraft<Drift> draft, PlanetModel planet) {
        draft.fact("planet", planet.label())
                .fact("longitudes", Wording.longitudes(planet))
                .fact("systems", Wording.systems(planet))
                .fact("latitudes", "planetographic; weighted means of the marks used")
                .fact("shape", Wording.radii(planet))
                .fact(
                        "period",
                        "86400 s x 360 / (rate of the system less the drift, both counted in the planet's sense of rotation)")
                .fact(
                        "speed",
                        "relative to " + planet.globe().iauSystem().label()
                                + ", positive in the sense of rotation: drift x distance from the spin axis, a cos g / sqrt(1 - e2 sin2 g)")
                .fact("epoch", "weighted middle of the arc, where the errors of longitude and drift are uncorrelated")
                .fact(
                        "method",
                        "unwrapped by scanning drifts; fitted by likelihood, each mark normal about the line or, with 5 %, false; "
                                + "stated errors are enlarged where the marks scatter more, never shrunk; kind of motion by a corrected information criterion")
                .fact(
                        "drift",
                        "of change and acceleration the mean over the arc; of oscillation that of the line it swings about")
                .fact("errors", "one standard error")
                .fact("times", "UTC, middle of the capture")
                .fact("software", Software.nameAndVersion());
    }

    private static void who(TableDraft<Drift> draft) {
        draft.column(new Column("feature", "Feature", "", "meta.id", "name of the feature", -1), d -> d.series()
                .feature());
        draft.column(new Column("model", "Model", "", "meta.code", "kind of motion fitted", -1), Drift::model);
        draft.column(
                new Column("marks", "Marks", "", "meta.number", "marks of the feature, left-out ones included", 0),
                d -> (long) d.states().size());
        draft.column(
                new Column("first_utc", "First", "", "time.start;obs", "first mark used, UTC", -1), Drift::firstUtc);
        draft.column(new Column("last_utc", "Last", "", "time.end;obs", "last mark used, UTC", -1), Drift::lastUtc);
        draft.column(
                new Column("epoch_utc", "Epoch", "", "time.epoch", "instant the longitude belongs to, UTC", -1),
                Drift::epochUtc);
    }

    private static void motion(TableDraft<Drift> draft) {
        draft.column(
                new Column("lon_deg", "Lon", "deg", "pos.bodyrc.lon", "longitude at the epoch, in the row's system", 3),
                Drift::lonDeg);
        draft.column(
                new Column(
                        "sigma_lon_deg",
                        "+/-",
                        "deg",
                        "stat.error;pos.bodyrc.lon",
                        "standard error of the longitude",
                        3),
                Drift::sigmaLonDeg);
        draft.column(
                new Column(
                        "rate_deg_per_day", "Drift", "deg/d", DRIFT_UCD, "drift in longitude, in the row's system", 5),
                Drift::rateDegPerDay);
        draft.column(
                new Column(
                        "sigma_rate_deg_per_day",
                        "+/-",
                        "deg/d",
                        DRIFT_ERROR_UCD,
                        "standard error of the drift, with what the choice among the kinds of motion leaves open",
                        5),
                Drift::sigmaRateDegPerDay);
        draft.column(
                new Column(
                        "rate_deg_per_30d",
                        "deg/30 d",
                        "0.03333333deg/d",
                        DRIFT_UCD,
                        "drift in degrees per 30 days",
                        2),
                Drift::rateDegPer30Days);
    }

    private static void turning(TableDraft<Drift> draft) {
        draft.column(
                new Column(
                        "period_s",
                        "Period",
                        "s",
                        "time.period.rotation",
                        "sidereal rotation period of the feature",
                        2),
                Drift::periodS);
        draft.column(
                new Column(
                        "sigma_period_s",
                        "+/-",
                        "s",
                        "stat.error;time.period.rotation",
                        "standard error of the period",
                        2),
                Drift::sigmaPeriodS);
        draft.column(
                new Column(
                        "speed_m_s",
                        "Speed",
                        "m/s",
                        "phys.veloc",
                        "speed relative to the IAU's system, positive in the sense of rotation",
                        2),
                d -> orNull(d.speedMS()));
        draft.column(
                new Column("sigma_speed_m_s", "+/-", "m/s", "stat.error;phys.veloc", "standard error of the speed", 2),
                d -> orNull(d.sigmaSpeedMS()));
    }

    private static void quality(TableDraft<Drift> draft) {
        draft.column(
                new Column(
                        "rms_deg",
                        "Scatter",
                        "deg",
                        "stat.stdev;pos.bodyrc.lon",
                        "root mean square of the used marks about the line",
                        3),
                Drift::rmsDeg);
        draft.column(new Column("rejected", "Left out", "", "meta.number", "marks left out as false", 0), d ->
                (long) d.rejected());
    }

    private static void more(TableDraft<Drift> draft, PlanetModel planet) {
        draft.column(
                new Column(
                        "sigma_rate_deg_per_30d",
                        "+/- deg/30 d",
                        "0.03333333deg/d",
                        DRIFT_ERROR_UCD,
                        "standard error of the drift in degrees per 30 days",
                        2),
                Drift::sigmaRateDegPer30Days);
        draft.column(
                new Column("system", "System", "", "meta.id;pos.bodyrc", "rotation system of longitude and drift", -1),
                d -> d.series().system().label());
        draft.column(
                new Column(
                        "lon_positive",
                        "Lon grows",
                        "",
                        "meta.code;pos.bodyrc.lon",
                        "way longitudes grow on the planet",
                        -1),
                d -> Wording.sense(planet));
        draft.column(
                new Column(
                        "lat_graphic_deg",
                        "Lat",
                        "deg",
                        "pos.bodyrc.lat;pos.bodygraphic",
                        "mean planetographic latitude",
                        2),
                d -> orNull(d.meanLatDeg()));
        draft.column(
                new Column(
                        "sigma_lat_deg",
                        "+/-",
                        "deg",
                        "stat.error;pos.bodyrc.lat",
                        "standard error of the mean latitude",
                        2),
                d -> orNull(d.sigmaMeanLatDeg()));
        draft.column(
                new Column(
                        "scatter_deg",
                        "Added",
                        "deg",
                        "stat.stdev;pos.bodyrc.lon",
                        "scatter added to the stated errors",
                        3),
                Drift::scatterDeg);
        draft.column(
                new Column("warnings", "Look at", "", "meta.note", "what to know before using the row", -1),
                d -> String.join("; ", d.warnings()));
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }
}
