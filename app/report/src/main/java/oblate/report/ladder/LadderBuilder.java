/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureSearch;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.DiscFrame;
import oblate.disc.MapBuilder;
import oblate.disc.MapFrame;
import oblate.disc.Trust;
import oblate.image.PictureReader;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;

/** Makes the strips of a ladder from an archive, one picture decoded at a time. Safe for many threads. */
public final class LadderBuilder {
    /** The place in the middle of the frame must be seen no more slantingly than this. */
    static final double LARGEST_TILT_DEG = 65;

    private static final double LARGEST_EMISSION_DEG = 75;

    private final Archive archive;
    private final Sky sky;
    private final PictureReader reader;
    private final StripCache cache;

    /** With a cache that may be shared by many builders of one archive. */
    public LadderBuilder(Archive archive, Sky sky, PictureReader reader, StripCache cache) {
        this.archive = archive;
        this.sky = sky;
        this.reader = reader;
        this.cache = cache;
    }

    /**
     * What came of it.
     *
     * @param strips in order of time; possibly none
     * @param remarks what was left out and why, one sentence each
     */
    public record Built(List<LadderStrip> strips, List<String> remarks) {}

    /** A picture that shows the place, and how slantingly (deg). */
    private record Candidate(ArchivedPicture picture, StoredFit fit, ApparentDisc disc, double tiltDeg) {
        Instant time() {
            return picture.time().orElseThrow().midUtc();
        }
    }

    /** Counts what was left out, by reason. */
    private static final class LeftOut {
        private final TreeMap<String, Integer> counts = new TreeMap<>();

        void add(String reason) {
            counts.merge(reason, 1, Integer::sum);
        }

        List<String> words() {
            List<String> words = new ArrayList<>();
            counts.forEach((reason, n) ->
                    words.add(String.format(Locale.ROOT, "%d %s %s", n, n == 1 ? "picture" : "pictures", reason)));
            return words;
        }
    }

    /**
     * Makes the strips.
     *
     * @param within which of the planet's dated pictures may take part
     * @param mostStrips at most so many: where dates crowd, of two that are nearest in time the one that sees the place more slantingly is left out
     * @param progress told of each picture; cancelling ends with the strips made so far
     */
    public Built build(LadderFrame frame, Predicate<Instant> within, int mostStrips, Progress progress) {
        LeftOut leftOut = new LeftOut();
        List<Candidate> candidates = candidates(frame, within, leftOut, progress);
        List<Candidate> chosen = thinned(candidates, mostStrips);
        List<LadderStrip> strips = new ArrayList<>();
        List<String> troubles = new ArrayList<>();
        for (Candidate each : chosen) {
            if (progress.isCancelled()) {
                break;
            }
            try {
                strips.add(strip(frame, each));
            } catch (ProblemException e) {
                troubles.add(e.getMessage());
            }
            progress.report(
                    strips.size() + troubles.size(),
                    chosen.size(),
                    each.picture().name());
        }
        for (int i = chosen.size(); i < candidates.size(); i++) {
            leftOut.add("where dates crowd");
        }
        List<String> remarks = leftOut.words();
        remarks.addAll(troubles);
        return new Built(strips, remarks);
    }

