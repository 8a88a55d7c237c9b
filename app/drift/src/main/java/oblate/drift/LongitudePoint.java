package oblate.drift;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * One longitude of a feature.
 *
 * @param time mid-time of the picture, UTC
 * @param lonDeg planetographic longitude in the series' system (deg, any turn)
 * @param sigmaDeg its standard error (deg), positive
 * @param latGraphicDeg planetographic latitude (deg), if measured
 * @param sigmaLatDeg its standard error (deg), if measured
 */
public record LongitudePoint(
        Instant time, double lonDeg, double sigmaDeg, OptionalDouble latGraphicDeg, OptionalDouble sigmaLatDeg) {}
