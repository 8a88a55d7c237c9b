/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Properties;

/** The window's settings, kept as a text file in the settings folder. A file that cannot be read costs only the remembered layout. */
final class DeskSettings {
    private final Path file;
    private final Properties values = new Properties();

    DeskSettings(Path folder) {
        file = folder.resolve("workbench.properties");
        if (Files.isRegularFile(file)) {
            try (InputStream in = Files.newInputStream(file)) {
                values.load(in);
            } catch (IOException | IllegalArgumentException e) {
                values.clear();
            }
        }
    }

    PanelSettings forPanel(String id) {
        return new PanelSettings(id + ".", values::getProperty, values::setProperty);
    }

    /** Writes beside and renames, so that a crash leaves the old or the new file. */
    void save() throws IOException {
        Files.createDirectories(file.getParent());
        Path fresh = file.resolveSibling("workbench.properties.new");
        try (OutputStream out = Files.newOutputStream(fresh)) {
            values.store(out, "Layout of the workbench");
        }
        Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }
}
