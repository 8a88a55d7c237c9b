/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.Sky;

/**
 * An invented observing season of Jupiter: plans it, tells the truth about it, and writes it as a folder of picture files. Immutable; the same season writes the same
 * pixels with any number of threads.
 */
public final class SampleSeason {
    /** Brightness of a bright zone before the stretch, as a share of full scale. */
    private static final double LIGHT = 0.80;

    private final Scenario scenario;
    private final List<Shot> shots;

    private SampleSeason(Scenario scenario, Sky sky) {
        this.scenario = scenario;
        shots = ShotList.of(scenario, sky, new Jupiter());
    }

    /** A season from a scenario of one's own. */
    static SampleSeason of(Scenario scenario, Sky sky) {
        return new SampleSeason(scenario, sky);
    }

    /** The season that ships: five kits, two sites, five months about an opposition. */
    public static SampleSeason standard() {
        return new SampleSeason(Scenario.standard(), Sky.bundled());
    }

    /** One evening of that season with one kit: eight pictures in half an hour, as several kinds of file. */
    public static SampleSeason night() {
        return new SampleSeason(Scenario.oneNight(), Sky.bundled());
    }

    /** What it is called. */
    public String title() {
        return scenario.title();
    }

    /** Gear used. */
    public List<Kit> kits() {
        return scenario.kits();
    }

    /** Where it was. */
    public List<Site> sites() {
        return scenario.sites();
    }

    /** Evenings in the order of the season, one entry for each kit used. */
    public List<Night> nights() {
        Map<String, List<Shot>> groups = new LinkedHashMap<>();
        for (Shot s : shots) {
            groups.computeIfAbsent(s.evening() + " " + s.kit().id(), key -> new ArrayList<>())
                    .add(s);
        }
        return groups.values().stream()
                .map(group -> {
                    Shot first = group.get(0);
                    return new Night(
                            first.evening(),
                            first.kit().siteId(),
                            first.kit().observer(),
                            first.kit().id(),
                            group.size(),
                            first.plan().seeing(),
                            first.plan().transparencyMag());
                })
                .toList();
    }

    /** Pictures, features and marks as they truly are; draws nothing. */
    public SampleTruth truth() {
        return new ShotTruth(scenario.features()).of(scenario.epoch(), shots);
    }

    /**
     * Writes pictures, truth, and the lists of kits, sites and nights. Drawing is spread over the processors.
     *
     * @param folder made if it does not exist; must be empty
     * @param progress one step a picture; when it is cancelled everything written is removed
     * @return the truth that was written
     * @throws ProblemException with a {@link SampleProblem}
     */
    public SampleTruth writeTo(Path folder, Progress progress) {
        try {
            Files.createDirectories(folder);
            try (Stream<Path> inside = Files.list(folder)) {
                if (inside.findAny().isPresent()) {
                    throw new ProblemException(SampleProblem.FOLDER_NOT_EMPTY, folder);
                }
            }
            SampleTruth truth = truth();
            if (!drawAll(folder, progress)) {
                int done = count(folder);
                empty(folder);
                throw new ProblemException(SampleProblem.CANCELLED, folder, done, shots.size());
            }
            TruthTables.write(truth, folder);
            SeasonTables.write(scenario, nights(), folder);
            return truth;
        } catch (IOException e) {
            throw new ProblemException(e, SampleProblem.CANNOT_WRITE, folder, e);
        } catch (UncheckedIOException e) {
            throw new ProblemException(e, SampleProblem.CANNOT_WRITE, folder, e.getCause());
        }
    }

    /** Draws and writes every picture; false when it was cancelled. */
    private boolean drawAll(Path folder, Progress progress) {
        progress.report(0, shots.size(), "drawing the clouds");
        GlobeRenderer renderer = new GlobeRenderer(new CloudMap(scenario.bands(), scenario.seed()));
        AtomicInteger done = new AtomicInteger();
        return shots.parallelStream().allMatch(shot -> {
            if (progress.isCancelled()) {
                return false;
            }
            Path file = folder.resolve(shot.file());
            try {
                Files.createDirectories(file.getParent());
                new PictureFiles().write(shot, develop(shot, renderer), file);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            progress.report(done.incrementAndGet(), shots.size(), "drawing pictures");
            return true;
        });
    }

    private float[][] develop(Shot shot, GlobeRenderer renderer) {
        Markings markings = new Markings(scenario.features(), shot.view(), shot.day(), scenario.seed());
        Kit kit = shot.kit();
        var scene = new GlobeRenderer.Scene(shot.view(), markings, shot.day(), kit.captureS(), shot.moons());
        int width = kit.optics().widthPx();
        float[][] planes =
                renderer.draw(scene, shot.frame(), width, kit.optics().heightPx());
        if (shot.channels() == 1) {
            planes = new float[][] {planes[kit.greyChannel()]};
        }
        Darkroom darkroom = new Darkroom(
                kit.processing(),
                shot.blurPx(),
                shot.redShiftXPx(),
                shot.redShiftYPx(),
                LIGHT,
                Dice.mix(scenario.seed() + 7919L * shot.number()));
        return darkroom.develop(planes, width);
    }

    private static int count(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return (int) all.filter(p -> Files.isRegularFile(p) && !p.toString().endsWith(".txt"))
                    .count();
        }
    }

    private static void empty(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                if (!path.equals(folder)) {
                    Files.delete(path);
                }
            }
        }
    }
}
