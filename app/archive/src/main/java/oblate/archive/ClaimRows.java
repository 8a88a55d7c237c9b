/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import oblate.image.TimeClaim;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import org.jdbi.v3.core.Handle;

/** Reads what was said about pictures' times. */
final class ClaimRows {

    List<TimeClaim> ofPicture(Handle handle, long pictureId) {
        return handle.createQuery("""
                        select source, place, original_text, stated, offset_s, meaning, exposure_s, precision_s
                        from time_claim where picture_id = :picture order by ordinal
                        """)
                .bind("picture", pictureId)
                .map((rs, ctx) -> {
                    int offset = rs.getInt("offset_s");
                    Optional<ZoneOffset> zone =
                            rs.wasNull() ? Optional.empty() : Optional.of(ZoneOffset.ofTotalSeconds(offset));
                    return new TimeClaim(
                            TimeSource.valueOf(rs.getString("source")),
                            rs.getString("place"),
                            rs.getString("original_text"),
                            LocalDateTime.parse(rs.getString("stated")),
                            zone,
                            TimeMeaning.valueOf(rs.getString("meaning")),
                            Columns.number(rs, "exposure_s"),
                            rs.getDouble("precision_s"));
                })
                .list();
    }
}
