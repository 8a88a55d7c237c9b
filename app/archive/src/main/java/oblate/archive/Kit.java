/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A named set of gear and the orientation it gives. Unknown parts are empty.
 *
 * @param name unique name
 * @param telescope optical type in words
 * @param apertureMm clear aperture (mm)
 * @param focalMm effective focal length (mm)
 * @param camera camera in words
 * @param pixelUm pixel size (µm)
 * @param amplifier amplifier lens in words
 * @param corrector dispersion corrector in words
 * @param filter filters in order, in words
 * @param mirrored whether its pictures are mirror images, when that is known
 * @param note anything else
 */
public record Kit(
        String name,
        Optional<String> telescope,
        OptionalDouble apertureMm,
        OptionalDouble focalMm,
        Optional<String> camera,
        OptionalDouble pixelUm,
        Optional<String> amplifier,
        Optional<String> corrector,
        Optional<String> filter,
        Optional<Boolean> mirrored,
        Optional<String> note) {

    /** A kit known by its name only. */
    public static Kit named(String name) {
        return new Kit(
                name,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
