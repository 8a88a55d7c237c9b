/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Optional;
import oblate.archive.Rating;
import picocli.CommandLine.Option;

/** What a person says about an observation: where, who, with what, and how the air was. Parts not said are empty; parts said to be nothing are blank. */
final class ObservationOptions {
    @Option(names = "--site", paramLabel = "NAME", description = "observing site, as added with: oblate site add")
    private String site;

    @Option(names = "--observer", paramLabel = "NAME", description = "who observed")
    private String observer;

    @Option(names = "--kit", paramLabel = "NAME", description = "the gear, by the name of its kit")
    private String kit;

    @Option(names = "--filter", paramLabel = "WORDS", description = "filters, in order")
    private String filter;

    @Option(names = "--seeing", paramLabel = "VALUE", description = "seeing, as estimated")
    private String seeing;

    @Option(
            names = "--seeing-scale",
            paramLabel = "NAME",
            defaultValue = "Pickering",
            description = "its scale: Pickering, Antoniadi, … (default: ${DEFAULT-VALUE})")
    private String seeingScale;

    @Option(names = "--transparency", paramLabel = "VALUE", description = "transparency, as estimated")
    private String transparency;

    @Option(
            names = "--transparency-scale",
            paramLabel = "NAME",
            defaultValue = "limiting magnitude",
            description = "its scale (default: ${DEFAULT-VALUE})")
    private String transparencyScale;

    @Option(names = "--notes", paramLabel = "WORDS", description = "anything else")
    private String notes;

    Optional<String> site() {
        return Optional.ofNullable(site);
    }

    Optional<String> observer() {
        return Optional.ofNullable(observer);
    }

    Optional<String> kit() {
        return Optional.ofNullable(kit);
    }

    Optional<String> filter() {
        return Optional.ofNullable(filter);
    }

    Optional<Rating> seeing() {
        return Optional.ofNullable(seeing).map(value -> new Rating(value, seeingScale));
    }

    Optional<Rating> transparency() {
        return Optional.ofNullable(transparency).map(value -> new Rating(value, transparencyScale));
    }

    Optional<String> notes() {
        return Optional.ofNullable(notes);
    }
}
