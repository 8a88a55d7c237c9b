/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.tools.ToolProvider;

/** A plug-in jar compiled from source by a test, as a stranger would. */
public final class StrangersJar {
    private final Map<String, String> sources = new LinkedHashMap<>();
    private final Map<String, String> services = new LinkedHashMap<>();
    private final List<String> leftOut = new ArrayList<>();

    /** Adds a class of the package {@code stranger}; its text begins with "public class …". */
    public StrangersJar source(String simpleName, String text) {
        sources.put(
                simpleName,
                "package stranger;\nimport oblate.workbench.*;\nimport oblate.workbench.measure.*;\nimport oblate.disc.*;\n"
                        + "import java.util.*;\nimport java.awt.*;\nimport javax.swing.*;\nimport java.util.List;\n"
                        + text);
        return this;
    }

    /** Names a class for an extension point. */
    public StrangersJar service(Class<?> point, String simpleName) {
        services.put(point.getName(), "stranger." + simpleName);
        return this;
    }

    /** Forgets a class when the jar is written, so that it is missing at run time. */
    public StrangersJar without(String simpleName) {
        leftOut.add("stranger/" + simpleName + ".class");
        return this;
    }

    /** A panel whose {@code create} has the given body. */
    public static StrangersJar panel(String id, String body) {
        return panel(id, "", body);
    }

    /** A panel with further members, whose {@code create} has the given body. */
    public static StrangersJar panel(String id, String members, String body) {
        return new StrangersJar()
                .source(
                        "Panel",
                        "public class Panel implements WorkbenchPanel {\n" + members
                                + "\npublic String id() { return \"" + id
                                + "\"; }\npublic String label() { return \"" + id
                                + "\"; }\npublic JComponent create(PanelContext context) {\n" + body + "\n}}")
                .service(WorkbenchPanel.class, "Panel");
    }

    /** A tool whose hand has the given members. */
    public static StrangersJar tool(String id, String take, String hand) {
        return new StrangersJar()
                .source(
                        "Tool",
                        "public class Tool implements MeasureTool {\npublic String id() { return \"" + id
                                + "\"; }\npublic String label() { return \"" + id
                                + "\"; }\npublic String hint() { return \"a hint\"; }\n"
                                + "public ToolInHand take(ToolContext context) {\n" + take + "\nreturn new Hand(); }\n"
                                + "static class Hand implements ToolInHand {\n" + hand + "\n} }")
                .service(MeasureTool.class, "Tool");
    }

    /** Compiles against the class path of the test and writes the jar. */
    public Path write(Path jar) throws IOException {
        Files.createDirectories(jar.getParent());
        Path build = Files.createTempDirectory("stranger");
        List<String> words = new ArrayList<>(
                List.of("-proc:none", "-cp", System.getProperty("java.class.path"), "-d", build.toString()));
        for (Map.Entry<String, String> source : sources.entrySet()) {
            Path file = build.resolve(source.getKey() + ".java");
            Files.writeString(file, source.getValue());
            words.add(file.toString());
        }
        int status = ToolProvider.getSystemJavaCompiler().run(null, null, null, words.toArray(String[]::new));
        if (status != 0) {
            throw new IllegalStateException("the stranger's sources do not compile");
        }
        try (OutputStream out = Files.newOutputStream(jar);
                ZipOutputStream zip = new ZipOutputStream(out);
                Stream<Path> files = Files.walk(build)) {
            for (Map.Entry<String, String> service : services.entrySet()) {
                put(
                        zip,
                        "META-INF/services/" + service.getKey(),
                        service.getValue().getBytes(StandardCharsets.UTF_8));
            }
            for (Path file : files.filter(f -> f.toString().endsWith(".class")).toList()) {
                String name = build.relativize(file).toString().replace('\\', '/');
                if (!leftOut.contains(name)) {
                    put(zip, name, Files.readAllBytes(file));
                }
            }
        }
        return jar;
    }

    private static void put(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(bytes);
        zip.closeEntry();
    }
}
