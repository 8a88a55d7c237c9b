/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * Small images kept on disk beside the settings, named by the picture's SHA-256 and its fit, so that they are made once. Safe for many threads;
 * whatever fails here costs only time.
 */
final class ThumbnailStore {
    private static final int LARGEST_SIDE_PX = 1024;
    private final Path folder;

    ThumbnailStore(Path folder) {
        this.folder = folder;
    }

    /** Where it is. */
    Path folder() {
        return folder;
    }

    /**
     * The image of a picture with a fit.
     *
     * @param sha256 of the picture
     * @param fitId number of the fit it was cut by; 0 for none
     */
    Optional<BufferedImage> read(String sha256, long fitId) {
        Path file = file(sha256, fitId);
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (InputStream in = Files.newInputStream(file)) {
            return Optional.ofNullable(ImageIO.read(in))
                    .filter(i -> i.getWidth() <= LARGEST_SIDE_PX && i.getHeight() <= LARGEST_SIDE_PX);
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Keeps an image without transparency: written beside and renamed, so that nobody reads half of it. */
    void keep(String sha256, long fitId, BufferedImage image) {
        Path file = file(sha256, fitId);
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.write(image, "jpg", bytes);
            Files.createDirectories(file.getParent());
            Path fresh = Files.createTempFile(file.getParent(), "new", ".part");
            try {
                Files.write(fresh, bytes.toByteArray());
                Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(fresh);
            }
        } catch (IOException e) {
            // No room or no permission: it is made anew the next time.
            System.getLogger(ThumbnailStore.class.getName())
                    .log(System.Logger.Level.DEBUG, "small image not kept: " + e.getMessage());
        }
    }

    /** Deletes the oldest images until at most so many bytes are left. */
    void prune(long mostBytes) {
        List<Kept> all = all();
        long bytes = all.stream().mapToLong(Kept::bytes).sum();
        for (Kept one : all) {
            if (bytes <= mostBytes) {
                return;
            }
            try {
                Files.deleteIfExists(one.file());
                bytes -= one.bytes();
            } catch (IOException e) {
                // It stays; the next one goes.
                continue;
            }
        }
    }

    private record Kept(Path file, long bytes, FileTime time) {}

    private List<Kept> all() {
        List<Kept> found = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.walk(folder, 2)) {
                for (Path file : (Iterable<Path>) files::iterator) {
                    if (Files.isRegularFile(file)) {
                        found.add(new Kept(file, Files.size(file), Files.getLastModifiedTime(file)));
                    }
                }
            } catch (IOException | java.io.UncheckedIOException e) {
                return List.of();
            }
        }
        found.sort(Comparator.comparing(Kept::time));
        return found;
    }

    private Path file(String sha256, long fitId) {
        String start = sha256.length() > 2 ? sha256.substring(0, 2) : "00";
        return folder.resolve(start).resolve(sha256 + "-" + fitId + ".jpg");
    }
}
