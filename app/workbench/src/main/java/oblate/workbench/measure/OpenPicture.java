/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Kit;
import oblate.archive.MarkSearch;
import oblate.archive.PictureSearch;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.DiscFrame;
import oblate.disc.FitHints;
import oblate.disc.Trust;
import oblate.image.CaptureTime;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.workbench.WorkbenchContext;

/**
 * A picture on the desk with all that is known about it. Immutable.
 *
 * @param picture its entry
 * @param pixels what it shows
 * @param disc what the sky says is in it; empty without planet or time
 * @param fit its current fit
 * @param marks its current marks
 * @param expected features expected on it
 * @param moons where the moons are then
 * @param hints what its kit and the night's other pictures say about its orientation
 */
record OpenPicture(
        ArchivedPicture picture,
        PixelGrid pixels,
        Optional<ApparentDisc> disc,
        Optional<StoredFit> fit,
        List<StoredMark> marks,
        List<Expected> expected,
        MoonSpot.Places moons,
        FitHints hints) {
    /** Pole angles of one run hold to about this (deg): cameras sag and fields turn. */
    private static final double RUN_SIGMA_DEG = 1.0;

    static OpenPicture read(WorkbenchContext context, ArchivedPicture picture) {
        Archive archive = context.archive();
        PixelGrid pixels = context.reader().decode(archive.fileOf(picture)).pixels();
        Optional<PlanetModel> planet = context.planets().stream()
                .filter(p -> picture.planetId().equals(Optional.of(p.id())))
                .findFirst();
        Optional<ApparentDisc> disc =
                planet.flatMap(p -> picture.time().map(t -> context.sky().disc(p, t.midUtc())));
        MoonSpot.Places moons =
                disc.map(d -> MoonSpot.Places.of(context.sky(), d)).orElseGet(MoonSpot.Places::none);
        FitHints hints = hints(context, picture);
        return new OpenPicture(picture, pixels, disc, Optional.empty(), List.of(), List.of(), moons, hints)
                .readAgain(archive);
    }

    /** With fit, marks and expectations read afresh. */
    OpenPicture readAgain(Archive archive) {
        List<Expected> fresh = disc.flatMap(d -> picture.time()
                        .map(CaptureTime::midUtc)
                        .map(time -> Expectations.of(archive, d.planet(), d, time)))
                .orElse(List.of());
        return new OpenPicture(
                picture,
                pixels,
                disc,
                archive.currentFit(picture.id()),
                archive.marks(MarkSearch.ofPicture(picture.id())),
                fresh,
                moons,
                hints);
    }

    /** Where moons and shadows are expected; empty before the disc is fitted. */
    List<MoonSpot> moonSpots() {
        return frame().map(f -> MoonSpot.of(moons, f, fit.orElseThrow(), timeSigmaS()))
                .orElse(List.of());
    }

    /** Whether a mark on it was measured with another fit than the current one. */
    boolean hasStaleMarks() {
        return fit.isPresent()
                && marks.stream()
                        .anyMatch(m -> m.mark().point().isPresent()
                                && !m.mark().fitId().equals(fit.map(StoredFit::id)));
    }

    /** Samples in memory. */
    long samples() {
        return (long) pixels.widthPx() * pixels.heightPx() * pixels.channels();
    }

    private static FitHints hints(WorkbenchContext context, ArchivedPicture picture) {
        Optional<Boolean> mirrored = picture.kit().flatMap(name -> context.archive().kits().stream()
                .filter(k -> k.name().equals(name))
                .findFirst()
                .flatMap(Kit::mirrored));
        Optional<FitHints.Angle> angle = ofRun(context.archive(), picture)
                .map(f -> new FitHints.Angle(
                        f.fit().placement().poleAngleDeg(),
                        Math.hypot(RUN_SIGMA_DEG, f.fit().covariance().sigmaPoleAngleDeg())));
        return new FitHints(angle, mirrored, Optional.empty());
    }

    /** The trusted fit nearest in time of the same night, planet and kit. */
    private static Optional<StoredFit> ofRun(Archive archive, ArchivedPicture picture) {
        if (picture.night().isEmpty()
                || picture.time().isEmpty()
                || picture.kit().isEmpty()) {
            return Optional.empty();
        }
        PictureSearch search = PictureSearch.all();
        PictureSearch ofNight = new PictureSearch(
                picture.planetId(),
                picture.night(),
                search.from(),
                search.to(),
                search.meridian(),
                search.observer(),
                picture.kit(),
                search.filter(),
                search.words(),
                Optional.of(true),
                search.marked(),
                0);
        long mid = picture.time().get().midUtc().toEpochMilli();
        return archive.pictures(ofNight).stream()
                .filter(p -> p.id() != picture.id() && p.time().isPresent())
                .sorted(Comparator.comparingLong(
                        p -> Math.abs(p.time().orElseThrow().midUtc().toEpochMilli() - mid)))
                .limit(5)
                .flatMap(p -> archive.currentFit(p.id()).stream())
                .filter(f -> f.fit().trust() == Trust.TRUSTED)
                .findFirst();
    }

    Optional<DiscFrame> frame() {
        return disc.flatMap(d -> fit.map(f -> new DiscFrame(d, f.fit().placement())));
    }

    /** Standard error of its time (s). */
    double timeSigmaS() {
        return picture.time().map(CaptureTime::uncertaintyS).orElse(0.0);
    }
}
