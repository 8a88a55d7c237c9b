package oblate.image;

import java.nio.file.Path;

/** Finds when a picture was taken: the user's word, FITS, Exif, the file's name, a text note beside it, in this order. Stateless. */
public final class CaptureTimes {

    /**
     * Looks at every source and decides.
     *
     * @param file the picture; its name and the note beside it are looked at
     * @param header its facts
     * @param wish what the user says
     */
    public TimeFinding find(Path file, PictureHeader header, TimeWish wish) {
        throw new UnsupportedOperationException(file + "" + header + wish);
    }
}
