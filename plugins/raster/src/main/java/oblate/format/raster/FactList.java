/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.util.ArrayList;
import java.util.List;
import oblate.image.HeaderFact;

/** Header facts as they are met, kept short in text and number. For one thread. */
final class FactList {
    private static final int LONGEST_VALUE = 2000;
    private static final int MOST_FACTS = 1000;

    private final List<HeaderFact> facts = new ArrayList<>();

    /** Adds a fact; blank values say nothing and are left out, and so is whatever comes after the first thousand. */
    void add(String group, String key, String value) {
        if (value == null || facts.size() >= MOST_FACTS) {
            return;
        }
        String text = value.replace("\u0000", "").strip();
        if (!text.isEmpty() && !key.isBlank()) {
            facts.add(new HeaderFact(
                    group, key, text.length() > LONGEST_VALUE ? text.substring(0, LONGEST_VALUE) : text));
        }
    }

    boolean has(String group, String key) {
        return facts.stream().anyMatch(f -> f.group().equals(group) && f.key().equals(key));
    }

    List<HeaderFact> facts() {
        return List.copyOf(facts);
    }
}
