/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.jar.JarOutputStream;
import java.util.zip.ZipEntry;

/** Makes plug-in jars from classes of the test tree, renamed so that the class path does not already have them. */
final class PluginJars {
    private PluginJars() {}

    /**
     * Writes a jar with one panel.
     *
     * <p>The class is packed under a name of the same length in a package of its own, by changing that name in its bytes, so that only the jar
     * can provide it.
     */
    static void panel(Path jar, Class<?> type) throws IOException {
        Files.createDirectories(jar.getParent());
        String oldName = type.getName().replace('.', '/');
        String newName = oldName.replace(
                "oblate/workbench/tutorial",
                "stranger/workshop/tutorial".substring(0, "oblate/workbench/tutorial".length()));
        byte[] bytes = read(type, oldName);
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream zip = new JarOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("META-INF/services/" + WorkbenchPanel.class.getName()));
            zip.write(newName.replace('/', '.').getBytes(StandardCharsets.UTF_8));
            zip.putNextEntry(new ZipEntry(newName + ".class"));
            zip.write(renamed(bytes, oldName, newName));
            zip.closeEntry();
        }
    }

    private static byte[] read(Class<?> type, String name) throws IOException {
        try (InputStream in = type.getClassLoader().getResourceAsStream(name + ".class")) {
            return in.readAllBytes();
        }
    }

    private static byte[] renamed(byte[] bytes, String oldName, String newName) {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        return text.replace(oldName, newName).getBytes(StandardCharsets.ISO_8859_1);
    }
}
