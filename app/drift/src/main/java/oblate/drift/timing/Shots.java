/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.SeenState;
import oblate.archive.Site;
import oblate.image.CaptureTime;
import oblate.sky.GroundSite;

/** Pictures and looks of an archive as far as their times and places go. Immutable. */
public final class Shots {
    private final Map<String, ShotSite> sites;

    /** @param archive an open archive */
    public Shots(Archive archive) {
        Map<String, ShotSite> found = new HashMap<>();
        for (Site site : archive.sites()) {
            place(site).ifPresent(place -> found.put(site.name(), place));
        }
        sites = Map.copyOf(found);
    }

    /** Where a site is; empty for one whose figures are no place on the ground. */
    private static Optional<ShotSite> place(Site site) {
        try {
            GroundSite ground = new GroundSite(site.latDeg(), site.lonDeg(), site.heightM());
            return Optional.of(new ShotSite(site.name(), ground));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** A picture as far as its time goes; empty for an undated one. */
    public Optional<Shot> of(ArchivedPicture picture) {
        return picture.time().map(time -> of(picture, time));
    }

    /** A look as far as its time goes. */
    Shot of(SeenState.Look look) {
        return Shot.look(
                look.utc().toString(),
                look.utc(),
                look.sigmaS(),
                look.observer().orElse(""),
                look.site().map(sites::get));
    }

    /** The place a site of the archive is; empty for a name it has not. */
    public Optional<ShotSite> site(String name) {
        return Optional.ofNullable(sites.get(name));
    }

    private Shot of(ArchivedPicture picture, CaptureTime time) {
        String observer = picture.observer().orElse("");
        Optional<ShotSite> site = picture.site().map(sites::get);
        return picture.night()
                .map(night -> new Shot(
                        picture.name(),
                        time.midUtc(),
                        time.uncertaintyS(),
                        time.exposureS().orElse(0),
                        night,
                        observer,
                        site))
                .orElseGet(() -> Shot.look(picture.name(), time.midUtc(), time.uncertaintyS(), observer, site));
    }
}
