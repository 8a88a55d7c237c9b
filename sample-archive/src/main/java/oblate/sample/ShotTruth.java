/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The truth about shots: where the disc lies in each, and where in it features, moons and shadows do. */
final class ShotTruth {
    private static final double LAST_EMISSION_DEG = 70;
    private static final double LAST_INCIDENCE_DEG = 84;

    private final List<Feature> features;

    ShotTruth(List<Feature> features) {
        this.features = features;
    }

    SampleTruth of(Instant epoch, List<Shot> shots) {
        List<SampleTruth.Picture> pictures = new ArrayList<>();
        List<SampleTruth.Mark> marks = new ArrayList<>();
        for (Shot shot : shots) {
            pictures.add(picture(shot));
            marks.addAll(marks(shot));
        }
        return new SampleTruth(epoch, pictures, features, marks);
    }

    private static SampleTruth.Picture picture(Shot s) {
        Kit.Optics optics = s.kit().optics();
        return new SampleTruth.Picture(
                s.file(),
                "jupiter",
                s.mid(),
                s.stated(),
                s.carrier(),
                s.plan().clockErrorS(),
                wrongClock(s.plan().clockErrorS()),
                s.kit().id(),
                s.evening(),
                s.plan().seeing(),
                s.fileKind(),
                optics.widthPx(),
                optics.heightPx(),
                s.channels(),
                s.frame().cxPx(),
                s.frame().cyPx(),
                s.frame().rePx(),
                s.frame().poleAngleDeg(),
                s.frame().mirrored(),
                s.view().cmDeg().get(0),
                s.view().cmDeg().get(1),
                s.view().cmDeg().get(2),
                s.subEarthLatGraphicDeg(),
                s.kit().captureS(),
                s.seeingArcsec(),
                s.blurPx(),
                s.redShiftXPx(),
                s.redShiftYPx());
    }

    private static String wrongClock(int errorS) {
        if (errorS == 0) {
            return "";
        }
        if (errorS % 3600 == 0) {
            return "zone: the clock stood " + Math.abs(errorS / 3600) + " h " + (errorS > 0 ? "ahead of" : "behind")
                    + " UTC";
        }
        return "not set: the clock was " + Math.abs(errorS) + " s " + (errorS > 0 ? "fast" : "slow");
    }

    private List<SampleTruth.Mark> marks(Shot shot) {
        List<SampleTruth.Mark> marks = new ArrayList<>();
        for (Feature f : features) {
            double lon = f.lonAtDeg(shot.day());
            GlobeView.Seen seen = shot.view().seen(lon, f.systemIndex(), f.latGraphicDeg());
            if (seen.emissionDeg() > LAST_EMISSION_DEG || seen.incidenceDeg() > LAST_INCIDENCE_DEG) {
                continue;
            }
            double west = lon - shot.view().cmDeg().get(f.systemIndex());
            marks.add(new SampleTruth.Mark(
                    shot.file(),
                    f.name(),
                    f.kind(),
                    shot.frame().xPx(seen.x(), seen.y()),
                    shot.frame().yPx(seen.x(), seen.y()),
                    Optional.of(place(shot.view(), west, f.latGraphicDeg(), seen.emissionDeg()))));
        }
        for (MoonSpot moon : shot.moons()) {
            addMoon(shot, moon, marks);
        }
        return marks;
    }

    private static void addMoon(Shot shot, MoonSpot moon, List<SampleTruth.Mark> marks) {
        GlobeView view = shot.view();
        boolean before = new Ray(view).cast(moon.x(), moon.y());
        double x = shot.frame().xPx(moon.x(), moon.y());
        double y = shot.frame().yPx(moon.x(), moon.y());
        boolean hidden = before && moon.z() < 0;
        if (moon.lit() && !hidden && inFrame(shot, x, y)) {
            String kind = before ? "moon in transit" : "moon";
            marks.add(new SampleTruth.Mark(shot.file(), moon.name(), kind, x, y, Optional.empty()));
        }
        moon.shadow().ifPresent(s -> {
            Ray ray = new Ray(view);
            if (ray.cast(s.x(), s.y())) {
                double emission = Math.toDegrees(Math.acos(Math.min(1, ray.mu)));
                marks.add(new SampleTruth.Mark(
                        shot.file(),
                        moon.name() + " shadow",
                        "moon shadow",
                        shot.frame().xPx(s.x(), s.y()),
                        shot.frame().yPx(s.x(), s.y()),
                        Optional.of(place(view, -ray.eastDeg, ray.latGraphicDeg, emission))));
            }
        });
    }

    private static boolean inFrame(Shot shot, double x, double y) {
        Kit.Optics optics = shot.kit().optics();
        return x > 0 && y > 0 && x < optics.widthPx() - 1 && y < optics.heightPx() - 1;
    }

    private static SampleTruth.Place place(GlobeView view, double westOfCmDeg, double latDeg, double emissionDeg) {
        List<Double> cm = view.cmDeg();
        return new SampleTruth.Place(
                turn(cm.get(0) + westOfCmDeg),
                turn(cm.get(1) + westOfCmDeg),
                turn(cm.get(2) + westOfCmDeg),
                latDeg,
                emissionDeg);
    }

    private static double turn(double deg) {
        double turned = deg % 360;
        return turned < 0 ? turned + 360 : turned;
    }
}
