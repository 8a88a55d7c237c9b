/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import oblate.base.ProblemKind;

/** What can be wrong with a picture file or its time. */
public enum ImageProblem implements ProblemKind {
    MISSING("{0}: there is no such file; check the path"),
    UNREADABLE("{0}: cannot be read ({1}); check the file's permissions"),
    EMPTY("{0}: is empty; copy it again from where it was made"),
    NO_FORMAT("{0}: is no picture of a known kind (asked: {1}); save it as PNG, TIFF, JPEG or FITS"),
    TOO_LARGE("{0}: claims {1} × {2} pixels, more than the limit of {3}; cut it to the planet"),
    FILE_TOO_LONG("{0}: is {1} bytes long, more than the limit of {2}; cut it to the planet"),
    BROKEN("{0}: is broken at {1} ({2}); copy or save it again"),
    UNSUPPORTED("{0}: uses {1}, which is not read; save it as 8- or 16-bit PNG or TIFF"),
    BAD_TIME("{0}: the time \"{1}\" in {2} cannot be read ({3}); write it as 2031-03-24T21:05:30Z");

    private final String template;

    ImageProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
