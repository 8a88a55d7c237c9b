/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;

class MoonSeriesTest {
    private static final String TABLE = """
            # words
            moon,coordinate,kind,value,phase_rad,rate_rad_per_day
            near,frame,node,0.5,,
            near,frame,inclination,0,,
            near,r,c0,1000,,
            near,r,cos,10,0.1,0.02
            near,r,cosT,20,0.2,0.03
            near,r,cosT2,30,0.3,0.04
            near,r,cosT3,40,0.4,0.05
            near,theta,c0,1,,
            near,theta,c1,0.001,,
            near,theta,c2,0.02,,
            near,theta,c3,0.003,,
            near,z,cosT,5,0,0
            """;

    private static Map<String, MoonSeries> read(String table) throws IOException {
        return MoonSeries.read(
                new ByteArrayInputStream(table.getBytes(StandardCharsets.UTF_8)), "table.csv", -20000, 20000);
    }

    @Test
    void sumIsThatOfTheFormula() throws IOException {
        MoonSeries near = read(TABLE).get("near");
        for (double t : new double[] {0, 1234.5, -9876.5, 18262.5}) {
            double c = t / 36525;
            double r = 1000
                    + 10 * Math.cos(0.1 + 0.02 * t)
                    + 20 * c * Math.cos(0.2 + 0.03 * t)
                    + 30 * c * c * Math.cos(0.3 + 0.04 * t)
                    + 40 * c * c * c * Math.cos(0.4 + 0.05 * t);
            double theta = 1 + 0.001 * t + 0.02 * c * c + 0.003 * c * c * c;
            // Node 0.5 and no inclination: a turn about the pole.
            Vec3 expected = new Vec3(r * Math.cos(theta + 0.5), r * Math.sin(theta + 0.5), 5 * c);
            assertThat(near.fromPlanetKm(t).minus(expected).norm()).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void lineOfAnotherKindIsRefusedAndNotPassedOver() {
        for (String line : List.of(
                "near,r,cosT4,1,2,3",
                "near,r,sin,1,2,3",
                "near,x,cos,1,2,3",
                "near,frame,twist,1,,",
                "near,r",
                "near,r,cos,one,2,3")) {
            assertThatThrownBy(() -> read(TABLE + line + "\n"))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.BAD_SERIES))
                    .hasMessageContainingAll("table.csv", line);
        }
    }
}
