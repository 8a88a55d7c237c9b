/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import com.formdev.flatlaf.fonts.inter.FlatInterFont;
import com.formdev.flatlaf.fonts.jetbrains_mono.FlatJetBrainsMonoFont;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import oblate.base.UnpackedFiles;

/** The faces of the window, made known to the desktop toolkit. From any thread. */
public final class Faces {
    private Faces() {}

    /**
     * Makes the faces in use known, and only those: each one costs the start some ten milliseconds. Does nothing when they are known.
     *
     * @param files where font files are kept; read from there they need not be copied into a file for this run
     */
    public static void install(Optional<UnpackedFiles> files) {
        if (!isThere(FlatInterFont.FAMILY)) {
            if (!fromFile(files, FlatInterFont.class, FlatInterFont.STYLE_REGULAR)) {
                FlatInterFont.installStyle(FlatInterFont.STYLE_REGULAR);
            }
            if (!fromFile(files, FlatInterFont.class, FlatInterFont.STYLE_BOLD)) {
                FlatInterFont.installStyle(FlatInterFont.STYLE_BOLD);
            }
        }
        if (!isThere(FlatJetBrainsMonoFont.FAMILY)
                && !fromFile(files, FlatJetBrainsMonoFont.class, FlatJetBrainsMonoFont.STYLE_REGULAR)) {
            FlatJetBrainsMonoFont.installStyle(FlatJetBrainsMonoFont.STYLE_REGULAR);
        }
    }

    private static boolean isThere(String family) {
        return new Font(family, Font.PLAIN, 12).getFamily().equals(family);
    }

    private static boolean fromFile(Optional<UnpackedFiles> files, Class<?> owner, String name) {
        Optional<Path> file = files.flatMap(
                f -> f.file(owner, name, () -> "/" + owner.getPackageName().replace('.', '/') + "/" + name));
        if (file.isEmpty()) {
            return false;
        }
        try {
            return GraphicsEnvironment.getLocalGraphicsEnvironment()
                    .registerFont(Font.createFont(Font.TRUETYPE_FONT, file.get().toFile()));
        } catch (FontFormatException | IOException e) {
            System.getLogger(Faces.class.getName())
                    .log(System.Logger.Level.DEBUG, name + " is taken from its jar: " + e.getMessage());
            return false;
        }
    }
}
