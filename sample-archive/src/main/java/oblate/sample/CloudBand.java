package oblate.sample;

/**
 * A belt or zone of the invented face.
 *
 * @param name words
 * @param southDeg southern edge, planetographic (deg)
 * @param northDeg northern edge (deg)
 * @param red brightness at the disc's centre, 0…1
 * @param green brightness
 * @param blue brightness
 * @param texture contrast of its clouds, 0…1
 * @param waveDeg how far its northern edge wanders (deg)
 * @param systemId rotation system its clouds turn with
 * @param rateDegPerDay drift of its clouds in that system (deg/day, west-positive)
 */
record CloudBand(
        String name,
        double southDeg,
        double northDeg,
        double red,
        double green,
        double blue,
        double texture,
        double waveDeg,
        int systemId,
        double rateDegPerDay) {

    double middleDeg() {
        return (southDeg + northDeg) / 2;
    }
}