    private List<Candidate> candidates(
            LadderFrame frame, Predicate<Instant> within, LeftOut leftOut, Progress progress) {
        PictureSearch ofPlanet = new PictureSearch(
                Optional.of(frame.planet().id()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0);
        List<Candidate> candidates = new ArrayList<>();
        for (ArchivedPicture picture : archive.pictures(ofPlanet)) {
            if (progress.isCancelled()) {
                break;
            }
            if (picture.time().isEmpty()) {
                leftOut.add("without a date");
            } else if (within.test(picture.time().get().midUtc())) {
                Optional<StoredFit> fit = archive.currentFit(picture.id());
                if (fit.isEmpty()) {
                    leftOut.add("without a fit of the disc");
                } else if (fit.get().fit().trust() != Trust.TRUSTED) {
                    leftOut.add("with a doubtful fit of the disc");
                } else {
                    ApparentDisc disc =
                            sky.disc(frame.planet(), picture.time().get().midUtc());
                    double tilt = tiltDeg(frame, disc, picture.time().get().midUtc());
                    if (tilt > LARGEST_TILT_DEG) {
                        leftOut.add("with the place turned away");
                    } else {
                        candidates.add(new Candidate(picture, fit.get(), disc, tilt));
                    }
                }
            }
        }
        candidates.sort(Comparator.comparing(Candidate::time));
        return candidates;
    }

    /** Angle (deg) between the vertical in the middle of the frame and the line of sight. */
    static double tiltDeg(LadderFrame frame, ApparentDisc disc, Instant time) {
        double lat = Math.toRadians((frame.northDeg() + frame.southDeg()) / 2);
        // The vertical points to the planetographic latitude, the observer stands over the planetocentric one.
        double observer = Math.toRadians(disc.subEarth().latCentricDeg());
        double away = Math.toRadians(frame.offsetDeg(disc.centralMeridianDeg(frame.system()), time));
        double cosine = Math.sin(lat) * Math.sin(observer) + Math.cos(lat) * Math.cos(observer) * Math.cos(away);
        return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cosine))));
    }

    private static List<Candidate> thinned(List<Candidate> all, int most) {
        List<Candidate> left = coarse(all, most);
        while (left.size() > Math.max(1, most)) {
            int at = 0;
            long least = Long.MAX_VALUE;
            for (int i = 1; i < left.size(); i++) {
                long apart = left.get(i).time().toEpochMilli()
                        - left.get(i - 1).time().toEpochMilli();
                if (apart < least) {
                    least = apart;
                    at = i;
                }
            }
            boolean later = left.get(at).tiltDeg() > left.get(at - 1).tiltDeg();
            left.remove(later ? at : at - 1);
        }
        return left;
    }

    /** Of very many, the best of each small piece of time first, so that thinning stays quick. */
    private static List<Candidate> coarse(List<Candidate> all, int most) {
        int pieces = 8 * Math.max(1, most);
        if (all.size() <= pieces) {
            return new ArrayList<>(all);
        }
        long first = all.get(0).time().toEpochMilli();
        long span = all.get(all.size() - 1).time().toEpochMilli() - first + 1;
        TreeMap<Long, Candidate> best = new TreeMap<>();
        for (Candidate each : all) {
            long piece = (each.time().toEpochMilli() - first) * pieces / span;
            best.merge(piece, each, (a, b) -> b.tiltDeg() < a.tiltDeg() ? b : a);
        }
        return new ArrayList<>(best.values());
    }

    private LadderStrip strip(LadderFrame frame, Candidate one) {
        StripCache.Key key = new StripCache.Key(
                one.fit().id(),
                frame.system().id(),
                Math.round(100 * frame.zeroLonDegAt(one.time())),
                frame.widthDeg(),
                frame.southDeg(),
                frame.northDeg());
        Optional<LadderStrip> known = cache.get(key);
        if (known.isPresent()) {
            return known.get();
        }
        MapFrame sheet = LadderStrip.sheet(frame, one.time());
        MapBuilder.Source source = new MapBuilder.Source(
                one.picture().name(),
                reader.decode(archive.fileOf(one.picture())).pixels(),
                new DiscFrame(one.disc(), one.fit().fit().placement()));
        LadderStrip made = LadderStrip.of(
                one.picture().id(),
                one.picture().name(),
                one.time(),
                new MapBuilder()
                        .draw(
                                sheet,
                                List.of(source),
                                new MapBuilder.Manner(LARGEST_EMISSION_DEG, true),
                                Progress.SILENT));
        cache.put(key, made);
        return made;
    }
}
