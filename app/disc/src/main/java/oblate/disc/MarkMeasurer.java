package oblate.disc;

import java.util.Optional;

/** Turns a pixel into a measured place with its errors, or says why it cannot. Stateless. */
public final class MarkMeasurer {

    /** Emission angle (deg) beyond which a mark is refused: an error of 1 px then costs more than three times what it does at the centre. */
    public static final double LARGEST_EMISSION_DEG = 72;

    /**
     * A measured place.
     *
     * @param point the place
     * @param errors its errors
     */
    public record Measured(SurfacePoint point, ErrorBudget errors) {}

    /**
     * Measures a pixel.
     *
     * @param frame the placed disc
     * @param covariance errors of the placement
     * @param pickSigmaPx standard error of the pick in each direction (px)
     * @param timeSigmaS standard error of the picture's time (s)
     * @return empty off the disc or beyond {@link #LARGEST_EMISSION_DEG}
     */
    public Optional<Measured> measure(
            DiscFrame frame, PlacementCovariance covariance, PixelPoint pixel, double pickSigmaPx, double timeSigmaS) {
        throw new UnsupportedOperationException(frame + "" + covariance + pixel + pickSigmaPx + timeSigmaS);
    }
}
