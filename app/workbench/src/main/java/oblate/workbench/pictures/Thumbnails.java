/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.awt.image.BufferedImage;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.disc.Placement;
import oblate.image.PixelGrid;
import oblate.workbench.Bearing;
import oblate.workbench.PanelContext;
import oblate.workbench.look.RedLight;

/**
 * Small images of pictures, cut to the disc and turned the way the window shows discs. They are made off the event thread, what was asked for last
 * first, kept in memory within a bound and on disk beside the settings. On the event thread only.
 */
public final class Thumbnails {
    private static final int USUAL_SIDE_PX = 192;
    private static final long MOST_BYTES = 96L << 20;
    private static final int MOST_WAITING = 400;
    private static final int AT_ONCE = 2;
    private static final long MOST_ON_DISK_BYTES = 400L << 20;
    private final PanelContext context;
    private final LongConsumer whenReady;
    private final ThumbnailStore store;
    private final Deque<Request> waiting = new ArrayDeque<>();
    private final Set<Key> underWay = new HashSet<>();
    private final Map<Key, Optional<BufferedImage>> kept = new LinkedHashMap<>(64, 0.75f, true);
    private long keptBytes;

    private record Key(long id, long fitId, Bearing bearing, boolean red, int sidePx) {}

    /** What is to be made, with the angle it is to be turned by (deg, clockwise). */
    private record Request(Key key, ArchivedPicture picture, double turnDeg) {}

    /**
     * @param context where the pictures are
     * @param whenReady called on the event thread when another image is there
     */
    public Thumbnails(PanelContext context, Runnable whenReady) {
        this(id -> whenReady.run(), context);
    }

    private Thumbnails(LongConsumer whenReady, PanelContext context) {
        this.context = context;
        this.whenReady = whenReady;
        store = new ThumbnailStore(context.workbench().settingsFolder().resolve("thumbnails"));
    }

    /**
     * Images that say which they are.
     *
     * @param whenReady gets the number of a picture on the event thread when its image is there
     */
    public static Thumbnails named(PanelContext context, LongConsumer whenReady) {
        return new Thumbnails(whenReady, context);
    }

    /** Deletes the oldest images on disk when there are too many. Any thread. */
    public void prune() {
        store.prune(MOST_ON_DISK_BYTES);
    }

    /** The image when it is there; else it is asked for, and {@code whenReady} is called once it is. */
    public Optional<BufferedImage> of(ArchivedPicture picture) {
        return of(picture, USUAL_SIDE_PX);
    }

    /** As {@link #of(ArchivedPicture)}, with a side of so many pixels of the screen. */
    public Optional<BufferedImage> of(ArchivedPicture picture, int sidePx) {
        Request request = request(picture, sidePx);
        Optional<BufferedImage> known = kept.get(request.key());
        if (known != null) {
            return known;
        }
        ask(request);
        pump();
        return Optional.empty();
    }

    /**
     * What a person looks at now: whatever was asked for before and is not made yet is forgotten.
     *
     * @param nearestFirst pictures in view, then those beside it
     */
    public void lookAt(List<ArchivedPicture> nearestFirst, int sidePx) {
        waiting.clear();
        for (ArchivedPicture picture : nearestFirst) {
            Request request = request(picture, sidePx);
            if (waiting.size() < MOST_WAITING
                    && !kept.containsKey(request.key())
                    && !underWay.contains(request.key())) {
                waiting.addLast(request);
            }
        }
        pump();
    }

    private Request request(ArchivedPicture picture, int sidePx) {
        Optional<FitSummary> fit = context.shelf().fit(picture.id());
        Bearing bearing = fit.isPresent() ? context.bearing() : Bearing.AS_TAKEN;
        Key key = new Key(
                picture.id(),
                fit.map(FitSummary::fitId).orElse(0L),
                bearing,
                context.palette().picturesRed(),
                sidePx);
        return new Request(
                key, picture, fit.map(f -> bearing.turnDeg(f.poleAngleDeg())).orElse(0.0));
    }

    private void ask(Request request) {
        if (underWay.contains(request.key())
                || waiting.stream().anyMatch(w -> w.key().equals(request.key()))) {
            return;
        }
        waiting.addFirst(request);
        if (waiting.size() > MOST_WAITING) {
            waiting.removeLast();
        }
    }

    private void pump() {
        while (underWay.size() < AT_ONCE && !waiting.isEmpty()) {
            Request next = waiting.removeFirst();
            underWay.add(next.key());
            context.background().aside(() -> make(next), image -> {
                underWay.remove(next.key());
                keep(next.key(), image);
                pump();
                whenReady.accept(next.picture().id());
            });
        }
    }

    private void keep(Key key, Optional<BufferedImage> image) {
        kept.put(key, image);
        keptBytes += bytes(image);
        Iterator<Optional<BufferedImage>> eldest = kept.values().iterator();
        while (keptBytes > MOST_BYTES && kept.size() > 1) {
            keptBytes -= bytes(eldest.next());
            eldest.remove();
        }
    }

    private static long bytes(Optional<BufferedImage> image) {
        return image.map(i -> 4L * i.getWidth() * i.getHeight()).orElse(0L) + 200;
    }

    /** How much memory the images take (bytes). */
    long keptBytes() {
        return keptBytes;
    }

    @SuppressWarnings("checkstyle:IllegalCatch") // a picture that cannot be drawn costs only its own small image
    private Optional<BufferedImage> make(Request request) {
        try {
            String sha = request.picture().sha256();
            long fitId = request.key().fitId();
            BufferedImage cut = store.read(sha, fitId).orElseGet(() -> {
                BufferedImage fresh = cut(request.picture(), fitId);
                store.keep(sha, fitId, fresh);
                return fresh;
            });
            BufferedImage image =
                    SmallImage.turned(cut, request.turnDeg(), request.key().sidePx());
            return Optional.of(request.key().red() ? RedLight.on(image) : image);
        } catch (ProblemException e) {
            // A broken file has no small image; opening it tells why.
            return Optional.empty();
        } catch (RuntimeException | OutOfMemoryError e) {
            System.getLogger(Thumbnails.class.getName())
                    .log(
                            System.Logger.Level.WARNING,
                            "no small image of " + request.picture().name(),
                            e);
            return Optional.empty();
        }
    }

    private BufferedImage cut(ArchivedPicture picture, long fitId) {
        PixelGrid pixels = context.workbench()
                .reader()
                .decode(context.archive().fileOf(picture))
                .pixels();
        Optional<Placement> placement = context.archive()
                .currentFit(picture.id())
                .filter(f -> f.id() == fitId)
                .map(StoredFit::fit)
                .map(f -> f.placement());
        return SmallImage.cut(pixels, placement);
    }
}
