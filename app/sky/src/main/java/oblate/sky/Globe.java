/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;
import java.util.Optional;

/**
 * A planet as a turning body: its place in the ephemeris, shape, pole, and rotation systems.
 *
 * @param deBody number of the body in a JPL DE file: 1 Mercury, 2 Venus, 4 Mars, 5 Jupiter, 6 Saturn, 7 Uranus, 8 Neptune
 * @param figure shape
 * @param elements pole and periodic terms
 * @param systems rotation systems in the order of their ids; at least one
 * @param iauSystemId id of the system that is the IAU's (System III for Jupiter and Saturn)
 * @param longitudePositive which way longitude grows
 */
public record Globe(
        int deBody,
        Spheroid figure,
        RotationElements elements,
        List<RotationSystem> systems,
        String iauSystemId,
        LongitudeSense longitudePositive) {

    /**
     * Copies the list and checks that the IAU system is in it.
     *
     * @throws IllegalArgumentException when it is not
     */
    public Globe {
        systems = List.copyOf(systems);
        if (systems.stream().noneMatch(s -> s.id().equals(iauSystemId))) {
            throw new IllegalArgumentException("no system " + iauSystemId);
        }
    }

    /** The system with an id, if the planet has it. */
    public Optional<RotationSystem> system(String id) {
        return systems.stream().filter(s -> s.id().equals(id)).findFirst();
    }

    /** The IAU's system. */
    public RotationSystem iauSystem() {
        return system(iauSystemId).orElseThrow();
    }

    /** Place of a system in {@link #systems()}, or −1. */
    public int indexOf(RotationSystem system) {
        return systems.indexOf(system);
    }
}
