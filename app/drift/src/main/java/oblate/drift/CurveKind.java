/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * The kinds of motion that can be fitted, simplest first.
 *
 * <p>With u the time in units of half the arc, longitude is θ₀ + θ₁u, and beside it: θ₂u² for an acceleration; θ₂ max(0, u − θ₃) for a change; θ₂ sin + θ₃ cos of
 * 2πθ₄u for an oscillation.
 */
enum CurveKind {
    RATE("rate", 2, 2, 0),
    ACCELERATION("acceleration", 3, 3, 4),
    CHANGE("change", 3, 4, 6),
    OSCILLATION("oscillation", 4, 5, 8);

    private final String id;
    private final int linear;
    private final int parameters;
    private final double searchToll;

    CurveKind(String id, int linear, int parameters, double searchToll) {
        this.id = id;
        this.linear = linear;
        this.parameters = parameters;
        this.searchToll = searchToll;
    }

    String id() {
        return id;
    }

    /** Numbers the longitude depends on linearly; they come first. */
    int linear() {
        return linear;
    }

    int parameters() {
        return parameters;
    }

    /** What the criterion asks on top because the best of many curves was sought. */
    double searchToll() {
        return searchToll;
    }

    double value(double u, double[] theta) {
        double line = theta[0] + theta[1] * u;
        return switch (this) {
            case RATE -> line;
            case ACCELERATION -> line + theta[2] * u * u;
            case CHANGE -> line + theta[2] * Math.max(0, u - theta[3]);
            case OSCILLATION -> {
                double angle = 2 * Math.PI * theta[4] * u;
                yield line + theta[2] * Math.sin(angle) + theta[3] * Math.cos(angle);
            }
        };
    }

    /** Slope in u. */
    double slope(double u, double[] theta) {
        return switch (this) {
            case RATE -> theta[1];
            case ACCELERATION -> theta[1] + 2 * theta[2] * u;
            case CHANGE -> theta[1] + (u > theta[3] ? theta[2] : 0);
            case OSCILLATION -> {
                double turn = 2 * Math.PI * theta[4];
                yield theta[1] + turn * (theta[2] * Math.cos(turn * u) - theta[3] * Math.sin(turn * u));
            }
        };
    }

    /** Derivatives of the value by every number of theta. */
    void gradient(double u, double[] theta, double[] into) {
        into[0] = 1;
        into[1] = u;
        switch (this) {
            default -> {}
            case ACCELERATION -> into[2] = u * u;
            case CHANGE -> {
                into[2] = Math.max(0, u - theta[3]);
                into[3] = u > theta[3] ? -theta[2] : 0;
            }
            case OSCILLATION -> {
                double turn = 2 * Math.PI * theta[4];
                double sine = Math.sin(turn * u);
                double cosine = Math.cos(turn * u);
                into[2] = sine;
                into[3] = cosine;
                into[4] = 2 * Math.PI * u * (theta[2] * cosine - theta[3] * sine);
            }
        }
    }
}
