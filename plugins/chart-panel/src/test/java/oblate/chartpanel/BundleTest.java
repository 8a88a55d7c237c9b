/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.Set;
import oblate.workbench.testing.BundleContract;

/** The bundle of texts against the sources that use it. */
class BundleTest extends BundleContract {
    @Override
    protected Set<String> composed() {
        return Set.of("motion.rate", "motion.acceleration", "motion.change", "motion.oscillation");
    }
}
