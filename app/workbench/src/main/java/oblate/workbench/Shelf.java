/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.archive.PictureSearch;

/**
 * The archive's pictures as last read, in order of time. On the event thread only; reading happens in the background.
 *
 * <p>Whoever changes the archive calls {@link #refresh()}; everyone else listens.
 */
public final class Shelf {
    private final Archive archive;
    private final Background background;
    private final Listeners listeners = new Listeners();
    private List<ArchivedPicture> pictures = List.of();
    private Map<Long, ArchivedPicture> byId = Map.of();
    private Map<Long, FitSummary> fits = Map.of();
    private Set<Long> reported = Set.of();
    private boolean read;

    /** What one reading of the archive brings. */
    private record Reading(List<ArchivedPicture> pictures, List<FitSummary> fits, Set<Long> reported) {}

    Shelf(Archive archive, Background background) {
        this.archive = archive;
        this.background = background;
    }

    /** All pictures, in order of time, undated ones last; unmodifiable. */
    public List<ArchivedPicture> pictures() {
        return pictures;
    }

    /** Whether the archive has been read at least once. */
    public boolean isRead() {
        return read;
    }

    /** One picture by number. */
    public Optional<ArchivedPicture> picture(long id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** The current fit of a picture, in short. */
    public Optional<FitSummary> fit(long pictureId) {
        return Optional.ofNullable(fits.get(pictureId));
    }

    /** Whether a picture's results went into a report that was sent. */
    public boolean isReported(long pictureId) {
        return reported.contains(pictureId);
    }

    /** Pictures of one night and planet, in order of time. */
    public List<ArchivedPicture> ofNight(LocalDate night, Optional<String> planetId) {
        return pictures.stream()
                .filter(p ->
                        p.night().equals(Optional.of(night)) && p.planetId().equals(planetId))
                .toList();
    }

    /** Reads the archive again in the background, then tells the listeners. */
    public void refresh() {
        background.quietly(
                () -> new Reading(
                        archive.pictures(PictureSearch.all()), archive.fitSummaries(), archive.reportedPictures()),
                this::show);
    }

    private void show(Reading reading) {
        pictures = List.copyOf(reading.pictures());
        byId = new HashMap<>();
        pictures.forEach(p -> byId.put(p.id(), p));
        fits = new HashMap<>();
        reading.fits().forEach(f -> fits.put(f.pictureId(), f));
        reported = Set.copyOf(reading.reported());
        read = true;
        listeners.tell();
    }

    /** Called after every reading. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    /** Forgets the listeners of a jar that was switched off. */
    void forget(Predicate<Runnable> its) {
        listeners.forget(its);
    }
}
