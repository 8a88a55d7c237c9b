package oblate.sample;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** Works out every picture of a scenario: time, name, orientation, place in the frame, seeing. Used by one thread. */
final class ShotList {
    private static final DateTimeFormatter BASIC =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final DateTimeFormatter BASIC_MINUTE =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmm", Locale.ROOT).withZone(ZoneOffset.UTC);
    /** Blur the air adds by Antoniadi's classes I…V (arcsec, sigma); lifelike, not measured. */
    private static final double[] SEEING_ARCSEC = {0.10, 0.17, 0.26, 0.38, 0.55};
    /** Red to green over tan(zenith distance), arcsec, in round figures. */
    private static final double RED_GREEN_SPREAD_ARCSEC = 0.37;

    /** Farther from the planet's centre than this no frame reaches (equatorial radii). */
    private static final double MOON_REACH_RADII = 2.5;

    private final Scenario scenario;
    private final Sky sky;
    private final PlanetModel planet;
    private final Map<String, Integer> counters = new HashMap<>();
    private final List<Shot> shots = new ArrayList<>();

    private ShotList(Scenario scenario, Sky sky, PlanetModel planet) {
        this.scenario = scenario;
        this.sky = sky;
        this.planet = planet;
    }

    static List<Shot> of(Scenario scenario, Sky sky, PlanetModel planet) {
        ShotList list = new ShotList(scenario, sky, planet);
        for (int i = 0; i < scenario.nights().size(); i++) {
            list.addNight(scenario.nights().get(i));
        }
        return List.copyOf(list.shots);
    }

    private void addNight(NightPlan plan) {
        // The camera's seat is the same for all series of an evening with one kit.
        Dice seat = new Dice(scenario.seed(), plan.evening().toEpochDay() * 31 + plan.kitId().hashCode());
        double turn = seat.between(-1.5, 1.5);
        double scale = seat.between(0.997, 1.003);
        for (int i = 0; i < plan.count(); i++) {
            Instant mid = plan.firstMid().plusMillis(Math.round(i * plan.stepS() * 1000));
            shots.add(shot(plan, mid, turn, scale));
        }
    }

    private Shot shot(NightPlan plan, Instant mid, double turnDeg, double scale) {
        Kit kit = scenario.kit(plan.kitId());
        FileKind kind = plan.fileKind().orElse(kit.fileKind());
        TimeCarrier carrier = plan.carrier().orElse(kit.carrier());
        Instant shown = mid.plusSeconds(plan.clockErrorS());
        ApparentDisc disc = sky.disc(planet, mid);
        LocalSky local = LocalSky.at(scenario.site(kit.siteId()), mid, disc.raApparentDeg(), disc.decApparentDeg());
        Kit.Optics optics = kit.optics();
        Dice dice = new Dice(scenario.seed(), 100_003L * plan.kitId().hashCode() + mid.getEpochSecond());

        double sense = optics.mirrored() ? -1 : 1;
        double seat = optics.turnDeg() + turnDeg + dice.between(-0.08, 0.08);
        double north = optics.altazimuth() ? seat - sense * local.zenithPaDeg() : seat;
        double up = north + sense * local.zenithPaDeg();
        double arcsecPerPx = optics.scaleArcsecPerPx() * scale * dice.between(0.9997, 1.0003);
        CameraFrame frame = new CameraFrame(
                (optics.widthPx() - 1) / 2.0 + dice.between(-7, 7),
                (optics.heightPx() - 1) / 2.0 + dice.between(-6, 6),
                disc.diameterEquatorialArcsec() / 2 / arcsecPerPx,
                halfTurn(north + sense * disc.northPolePaDeg()),
                optics.mirrored());

        double seeing = Math.hypot(
                kit.processing().seeingFloorArcsec(), SEEING_ARCSEC[plan.seeing() - 1] * dice.between(0.8, 1.25));
        double spreadPx = RED_GREEN_SPREAD_ARCSEC / Math.tan(Math.toRadians(local.altitudeDeg()))
                * kit.processing().dispersionLeft()
                / arcsecPerPx;
        boolean grey = !kit.colour() || kind == FileKind.FITS_16;
        double toRed = Math.toRadians(up + 180);
        return new Shot(
                shots.size(),
                name(plan, kit, kind, carrier, shown),
                plan.evening(),
                kit,
                plan,
                mid,
                carrier == TimeCarrier.NONE ? Optional.empty() : Optional.of(shown),
                kind,
                carrier,
                GlobeView.of(disc),
                moons(disc),
                disc.subEarth().latGraphicDeg(),
                frame,
                (mid.toEpochMilli() - scenario.epoch().toEpochMilli()) / 86.4e6,
                seeing,
                seeing / arcsecPerPx,
                grey ? 0 : -Math.sin(toRed) * spreadPx,
                grey ? 0 : -Math.cos(toRed) * spreadPx);
    }

    private List<MoonSpot> moons(ApparentDisc disc) {
        double radiusKm = planet.globe().figure().equatorialRadiusKm();
        return sky.moons(planet, disc.time()).stream()
                .map(m -> MoonSpot.of(m, radiusKm, disc.sunDistanceAu()))
                .filter(m -> m.shadow().isPresent() || Math.abs(m.x()) < MOON_REACH_RADII)
                .toList();
    }

    /** Each kit's owner has a habit of naming; only some habits carry a time. */
    private String name(NightPlan plan, Kit kit, FileKind kind, TimeCarrier carrier, Instant shown) {
        int count = counters.merge(kit.id() + carrier, 1, Integer::sum);
        String folder = "pictures/kit-" + kit.id() + "/";
        String stem =
                switch (carrier) {
                    case NAME_SECONDS -> folder + plan.evening() + "/jupiter-" + BASIC.format(shown);
                    case NAME_TENTH_MINUTE -> {
                        long tenth = Math.floorMod(shown.getEpochSecond(), 60L) / 6;
                        yield folder + plan.evening() + "/jupiter " + BASIC_MINUTE.format(shown) + "." + tenth + "Z "
                                + (kit.colour() ? "colour" : kit.gear().filter());
                    }
                    case EXIF -> String.format(Locale.ROOT, "%scard/%s%04d", folder, kit.id(), 120 + count);
                    case FITS -> String.format(Locale.ROOT, "%s%s/%s%03d", folder, plan.evening(), kit.id(), count);
                    case SIDE_NOTE -> String.format(Locale.ROOT, "%s%s/disc-%d", folder, plan.evening(), count);
                    case NONE -> String.format(Locale.ROOT, "pictures/loose/finished-%s-%d", kit.id(), count);
                };
        return stem + "." + kind.extension();
    }

    private static double halfTurn(double deg) {
        double turned = deg % 360;
        return turned > 180 ? turned - 360 : turned <= -180 ? turned + 360 : turned;
    }
}
