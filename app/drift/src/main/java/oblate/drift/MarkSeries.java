package oblate.drift;

import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Makes longitude series from the marks of an archive. Stateless. */
public final class MarkSeries {

    /**
     * One series per named feature of a planet with at least one current mark on the globe, by name.
     *
     * @param system system of the longitudes; empty for each feature's own or the planet's custom at its latitude
     */
    public List<LongitudeSeries> ofArchive(Archive archive, PlanetModel planet, Optional<RotationSystem> system) {
        throw new UnsupportedOperationException(archive + "" + planet + system);
    }
}
