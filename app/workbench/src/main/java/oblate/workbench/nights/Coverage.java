/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.Arrays;
import java.util.List;

/** Which longitudes a night's pictures show well, in whole degrees. */
final class Coverage {
    /** Beyond this from the meridian a place is seen too slantwise to count (deg). */
    static final int WITHIN_DEG = 50;

    private Coverage() {}

    /** Best distance from the meridian for each degree of longitude (deg); above {@link #WITHIN_DEG} where the planet was not seen. */
    static int[] bestDistanceDeg(List<Double> centralMeridiansDeg) {
        int[] best = new int[360];
        Arrays.fill(best, 180);
        for (double meridian : centralMeridiansDeg) {
            for (int lon = 0; lon < 360; lon++) {
                int away = (int) Math.round(Math.abs(Math.IEEEremainder(lon + 0.5 - meridian, 360)));
                best[lon] = Math.min(best[lon], away);
            }
        }
        return best;
    }

    /** Degrees of longitude seen within {@link #WITHIN_DEG} of the meridian, 0…360. */
    static int seenDeg(int[] bestDistanceDeg) {
        return (int) Arrays.stream(bestDistanceDeg).filter(d -> d <= WITHIN_DEG).count();
    }
}
