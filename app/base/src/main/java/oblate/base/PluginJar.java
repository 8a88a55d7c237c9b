/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** One jar of the plug-in folder with its own class loader. */
record PluginJar(String name, URLClassLoader loader) {

    /** Opens every {@code *.jar} directly in a folder; what is no jar is added to the refusals. */
    static List<PluginJar> openAll(Path folder, List<PluginRefusal> refusals) {
        List<PluginJar> jars = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            return jars;
        }
        try (Stream<Path> files = Files.list(folder)) {
            for (Path jar : files.sorted().toList()) {
                if (jar.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".jar")) {
                    open(jar, jars, refusals);
                }
            }
        } catch (IOException e) {
            refusals.add(new PluginRefusal(
                    folder.getFileName().toString(), "folder", "cannot be listed: " + e.getMessage()));
        }
        return jars;
    }

    private static void open(Path jar, List<PluginJar> jars, List<PluginRefusal> refusals) {
        String name = jar.getFileName().toString();
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            if (zip.stream().noneMatch(e -> e.getName().startsWith("META-INF/services/"))) {
                refusals.add(
                        new PluginRefusal(name, "jar", "names no plug-in: it has nothing under META-INF/services"));
                return;
            }
            URL url = jar.toUri().toURL();
            jars.add(new PluginJar(
                    name,
                    new URLClassLoader(
                            PluginBlame.loaderName(name), new URL[] {url}, PluginHost.class.getClassLoader())));
        } catch (ZipException e) {
            refusals.add(new PluginRefusal(name, "jar", "is not a jar: " + e.getMessage()));
        } catch (IOException e) {
            refusals.add(new PluginRefusal(name, "jar", "cannot be read: " + e.getMessage()));
        }
    }

    void close() {
        try {
            loader.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
