/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Site;
import oblate.image.CaptureTime;
import oblate.sky.GroundSite;

/** Pictures of an archive as far as their times and places go. Immutable. */
public final class Shots {
    private final Map<String, ShotSite> sites;

    /** @param archive an open archive */
    public Shots(Archive archive) {
        sites = archive.sites().stream()
                .collect(Collectors.toMap(
                        Site::name, s -> new ShotSite(s.name(), new GroundSite(s.latDeg(), s.lonDeg(), s.heightM()))));
    }

    /** A picture as far as its time goes; empty for an undated one. */
    public Optional<Shot> of(ArchivedPicture picture) {
        return picture.time().map(time -> of(picture, time));
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
