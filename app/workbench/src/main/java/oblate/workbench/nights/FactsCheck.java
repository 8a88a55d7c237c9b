/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.sky.PlanetModel;
import oblate.workbench.words.Texts;

/**
 * Whether what was typed can become facts of pictures.
 *
 * @param pictures whose facts are to be corrected
 * @param sites names of the sites the archive knows
 * @param planets the planets there are
 */
record FactsCheck(List<ArchivedPicture> pictures, List<String> sites, List<PlanetModel> planets) {
    private static final Texts TEXTS = Texts.of(FactsCheck.class);

    /** Why what was typed cannot be taken, one sentence. */
    Optional<String> fault(FactField field, String value) {
        if (field == FactField.PLANET && !value.isEmpty() && planetId(value).isEmpty()) {
            return Optional.of(TEXTS.text("facts.no.planet", value));
        }
        if (field == FactField.SITE && !value.isEmpty() && !sites.contains(value)) {
            return Optional.of(TEXTS.text("facts.no.site", value));
        }
        boolean undated = pictures.stream().anyMatch(p -> p.time().isEmpty());
        if (field == FactField.TIME
                && pictures.size() > 1
                && TimeEntry.of(value).filter(TimeEntry::isWhole).isPresent()) {
            return Optional.of(TEXTS.text("facts.one.time"));
        }
        boolean part = TimeEntry.of(value).filter(e -> !e.isWhole()).isPresent();
        if (field == FactField.TIME && undated && part) {
            return Optional.of(TEXTS.text("facts.whole.time"));
        }
        if (field == FactField.LENGTH && undated) {
            return Optional.of(TEXTS.text("facts.time.first"));
        }
        return field.fault(value);
    }

    /** The planet meant by a name or an id. */
    Optional<String> planetId(String typed) {
        return planets.stream()
                .filter(p -> p.label().equalsIgnoreCase(typed) || p.id().equalsIgnoreCase(typed))
                .map(PlanetModel::id)
                .findFirst();
    }
}
