/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.SurfacePoint;
import oblate.sky.ApparentDisc;
import oblate.sky.Region;
import oblate.sky.RotationSystem;
import oblate.workbench.look.Figures;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/**
 * What the pointer's place says, in words and figures.
 *
 * @param text the line under the canvas
 * @param trusted false where it is greyed
 */
record Readout(String text, boolean trusted) {
    private static final Texts TEXTS = Texts.of(Readout.class);
    /** Length of a planet's day is asked from the system; a feature crosses this many degrees in a minute. */
    private static double degPerMinute(RotationSystem system) {
        return Math.abs(system.degPerDay()) / 1440;
    }

    /** Reads a place of a picture. */
    static Readout at(OpenPicture open, PixelPoint pixel) {
        if (open.disc().isEmpty()) {
            return new Readout(TEXTS.text("readout.no.facts"), false);
        }
        if (open.frame().isEmpty()) {
            return new Readout(TEXTS.text("readout.no.fit"), false);
        }
        DiscFrame frame = open.frame().get();
        Optional<SurfacePoint> point = frame.locate(pixel.xPx(), pixel.yPx());
        if (point.isEmpty()) {
            return new Readout(TEXTS.text("readout.beside"), false);
        }
        Optional<MarkMeasurer.Measured> measured = new MarkMeasurer()
                .measure(
                        frame,
                        open.fit().orElseThrow().fit().covariance(),
                        pixel,
                        MarkDesk.PICK_SIGMA_PX,
                        open.timeSigmaS());
        String place = place(frame.disc(), point.get(), measured);
        if (measured.isEmpty()) {
            return new Readout(
                    place + "    "
                            + TEXTS.text(
                                    "readout.slantwise",
                                    Figures.fixed(point.get().emissionDeg(), 0),
                                    Figures.fixed(MarkMeasurer.LARGEST_EMISSION_DEG, 0)),
                    false);
        }
        if (point.get().incidenceDeg() > 90) {
            return new Readout(place + "    " + TEXTS.text("readout.night"), false);
        }
        return new Readout(place, true);
    }

    private static String place(ApparentDisc disc, SurfacePoint point, Optional<MarkMeasurer.Measured> measured) {
        RotationSystem custom = disc.planet().customarySystem(point.latGraphicDeg());
        List<String> parts = new ArrayList<>();
        String first = SystemLabel.brief(custom) + " "
                + measured.map(m -> Figures.longitude(
                                point.lonDeg(disc, custom), m.errors().totalLonDeg()))
                        .orElseGet(() -> Figures.longitude(point.lonDeg(disc, custom)));
        parts.add(first);
        for (RotationSystem system : disc.planet().globe().systems()) {
            if (!system.equals(custom)) {
                parts.add(SystemLabel.brief(system) + " " + Figures.longitude(point.lonDeg(disc, system)));
            }
        }
        parts.add(TEXTS.text(
                "readout.latitude",
                measured.map(m -> Figures.latitudeGraphic(
                                point.latGraphicDeg(), m.errors().totalLatDeg()))
                        .orElseGet(() -> TEXTS.text("graphic", Figures.fixed(point.latGraphicDeg(), 1)))));
        parts.add(fromMeridian(point.fromMeridianDeg(), custom));
        disc.planet().regions().stream()
                .filter(r -> point.latGraphicDeg() >= r.southLatGraphicDeg()
                        && point.latGraphicDeg() < r.northLatGraphicDeg())
                .map(Region::shortName)
                .findFirst()
                .ifPresent(parts::add);
        return String.join("    ", parts);
    }

    /** E.g. {@code 12.1° past the meridian}: what has the larger longitude is still to come. */
    private static String fromMeridian(double fromMeridianDeg, RotationSystem system) {
        String degrees = Figures.fixed(Math.abs(fromMeridianDeg), 1);
        if (Math.abs(fromMeridianDeg) < 0.05) {
            return TEXTS.text("readout.meridian");
        }
        String minutes = Figures.fixed(Math.abs(fromMeridianDeg) / degPerMinute(system), 0);
        return TEXTS.text(fromMeridianDeg > 0 ? "readout.before" : "readout.past", degrees, minutes);
    }
}
