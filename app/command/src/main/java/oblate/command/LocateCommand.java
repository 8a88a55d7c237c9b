/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.disc.DiscFit;
import oblate.disc.DiscFrame;
import oblate.disc.ErrorBudget;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.SurfacePoint;
import oblate.disc.Trust;
import oblate.report.ReportTable;
import oblate.sky.ApparentDisc;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate locate PICTURE --points FILE.csv}. */
@Command(
        name = "locate",
        mixinStandardHelpOptions = true,
        description = {
            "Turns pixels into longitude and latitude with their errors.",
            "The disc is fitted first, or taken from the archive, or given by hand with --placement."
        },
        footer = {"", "Example:  oblate locate 20310324T210530Z.png --planet jupiter --points points.csv"})
final class LocateCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PICTURE", description = "a picture file, or a picture of the archive")
    private String picture;

    @Option(
            names = "--points",
            required = true,
            paramLabel = "FILE",
            description = "CSV with columns id, x_px, y_px; - for standard input")
    private String points;

    @Option(
            names = "--archive",
            paramLabel = "DIR",
            description = "the picture is in this archive; its current fit is used")
    private Path archive;

    @Option(
            names = "--placement",
            paramLabel = "X,Y,R,ANGLE",
            description = "centre (px), equatorial radius (px) and pole angle (deg) by hand instead of a fit")
    private String placement;

    @Option(
            names = "--pick-sigma",
            paramLabel = "PX",
            defaultValue = "0.5",
            description = "standard error of the points (default: ${DEFAULT-VALUE} px)")
    private double pickSigmaPx;

    @Mixin
    private PictureOptions options;

    @Mixin
    private OutputOptions output;

    LocateCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    /** One point and what is there. */
    private record Located(
            String id,
            PixelPoint pixel,
            ApparentDisc disc,
            Optional<SurfacePoint> point,
            Optional<MarkMeasurer.Measured> measured) {}

    @Override
    public Integer call() {
        List<CsvRows.Row> rows = CsvRows.read(points, console);
        FitCommand.DiscFitResult fitted = fitted();
        DiscFit fit = fitted.fit();
        if (fit.trust() != Trust.TRUSTED) {
            console.say(fitted.subject().name() + ": the fit is doubtful: " + String.join("; ", fit.reasons()));
        }
        DiscFrame frame = new DiscFrame(fitted.subject().disc(), fit.placement());
        MarkMeasurer measurer = new MarkMeasurer();
        List<Located> located = new ArrayList<>();
        int refused = 0;
        for (CsvRows.Row row : rows) {
            try {
                PixelPoint pixel = new PixelPoint(row.number("x_px"), row.number("y_px"));
                located.add(new Located(
                        row.text("id").orElse(String.valueOf(row.row().getRecordNumber())),
                        pixel,
                        frame.disc(),
                        frame.locate(pixel.xPx(), pixel.yPx()),
                        measurer.measure(
                                frame,
                                fit.covariance(),
                                pixel,
                                pickSigmaPx,
                                fitted.subject().timeSigmaS())));
            } catch (ProblemException e) {
                console.say(e.getMessage());
                refused++;
            }
        }
        output.write(table(located), services, console);
        return refused == 0 ? 0 : 1;
    }

    private FitCommand.DiscFitResult fitted() {
        Subjects subjects = new Subjects(services, console);
        if (archive == null) {
            Subject subject = subjects.ofFile(Path.of(picture), options);
            return placement == null
                    ? FitCommand.fitOne(services, subject)
                    : new FitCommand.DiscFitResult(subject, byHand());
        }
        try (Archive open = services.openArchive(archive)) {
            ArchivedPicture entry = open.pictureCalled(picture);
            Subject subject = subjects.ofArchive(open, entry, options.hints());
            DiscFit fit = placement != null
                    ? byHand()
                    : open.currentFit(entry.id())
                            .map(StoredFit::fit)
                            .orElseThrow(() -> new ProblemException(CommandProblem.NO_FIT, entry.name()));
            return new FitCommand.DiscFitResult(subject, fit);
        }
    }

    private DiscFit byHand() {
        String[] parts = placement.split(",");
        try {
            if (parts.length == 4) {
                Placement placed = new Placement(
                        Double.parseDouble(parts[0]),
                        Double.parseDouble(parts[1]),
                        Double.parseDouble(parts[2]),
                        Double.parseDouble(parts[3]),
                        options.hints().mirrored().orElse(false));
                // Nobody told how good a placement by hand is: a quarter of a pixel and of a degree are what a careful
                // hand does.
                return new DiscFit(
                        placed,
                        PlacementCovariance.diagonal(0.25, 0.25, 0.25, 0.25),
                        Trust.TRUSTED,
                        List.of(),
                        "hand",
                        "none",
                        Double.NaN,
                        0,
                        List.of());
            }
        } catch (IllegalArgumentException e) {
            // told below
        }
        throw new UsageException("--placement \"" + placement + "\" must be four numbers x,y,radius,angle");
    }

    private static void part(TableOf<Located> t, String name, String description, Function<ErrorBudget, Double> value) {
        t.number("sigma_" + name + "_deg", "deg", 3, "part of the error: " + description, l -> l.measured()
                .map(m -> value.apply(m.errors()))
                .orElse(null));
    }

    private static ReportTable table(List<Located> points) {
        TableOf<Located> t = new TableOf<>("Places");
        t.fact("longitudes", "planetographic; lon_deg is the IAU system");
        t.text("id", "point", Located::id);
        t.number("x_px", "px", 3, "right", l -> l.pixel().xPx());
        t.number("y_px", "px", 3, "down", l -> l.pixel().yPx());
        t.text("on_disc", "whether the point is on the globe", l -> l.point().isPresent() ? "yes" : "no");
        t.number("lon_deg", "deg", 3, "longitude, IAU system", l -> l.point()
                .map(SurfacePoint::lonIauDeg)
                .orElse(null));
        for (String id : List.of("1", "2", "3")) {
            t.number("lon_sys" + id + "_deg", "deg", 3, "longitude, System " + id, l -> l.point()
                    .flatMap(p -> l.disc().planet().globe().system(id).map(s -> p.lonDeg(l.disc(), s)))
                    .orElse(null));
        }
        t.number("lat_graphic_deg", "deg", 3, "planetographic latitude", l -> l.point()
                .map(SurfacePoint::latGraphicDeg)
                .orElse(null));
        t.number("lat_centric_deg", "deg", 3, "planetocentric latitude", l -> l.point()
                .map(SurfacePoint::latCentricDeg)
                .orElse(null));
        t.number("sigma_lon_deg", "deg", 3, "standard error of longitude", l -> l.measured()
                .map(m -> m.errors().totalLonDeg())
                .orElse(null));
        t.number("sigma_lat_deg", "deg", 3, "standard error of latitude", l -> l.measured()
                .map(m -> m.errors().totalLatDeg())
                .orElse(null));
        part(t, "pick_lon", "placing the point, longitude", e -> e.pickLonDeg());
        part(t, "pick_lat", "placing the point, latitude", e -> e.pickLatDeg());
        part(t, "centre_lon", "the disc's centre, longitude", e -> e.centreLonDeg());
        part(t, "centre_lat", "the disc's centre, latitude", e -> e.centreLatDeg());
        part(t, "scale_lon", "the disc's radius, longitude", e -> e.scaleLonDeg());
        part(t, "scale_lat", "the disc's radius, latitude", e -> e.scaleLatDeg());
        part(t, "angle_lon", "the pole angle, longitude", e -> e.angleLonDeg());
        part(t, "angle_lat", "the pole angle, latitude", e -> e.angleLatDeg());
        part(t, "time_lon", "the picture's time, longitude", e -> e.timeLonDeg());
        t.number("emission_deg", "deg", 2, "angle from the vertical to the line of sight", l -> l.point()
                .map(SurfacePoint::emissionDeg)
                .orElse(null));
        t.number("incidence_deg", "deg", 2, "angle from the vertical to the Sun", l -> l.point()
                .map(SurfacePoint::incidenceDeg)
                .orElse(null));
        t.number("from_meridian_deg", "deg", 3, "longitude minus central meridian", l -> l.point()
                .map(SurfacePoint::fromMeridianDeg)
                .orElse(null));
        return t.rows(points);
    }
}
