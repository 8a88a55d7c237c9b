/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.List;
import java.util.Optional;
import oblate.workbench.PanelContext;

/** Chooses a feature when a planet's features are first shown and none of them is chosen: the first with a drift, or else the first. */
final class FirstFeature {
    private final PanelContext context;
    private String filledFor = "";

    FirstFeature(PanelContext context) {
        this.context = context;
    }

    void choose(List<Fitted> fits, boolean oneIsChosen) {
        String planet = context.planet().id();
        if (fits.isEmpty() || planet.equals(filledFor)) {
            return;
        }
        filledFor = planet;
        if (!oneIsChosen) {
            Fitted first =
                    fits.stream().filter(f -> f.drift().isPresent()).findFirst().orElse(fits.get(0));
            context.selection().chooseFeature(Optional.of(first.name()));
        }
    }
}
