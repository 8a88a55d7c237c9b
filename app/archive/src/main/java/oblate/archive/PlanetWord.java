/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import oblate.base.ProblemException;
import oblate.image.PictureHeader;
import oblate.sky.PlanetModel;

/**
 * Which planet a picture shows: the user's word, the file's, then its name's and its folder's.
 *
 * @param planet the planet, if one source names one and only one
 * @param remarks what a person should look at, one sentence each
 */
record PlanetWord(Optional<PlanetModel> planet, List<String> remarks) {
    private static final Pattern LETTERS = Pattern.compile("\\p{L}+");

    /**
     * @throws ProblemException {@link ArchiveProblem#NO_SUCH_PLANET} when the user names one that is not known
     */
    static PlanetWord of(Optional<String> usersWord, Path file, PictureHeader header, List<PlanetModel> planets) {
        Map<String, Set<PlanetModel>> bySource = new LinkedHashMap<>();
        usersWord.ifPresent(word -> bySource.put("the word given", Set.of(named(word, planets))));
        header.fact("FITS", "OBJECT").ifPresent(text -> bySource.put("OBJECT", in(text, planets)));
        header.fact("Exif", "ImageDescription").ifPresent(text -> bySource.put("ImageDescription", in(text, planets)));
        header.fact("PNG", "Title").ifPresent(text -> bySource.put("Title", in(text, planets)));
        header.fact("PNG", "Description").ifPresent(text -> bySource.put("Description", in(text, planets)));
        bySource.put("the file's name", in(String.valueOf(file.getFileName()), planets));
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null && folder.getFileName() != null) {
            bySource.put("the folder's name", in(folder.getFileName().toString(), planets));
        }
        return decide(bySource);
    }

    /** The planet of an id or label. */
    static PlanetModel named(String word, List<PlanetModel> planets) {
        return planets.stream()
                .filter(p -> p.id().equalsIgnoreCase(word.strip()) || p.label().equalsIgnoreCase(word.strip()))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        ArchiveProblem.NO_SUCH_PLANET,
                        word,
                        planets.stream().map(PlanetModel::id).collect(Collectors.joining(", "))));
    }

    private static PlanetWord decide(Map<String, Set<PlanetModel>> bySource) {
        List<String> remarks = new ArrayList<>();
        Optional<PlanetModel> chosen = Optional.empty();
        String by = "";
        for (Map.Entry<String, Set<PlanetModel>> source : bySource.entrySet()) {
            if (source.getValue().size() != 1) {
                continue;
            }
            PlanetModel planet = source.getValue().iterator().next();
            if (chosen.isEmpty()) {
                chosen = Optional.of(planet);
                by = source.getKey();
            } else if (!chosen.get().id().equals(planet.id())) {
                remarks.add(String.format(
                        Locale.ROOT,
                        "%s says %s, %s says %s; it was filed as %s.",
                        by,
                        chosen.get().label(),
                        source.getKey(),
                        planet.label(),
                        chosen.get().label()));
            }
        }
        if (chosen.isEmpty()) {
            remarks.add(
                    "The planet is not known, so it has no central meridian; say which it is, or put its name into the file's name.");
        }
        return new PlanetWord(chosen, List.copyOf(remarks));
    }

    private static Set<PlanetModel> in(String text, List<PlanetModel> planets) {
        Set<String> words = LETTERS.matcher(text.toLowerCase(Locale.ROOT))
                .results()
                .map(MatchResult::group)
                .collect(Collectors.toSet());
        return planets.stream()
                .filter(p -> words.contains(p.id()) || words.contains(p.label().toLowerCase(Locale.ROOT)))
                .collect(Collectors.toSet());
    }
}
