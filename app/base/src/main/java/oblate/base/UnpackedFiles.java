/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.CodeSource;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * Files out of jars that are wanted as files, such as a native library or a font, kept unpacked between runs.
 *
 * <p>What is kept stands in a folder named after the jar, its size and its date, and has its checksum beside it: a file of another jar, or one that
 * is not whole, is not given. Where nothing can be kept there is no file, and the caller goes another way.
 */
public final class UnpackedFiles {
    private final Path folder;

    /**
     * @param cache folder for what may be deleted at any time; made when it is not there
     */
    public UnpackedFiles(Path cache) {
        folder = cache.toAbsolutePath().resolve("unpacked");
    }

    /**
     * A file out of the jar of a class, unpacked if it is not yet.
     *
     * @param owner a class of the jar
     * @param name name of the unpacked file, with {@code /} where it is to be in a folder; two of one jar need different ones
     * @param resource where it is in the jar, with a leading slash; asked for only when it has to be unpacked
     * @return empty when there is no such file or it cannot be kept
     */
    public Optional<Path> file(Class<?> owner, String name, Supplier<String> resource) {
        try {
            Optional<Path> place = place(owner);
            if (place.isEmpty()) {
                return Optional.empty();
            }
            Path file = place.get().resolve(name);
            if (!isWhole(file)) {
                unpack(owner, resource.get(), file, place.get());
            }
            return Optional.of(file);
        } catch (IOException e) {
            System.getLogger(UnpackedFiles.class.getName())
                    .log(System.Logger.Level.DEBUG, name + " is not kept: " + e.getMessage());
            return Optional.empty();
        }
    }

    private Optional<Path> place(Class<?> owner) throws IOException {
        CodeSource source = owner.getProtectionDomain().getCodeSource();
        if (source == null || source.getLocation() == null) {
            return Optional.empty();
        }
        try {
            Path jar = Path.of(source.getLocation().toURI());
            if (!Files.isRegularFile(jar)) {
                return Optional.empty();
            }
            return Optional.of(folder.resolve(jar.getFileName() + "-"
                    + Long.toHexString(Files.size(jar)) + "-"
                    + Long.toHexString(Files.getLastModifiedTime(jar).toMillis())));
        } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
            return Optional.empty();
        }
    }

    /** The checksum stands in the name of an empty file, written after the file it is of. */
    private static boolean isWhole(Path file) throws IOException {
        return Files.isRegularFile(file) && Files.exists(sumFile(file, checksum(file)));
    }

    private static Path sumFile(Path file, long checksum) {
        return file.resolveSibling(String.format(Locale.ROOT, "%s.%08x", file.getFileName(), checksum));
    }

    private static long checksum(Path file) throws IOException {
        CRC32 sum = new CRC32();
        try (FileChannel channel = FileChannel.open(file)) {
            ByteBuffer part = ByteBuffer.allocateDirect(1 << 18);
            while (channel.read(part) >= 0) {
                sum.update(part.flip());
                part.clear();
            }
        }
        return sum.getValue();
    }

    private static void unpack(Class<?> owner, String resource, Path file, Path place) throws IOException {
        try (InputStream packed = owner.getResourceAsStream(resource)) {
            if (packed == null) {
                throw new IOException("it is not in its jar");
            }
            removeFormer(place);
            Files.createDirectories(file.getParent());
            Path half = Files.createTempFile(file.getParent(), "half", ".tmp");
            try {
                Files.copy(packed, half, StandardCopyOption.REPLACE_EXISTING);
                long checksum = checksum(half);
                Files.move(half, file, StandardCopyOption.REPLACE_EXISTING);
                Files.write(sumFile(file, checksum), new byte[0]);
            } finally {
                Files.deleteIfExists(half);
            }
        }
    }

    /** Removes what was kept of a jar of the same name, as far as it can be removed: on some systems a file in use cannot be. */
    private static void removeFormer(Path place) throws IOException {
        String name = place.getFileName().toString();
        String jar = name.substring(0, name.lastIndexOf('-', name.lastIndexOf('-') - 1) + 1);
        if (!Files.isDirectory(place.getParent())) {
            return;
        }
        List<Path> former;
        try (Stream<Path> all = Files.list(place.getParent())) {
            former = all.filter(p -> p.getFileName().toString().startsWith(jar) && !p.equals(place))
                    .toList();
        }
        for (Path old : former) {
            remove(old);
        }
    }

    private static void remove(Path old) {
        try (Stream<Path> files = Files.walk(old)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            System.getLogger(UnpackedFiles.class.getName())
                    .log(System.Logger.Level.DEBUG, old + " stays: " + e.getMessage());
        }
    }
}
