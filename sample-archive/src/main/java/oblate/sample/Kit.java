package oblate.sample;

import java.time.ZoneOffset;

/**
 * An invented set of gear and what its pictures are like.
 *
 * @param id short name
 * @param label words
 * @param gear the parts, for the gear list
 * @param siteId where it stands
 * @param observer who uses it
 * @param fileKind kind of file it ends in
 * @param carrier where the time goes
 * @param zone zone its clock is set to
 * @param optics scale, frame and orientation
 * @param captureS length of a capture (s)
 * @param processing what is done to the picture
 */
public record Kit(
        String id,
        String label,
        Gear gear,
        String siteId,
        String observer,
        FileKind fileKind,
        TimeCarrier carrier,
        ZoneOffset zone,
        Optics optics,
        double captureS,
        Processing processing) {

    /**
     * Parts, in generic words.
     *
     * @param telescope words
     * @param apertureMm free opening (mm)
     * @param focalLengthMm effective focal length (mm)
     * @param pixelUm pixel pitch of the finished picture (µm)
     * @param camera words
     * @param filter words: infrared cut (colour), red, green
     * @param mount words
     */
    public record Gear(
            String telescope, double apertureMm, double focalLengthMm, double pixelUm, String camera, String filter, String mount) {}

    /**
     * How the sky lies in the picture.
     *
     * @param scaleArcsecPerPx size of a pixel (arcsec)
     * @param widthPx frame
     * @param heightPx frame
     * @param turnDeg direction of celestial north (of the vertical on an altazimuth mount) from straight up, counter-clockwise as displayed (deg)
     * @param mirrored an odd number of mirrors
     * @param altazimuth the mount keeps the vertical and not north
     */
    public record Optics(
            double scaleArcsecPerPx, int widthPx, int heightPx, double turnDeg, boolean mirrored, boolean altazimuth) {}

    /**
     * What happens to the picture.
     *
     * @param dispersionLeft share of the air's colour spread that stays, 0…1
     * @param seeingFloorArcsec blur on a perfect night (arcsec, sigma)
     * @param sharpenFine gain of the fine sharpening pass
     * @param sharpenCoarse gain of the coarse pass
     * @param noise noise of a bright pixel before sharpening, as a share of full scale
     * @param black level that becomes 0, as a share of full scale; negative leaves the sky grey
     * @param gamma exponent of the stretch
     */
    public record Processing(
            double dispersionLeft,
            double seeingFloorArcsec,
            double sharpenFine,
            double sharpenCoarse,
            double noise,
            double black,
            double gamma) {}

    /** Whether its pictures are in colour. */
    public boolean colour() {
        return gear.camera().startsWith("colour");
    }

    /** Channel of a grey picture: 0 red, 1 green. */
    int greyChannel() {
        return gear.filter().equals("red") ? 0 : 1;
    }
}
