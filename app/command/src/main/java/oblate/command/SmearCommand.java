/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSmear;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate smear PLANET --seconds S}. */
@Command(
        name = "smear",
        mixinStandardHelpOptions = true,
        description = {
            "How far a planet's rotation smears a capture in the middle of the disc, and how long a capture may last.",
            "Away from the middle it is less. A symmetric smear leaves the middle of a feature where it is at the middle of the capture."
        },
        footer = {
            "",
            "Examples:  oblate smear jupiter --seconds 120 --scale 0.1 --at 2024-12-07T20:00:00Z",
            "           oblate smear mars --scale 0.12 --max-px 1"
        })
final class SmearCommand implements Callable<Integer> {
    private static final double LONGEST_S = 86400;

    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "mercury … neptune")
    private String planet;

    @Option(names = "--seconds", paramLabel = "S", description = "length of the capture, up to a day")
    private Double seconds;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            arity = "1..*",
            description = "middle of the capture, ISO 8601 with Z; left out, now")
    private List<String> times = new ArrayList<>();

    @Option(names = "--scale", paramLabel = "ARCSEC", description = "pixel scale, arcsec per pixel")
    private Double scaleArcsecPerPx;

    @Option(
            names = "--lat",
            paramLabel = "DEG",
            description = "planetographic latitude; left out, that of the middle of the disc")
    private Double latDeg;

    @Option(
            names = "--system",
            paramLabel = "SYSTEM",
            description = "1, 2, 3 or iau; left out, the one that is customary at the latitude")
    private String system;

    @Option(names = "--max-px", paramLabel = "PX", description = "how long for a smear of so many pixels")
    private Double maxPx;

    @Option(names = "--max-arcsec", paramLabel = "ARCSEC", description = "how long for a smear of so many arcsec")
    private Double maxArcsec;

    @Option(names = "--max-deg", paramLabel = "DEG", description = "how long for a turn of so many degrees")
    private Double maxDeg;

    @Mixin
    private OutputOptions output;

    SmearCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        PlanetModel model = services.planet(planet);
        checkNumbers();
        Sky sky = services.sky();
        List<RotationSmear> rows = new ArrayList<>();
        int status = 0;
        List<String> wanted =
                times.isEmpty() ? List.of(UtcTime.of(services.clock().instant()).iso(0)) : times;
        for (String text : wanted) {
            try {
                UtcTime middle = UtcTime.parse(text, sky.leapSeconds());
                double lat = latDeg == null ? sky.disc(model, middle).subEarth().latGraphicDeg() : latDeg;
                RotationSystem of = system == null ? model.customarySystem(lat) : PlanetChoice.system(model, system);
                rows.add(RotationSmear.at(sky, model, of, middle, lat));
            } catch (ProblemException e) {
                console.say(e.getMessage());
                status = 1;
            }
        }
        if (!rows.isEmpty()) {
            output.write(table(sky).rows(rows), services, console);
        }
        return status;
    }

    private void checkNumbers() {
        boolean hasLimit = maxPx != null || maxArcsec != null || maxDeg != null;
        if (seconds == null && !hasLimit) {
            throw new UsageException(
                    "say how long the capture is with --seconds, or what smear is bearable with --max-px");
        }
        checkRange("--seconds", seconds, LONGEST_S, "s, up to a day");
        checkRange("--scale", scaleArcsecPerPx, 100, "arcsec per pixel, up to 100");
        checkRange("--max-px", maxPx, 1e4, "pixels, up to 10000");
        checkRange("--max-arcsec", maxArcsec, 100, "arcsec, up to 100");
        checkRange("--max-deg", maxDeg, 180, "deg, up to 180");
        if (latDeg != null && !(Math.abs(latDeg) <= 90)) {
            throw new UsageException("--lat " + latDeg + " is not a latitude from -90 to 90 deg");
        }
        if (maxPx != null && scaleArcsecPerPx == null) {
            throw new UsageException("--max-px needs the pixel scale; add --scale ARCSEC");
        }
    }

    private static void checkRange(String option, Double value, double greatest, String unit) {
        if (value != null && !(value > 0 && value <= greatest)) {
            throw new UsageException(option + " " + value + " is not a number above 0 (" + unit + ")");
        }
    }

    private OptionalDouble longestS(RotationSmear smear) {
        double longest = Double.POSITIVE_INFINITY;
        if (maxPx != null) {
            longest = Math.min(longest, smear.secondsForArcsec(maxPx * scaleArcsecPerPx));
        }
        if (maxArcsec != null) {
            longest = Math.min(longest, smear.secondsForArcsec(maxArcsec));
        }
        if (maxDeg != null) {
            longest = Math.min(longest, smear.secondsForDeg(maxDeg));
        }
        return Double.isFinite(longest) ? OptionalDouble.of(longest) : OptionalDouble.empty();
    }

    private TableOf<RotationSmear> table(Sky sky) {
        TableOf<RotationSmear> t = new TableOf<>("Smear by rotation");
        t.fact("point", "crosses the central meridian in the middle of the capture; winds left out");
        t.fact("motion_pa_deg", "position angle toward which it moves, from north through east");
        t.text("time_utc", "middle of the capture", r -> r.disc().time().iso());
        t.text("planet", "planet", r -> r.disc().planet().id());
        t.text("system", "rotation system", r -> r.system().id());
        t.number("lat_deg", "deg", 2, "planetographic latitude", RotationSmear::latGraphicDeg);
        t.number("rate_deg_per_min", "deg/min", 6, "rotation as seen from the Earth", RotationSmear::degPerMin);
        t.number("motion_pa_deg", "deg", 2, "position angle of the motion", RotationSmear::motionPaDeg);
        if (seconds != null) {
            t.number("seconds", "s", 1, "length of the capture", r -> seconds);
            t.number("smear_deg", "deg", 4, "turn in that time", r -> r.turnedDeg(seconds));
            t.number("smear_km", "km", 1, "along the surface", r -> r.lengthKm(seconds));
            t.number("smear_arcsec", "arcsec", 4, "across the picture", r -> r.lengthArcsec(seconds));
            if (scaleArcsecPerPx != null) {
                t.number("smear_px", "px", 2, "across the picture", r -> r.lengthArcsec(seconds) / scaleArcsecPerPx);
            }
        }
        if (maxPx != null || maxArcsec != null || maxDeg != null) {
            t.number("longest_s", "s", 1, "longest capture within the limit", r -> {
                OptionalDouble longest = longestS(r);
                return longest.isPresent() ? longest.getAsDouble() : null;
            });
        }
        t.text("ephemeris", "planetary ephemeris", r -> r.disc().ephemeris());
        t.text("leap_seconds", "table of leap seconds used", r -> sky.leapSeconds()
                .saidOf(r.disc().time()));
        return t;
    }
}
