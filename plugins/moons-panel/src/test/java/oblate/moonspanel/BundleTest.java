/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import oblate.drift.timing.TimedPoint;
import oblate.sky.Twilight;
import oblate.sky.event.EventKind;
import oblate.sky.event.MutualContact;
import oblate.workbench.testing.BundleContract;

/** The bundle of texts against the sources that use it. */
class BundleTest extends BundleContract {
    @Override
    protected Set<String> composed() {
        Set<String> keys = new TreeSet<>();
        for (EventKind kind : EventKind.values()) {
            keys.add("kind." + kind.id());
        }
        for (EventKind kind : List.of(EventKind.OCCULTATION, EventKind.ECLIPSE)) {
            keys.add("meeting." + kind.id());
        }
        for (MutualContact kind : MutualContact.values()) {
            keys.add("touch." + kind.name().toLowerCase(Locale.ROOT));
        }
        for (String touch : List.of("t1", "ingress_centre", "t2", "t3", "egress_centre", "t4")) {
            keys.add("touch." + touch);
        }
        for (TimedPoint point : TimedPoint.values()) {
            if (point != TimedPoint.PLACE) {
                keys.add("point." + point.id());
            }
        }
        for (Twilight light : Twilight.values()) {
            keys.add("twilight." + light.word());
        }
        for (String part :
                List.of("planet", "site", "stretch", "date", "facing", "mirrored", "time", "slider", "near", "wide")) {
            keys.add(part + ".name");
            keys.add(part + ".tip");
        }
        return keys;
    }
}
