/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import oblate.sky.GroundEvent;
import oblate.sky.Twilight;
import oblate.sky.event.EventKind;
import oblate.workbench.testing.BundleContract;

/** The bundle of texts against the sources that use it. */
class BundleTest extends BundleContract {
    @Override
    protected Set<String> composed() {
        Set<String> keys = new TreeSet<>();
        for (Twilight light : Twilight.values()) {
            keys.add("sky." + light.word());
            keys.add("light." + light.word());
            keys.add("light." + light.word() + ".short");
            if (light != Twilight.NIGHT) {
                keys.add("after." + light.word());
            }
        }
        for (EventKind kind : EventKind.values()) {
            keys.add("legend." + kind.id());
        }
        for (GroundEvent.Kind kind : GroundEvent.Kind.values()) {
            if (kind.name().endsWith("DUSK") || kind.name().endsWith("DAWN")) {
                keys.add("course." + kind.name().toLowerCase(Locale.ROOT));
            }
        }
        for (String key : List.of("rises", "sets")) {
            keys.add("course." + key);
        }
        for (String key : List.of("t1", "ingress_centre", "t2", "t3", "egress_centre", "t4")) {
            keys.add("contact." + key);
        }
        for (String key : List.of("calendar", "copy", "csv")) {
            keys.add("deed." + key);
        }
        for (String key : List.of("smear.deg", "smear.px", "scale")) {
            keys.add(key + ".name");
            keys.add(key + ".tip");
        }
        return keys;
    }
}
