/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import oblate.archive.ArchivedPicture;
import oblate.archive.Rating;
import oblate.workbench.look.NightName;
import oblate.workbench.words.Texts;

/**
 * The pictures of one night.
 *
 * @param night evening's date; empty for undated pictures
 * @param pictures in order of time
 */
public record NightGroup(Optional<LocalDate> night, List<ArchivedPicture> pictures) {
    private static final Texts TEXTS = Texts.of(NightGroup.class);
    /** Copies the list. */
    public NightGroup {
        pictures = List.copyOf(pictures);
    }

    /** Pictures by night, the newest night first, undated ones before all because they need a look. */
    public static List<NightGroup> of(List<ArchivedPicture> pictures) {
        Map<LocalDate, List<ArchivedPicture>> byNight = new TreeMap<>(Comparator.reverseOrder());
        List<ArchivedPicture> undated = new ArrayList<>();
        for (ArchivedPicture picture : pictures) {
            picture.night()
                    .ifPresentOrElse(
                            n -> byNight.computeIfAbsent(n, k -> new ArrayList<>())
                                    .add(picture),
                            () -> undated.add(picture));
        }
        List<NightGroup> groups = new ArrayList<>();
        if (!undated.isEmpty()) {
            groups.add(new NightGroup(Optional.empty(), undated));
        }
        byNight.forEach((night, of) -> groups.add(new NightGroup(Optional.of(night), of)));
        return List.copyOf(groups);
    }

    /** E.g. {@code 24/25 March 2031}. */
    public String title() {
        return night.map(NightName::of).orElse(TEXTS.text("night.none"));
    }

    /** Count, site, kit and seeing, as far as they are known and the same or few. */
    public String summary() {
        List<String> parts = new ArrayList<>();
        parts.add(TEXTS.counted("pictures", pictures.size()));
        words(ArchivedPicture::site).ifPresent(parts::add);
        words(ArchivedPicture::kit).ifPresent(parts::add);
        words(p -> p.seeing().map(NightGroup::say)).ifPresent(s -> parts.add(TEXTS.text("seeing", s)));
        return String.join("   ·   ", parts);
    }

    private static String say(Rating rating) {
        return rating.value() + " " + rating.scale();
    }

    private Optional<String> words(Function<ArchivedPicture, Optional<String>> part) {
        Set<String> all = new LinkedHashSet<>();
        pictures.forEach(p -> part.apply(p).ifPresent(all::add));
        if (all.isEmpty()) {
            return Optional.empty();
        }
        List<String> few = new ArrayList<>(all);
        return Optional.of(
                few.size() <= 2
                        ? String.join(", ", few)
                        : TEXTS.text("more", few.get(0), Integer.toString(few.size() - 1)));
    }
}
