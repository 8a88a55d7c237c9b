/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.Optional;

/**
 * Something followed over many pictures.
 *
 * @param id number in the catalog
 * @param planetId planet
 * @param name unique on its planet
 * @param kind plain words: "oval", "spot", "bar", "moon", "shadow" …
 * @param tone "bright", "dark" or empty
 * @param systemId system its longitudes are usually given in; empty for the planet's custom at its latitude
 * @param note free words
 */
public record Feature(
        long id,
        String planetId,
        String name,
        String kind,
        Optional<String> tone,
        Optional<String> systemId,
        Optional<String> note) {}
