/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import oblate.base.UnpackedFiles;
import org.sqlite.JDBC;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * The native library of SQLite, kept unpacked between runs. The driver would unpack it anew into the folder for temporary files at every start and
 * compare it byte by byte, which takes longer than opening the catalog.
 *
 * <p>Where it cannot be kept, or what is kept cannot be loaded, the driver goes its own way.
 */
public final class SqliteLibrary {
    /** Where the driver looks first; its documented setting. The file has to have the name the driver knows it by. */
    private static final String PLACE = "org.sqlite.lib.path";

    private SqliteLibrary() {}

    /**
     * Lets the driver take its library from where files are kept. To be called before the first archive is opened; once the driver has its library
     * it changes nothing.
     */
    public static void keepIn(UnpackedFiles kept) {
        String library = LibraryLoaderUtil.getNativeLibName();
        String now = System.getProperty(PLACE);
        if (now != null && Files.isRegularFile(Path.of(now, library))) {
            return;
        }
        String name = plain("os.name") + "-" + plain("os.arch") + "/" + library;
        kept.file(JDBC.class, name, () -> LibraryLoaderUtil.getNativeLibResourcePath() + "/" + library)
                .ifPresent(file -> System.setProperty(PLACE, file.getParent().toString()));
    }

    private static String plain(String property) {
        return System.getProperty(property, "").toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9_]", "");
    }
}
