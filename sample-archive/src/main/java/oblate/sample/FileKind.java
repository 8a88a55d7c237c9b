package oblate.sample;

/** Kinds of picture file a season has. */
public enum FileKind {
    PNG_8("png"),
    PNG_16("png"),
    JPEG("jpg"),
    TIFF_16("tif"),
    TIFF_16_LZW("tif"),
    TIFF_16_DEFLATE("tif"),
    FITS_16("fits");

    private final String extension;

    FileKind(String extension) {
        this.extension = extension;
    }

    /** Ending of the file's name, no dot. */
    public String extension() {
        return extension;
    }
}
