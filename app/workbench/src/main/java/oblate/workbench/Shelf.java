/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
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
    private boolean read;

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

    /** Pictures of one night and planet, in order of time. */
    public List<ArchivedPicture> ofNight(LocalDate night, Optional<String> planetId) {
        return pictures.stream()
                .filter(p ->
                        p.night().equals(Optional.of(night)) && p.planetId().equals(planetId))
                .toList();
    }

    /** Reads the archive again in the background, then tells the listeners. */
    public void refresh() {
        background.quietly(() -> archive.pictures(PictureSearch.all()), this::show);
    }

    private void show(List<ArchivedPicture> found) {
        pictures = List.copyOf(found);
        byId = new HashMap<>();
        pictures.forEach(p -> byId.put(p.id(), p));
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
