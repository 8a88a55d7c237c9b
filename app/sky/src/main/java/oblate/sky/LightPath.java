/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.function.DoubleFunction;

/** Light time: where a moving body is seen from a place at a moment. */
final class LightPath {
    private static final int STEPS = 4;

    private LightPath() {}

    /**
     * Vector (km) from a place to where a body was when the light that arrives there left it.
     *
     * @param placeKm observer, barycentric (km)
     * @param tdbDays moment of arrival
     * @param bodyKm the body's barycentric place (km) at a moment; each step shrinks the error by v/c, so four leave nothing
     */
    static Vec3 seen(Vec3 placeKm, double tdbDays, DoubleFunction<Vec3> bodyKm) {
        Vec3 way = bodyKm.apply(tdbDays).minus(placeKm);
        for (int i = 0; i < STEPS; i++) {
            way = bodyKm.apply(tdbDays - way.norm() / Starlight.C_KM_PER_DAY).minus(placeKm);
        }
        return way;
    }
}
