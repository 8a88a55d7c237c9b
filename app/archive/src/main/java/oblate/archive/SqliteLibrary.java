/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

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
    /** Where the driver looks first, and under which name; its documented settings. */
    private static final String PLACE = "org.sqlite.lib.path";

    private static final String NAME = "org.sqlite.lib.name";

    private SqliteLibrary() {}

    /** Lets the driver take its library from where files are kept. To be called before the first archive is opened; later calls change nothing. */
    public static void keepIn(UnpackedFiles kept) {
        if (System.getProperty(PLACE) != null) {
            return;
        }
        String library = LibraryLoaderUtil.getNativeLibName();
        String name = plain("os.name") + "-" + plain("os.arch") + "-" + library;
        kept.file(JDBC.class, name, () -> LibraryLoaderUtil.getNativeLibResourcePath() + "/" + library)
                .ifPresent(file -> {
                    System.setProperty(NAME, name);
                    System.setProperty(PLACE, file.getParent().toString());
                });
    }

    private static String plain(String property) {
        return System.getProperty(property, "").toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9_]", "");
    }
}
