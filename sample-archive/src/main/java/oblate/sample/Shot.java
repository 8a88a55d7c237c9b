package oblate.sample;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One picture of the season, decided but not yet drawn.
 *
 * @param number place in the season, from 0
 * @param file path below the season's folder, with forward slashes
 * @param evening date of the evening at the site
 * @param kit gear
 * @param plan the series it belongs to
 * @param mid true middle of the capture
 * @param stated what a careful reader of the file takes for the middle; empty when it carries no time
 * @param fileKind kind of file
 * @param carrier where the time is
 * @param view how the globe is turned and lit
 * @param moons moons that may be in the frame, and those whose shadows are
 * @param subEarthLatGraphicDeg planetographic latitude under the Earth (deg)
 * @param frame where the globe lies in the picture
 * @param day days from the season's epoch to {@code mid}
 * @param seeingArcsec blur (arcsec, sigma)
 * @param blurPx the same in pixels
 * @param redShiftXPx how far red stands right of green (px); blue as far left
 * @param redShiftYPx how far red stands below green (px)
 */
record Shot(
        int number,
        String file,
        LocalDate evening,
        Kit kit,
        NightPlan plan,
        Instant mid,
        Optional<Instant> stated,
        FileKind fileKind,
        TimeCarrier carrier,
        GlobeView view,
        List<MoonSpot> moons,
        double subEarthLatGraphicDeg,
        CameraFrame frame,
        double day,
        double seeingArcsec,
        double blurPx,
        double redShiftXPx,
        double redShiftYPx) {

    Shot {
        moons = List.copyOf(moons);
    }

    int channels() {
        return kit.colour() && fileKind != FileKind.FITS_16 ? 3 : 1;
    }
}
