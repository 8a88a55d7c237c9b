package oblate.sample;

/** Where a picture of the season carries its time; nowhere else. */
public enum TimeCarrier {
    /** In the name, ISO 8601 basic, whole seconds. */
    NAME_SECONDS,
    /** In the name, ISO 8601 basic, to the tenth of a minute. */
    NAME_TENTH_MINUTE,
    /** Exif DateTimeOriginal with OffsetTimeOriginal. */
    EXIF,
    /** FITS DATE-OBS (start), EXPTIME, DATE-AVG (middle). */
    FITS,
    /** A text file beside the picture. */
    SIDE_NOTE,
    /** Not at all. */
    NONE
}
