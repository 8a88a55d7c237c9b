package oblate.drift;

import java.util.List;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * The longitudes of one feature in one system.
 *
 * @param feature its name
 * @param planet planet
 * @param system system of the longitudes
 * @param points in any order
 */
public record LongitudeSeries(String feature, PlanetModel planet, RotationSystem system, List<LongitudePoint> points) {

    /** Copies the list. */
    public LongitudeSeries {
        points = List.copyOf(points);
    }
}
