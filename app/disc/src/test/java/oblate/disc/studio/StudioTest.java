/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import oblate.disc.Trust;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Fits of pictures by a renderer that shares nothing with the sky or the fit, and whose blur, sharpening and limb law are others than the model's. */
@Tag("truth")
class StudioTest {
    private final StudioScore score = new StudioScore();

    private List<StudioScore.Row> rows(String body, int most) {
        List<StudioScore.Row> rows = new ArrayList<>();
        for (StudioPicture picture : StudioPicture.set()) {
            if (picture.how.body().equals(body) && rows.size() < most) {
                rows.add(score.score(picture, true));
            }
        }
        return rows;
    }

    @Test
    void discsAreFoundWhereTheStudioDrewThem() {
        for (String body : List.of("jupiter", "saturn", "venus")) {
            for (StudioScore.Row row : rows(body, 2)) {
                assertThat(row.found()).as(StudioScore.detail(row)).isTrue();
                assertThat(row.centrePercent()).as(StudioScore.detail(row)).isLessThan(0.35);
                assertThat(Math.abs(row.radiusPercent()))
                        .as(StudioScore.detail(row))
                        .isLessThan(body.equals("venus") ? 3 : 0.6);
                assertThat(row.worst()).as(StudioScore.detail(row)).isLessThan(5);
            }
        }
    }

    /** The whole set: run by hand, some minutes. */
    @Test
    @Tag("whole-table")
    void noTrustedFitOfTheWholeSetIsFarFromTheTruth() {
        List<StudioScore.Row> rows =
                StudioPicture.set().stream().map(p -> score.score(p, true)).toList();
        assertThat(rows).hasSizeGreaterThanOrEqualTo(60).allMatch(StudioScore.Row::found);
        for (StudioScore.Row row : rows) {
            if (row.fit().trust() == Trust.TRUSTED) {
                assertThat(row.worst()).as(StudioScore.detail(row)).isLessThan(5);
            }
        }
    }

    /** A ball of even light, cut by no frame: its middle is the truth's to a few thousandths of a pixel, so the drawing itself adds no error. */
    @Test
    void drawnMiddleIsTheTruths() {
        StudioPicture picture = StudioPicture.set().stream()
                .filter(p -> p.how.body().equals("jupiter") && p.how.phase() < 4)
                .findFirst()
                .orElseThrow();
        double[] outline = picture.outline();
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int i = 0; i < outline.length; i++) {
            sum += outline[i];
            x += outline[i] * (i % picture.width);
            y += outline[i] * (i / picture.width);
        }
        assertThat(x / sum).isCloseTo(picture.cx, within(0.005));
        assertThat(y / sum).isCloseTo(picture.cy, within(0.005));
        double b = Math.toRadians(picture.how.earthLat());
        double q = picture.how.polarRatio();
        double apparent = Math.sqrt(Math.sin(b) * Math.sin(b) + q * q * Math.cos(b) * Math.cos(b));
        assertThat(Math.sqrt(sum / Math.PI / apparent)).isCloseTo(picture.radius, within(0.01));
    }
}
