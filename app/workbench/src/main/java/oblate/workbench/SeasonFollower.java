/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.sky.PlanetModel;

/** Keeps the ribbon at what the archive holds, and says which planet it is about. On the event thread only. */
final class SeasonFollower {
    private static final Duration MARGIN = Duration.ofDays(200);
    private final WorkbenchContext context;
    private final Shelf shelf;
    private final Selection selection;
    private final Background background;
    private final SeasonRibbon ribbon;
    private String seasonOf = "";

    SeasonFollower(
            WorkbenchContext context, Shelf shelf, Selection selection, Background background, SeasonRibbon ribbon) {
        this.context = context;
        this.shelf = shelf;
        this.selection = selection;
        this.background = background;
        this.ribbon = ribbon;
    }

    /** Shows the pictures the shelf has now, and what the sky does meanwhile once it has been computed. */
    void follow() {
        ribbon.show(shelf);
        if (selection.pictureId().isEmpty() && !shelf.pictures().isEmpty()) {
            // At once, before the pictures are shown: later the wall would go to it, away from the newest night.
            selection.choosePicture(shelf.pictures().get(0).id());
        }
        List<Instant> times = shelf.pictures().stream()
                .flatMap(p -> p.time().stream())
                .map(CaptureTime::midUtc)
                .toList();
        if (times.isEmpty()) {
            return;
        }
        PlanetModel planet = planet();
        Instant first = times.get(0).minus(MARGIN);
        Instant last = times.get(times.size() - 1).plus(MARGIN);
        String key = planet.id() + first + last;
        if (!key.equals(seasonOf)) {
            seasonOf = key;
            background.soon(() -> background.aside(
                    () -> Season.of(context.sky(), planet, first, last), found -> showIfStill(key, found)));
        }
    }

    private void showIfStill(String key, Season found) {
        if (key.equals(seasonOf)) {
            ribbon.show(found);
        }
    }

    /** The planet of the chosen picture, else the one with most pictures. */
    PlanetModel planet() {
        Optional<String> ofPicture =
                selection.pictureId().flatMap(shelf::picture).flatMap(ArchivedPicture::planetId);
        String id = ofPicture.orElseGet(this::mostFrequentPlanet);
        return context.planets().stream()
                .filter(p -> p.id().equals(id))
                .findFirst()
                .orElseGet(() -> context.planets().get(0));
    }

    private String mostFrequentPlanet() {
        return shelf.pictures().stream()
                .flatMap(p -> p.planetId().stream())
                .collect(Collectors.groupingBy(p -> p, Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("jupiter");
    }
}
