package oblate.sample;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A short series of captures of one evening.
 *
 * @param evening date of the evening at the site
 * @param kitId kit used
 * @param firstMid true middle of the first capture
 * @param stepS from one middle to the next (s)
 * @param count captures, at least 1
 * @param seeing Antoniadi scale, 1 best … 5 worst
 * @param transparencyMag faintest star seen with the naked eye near the planet (mag)
 * @param clockErrorS what the kit's clock shows minus the true time (s)
 * @param fileKind kind of file, when it is not the kit's usual one
 * @param carrier where the time goes, when it is not the kit's usual place
 */
record NightPlan(
        LocalDate evening,
        String kitId,
        Instant firstMid,
        double stepS,
        int count,
        int seeing,
        double transparencyMag,
        int clockErrorS,
        Optional<FileKind> fileKind,
        Optional<TimeCarrier> carrier) {}
