/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench;

import java.util.ServiceLoader;
import oblate.sky.PlanetModel;

/** The planets on the class path. */
final class Planets {
    private Planets() {}

    static PlanetModel named(String id) {
        return ServiceLoader.load(PlanetModel.class).stream()
                .map(ServiceLoader.Provider::get)
                .filter(p -> p.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
