/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The host against good, bad and clashing jars. Public, so that plug-ins compiled in the tests see its extension point. */
public class PluginHostTest {

    /** Extension point of this test. */
    public interface Greeter extends Plugin {
        String greet();

        /** One that needs an argument, so that it is not asked at the door. */
        default String greet(String whom) {
            return "hello " + whom;
        }
    }

    @TempDir
    Path work;

    @Test
    void absentFolderGivesNoPlugins() {
        try (PluginHost host = PluginHost.withFolder(work.resolve("nothing"))) {
            assertThat(host.load(Greeter.class)).isEmpty();
            assertThat(host.refusals()).isEmpty();
        }
    }

    @Test
    void goodJarIsUsedAndBadOnesCostOnlyThemselves() throws IOException {
        jar("a-good.jar", "good.Hello", greeter("good", "Hello", "hello", ""), "good.Hello");
        jar(
                "b-throws.jar",
                "bad.Throws",
                greeter("bad", "Throws", "throws", "public Throws() { throw new IllegalStateException(\"no\"); }"),
                "bad.Throws");
        jar("c-missing.jar", "lone.Class", greeter("lone", "Class", "lone", ""), "not.There");
        Files.write(work.resolve("d-junk.jar"), new byte[] {1, 2, 3});
        jar("e-silent.jar", "quiet.Quiet", greeter("quiet", "Quiet", "quiet", ""), null);

        try (PluginHost host = PluginHost.withFolder(work)) {
            List<Greeter> found = host.load(Greeter.class);
            assertThat(found).extracting(Greeter::id).containsExactly("hello");
            assertThat(found.get(0).greet()).isEqualTo("hello from Hello");
            assertThat(host.refusals())
                    .extracting(PluginRefusal::where)
                    .containsExactlyInAnyOrder("b-throws.jar", "c-missing.jar", "d-junk.jar", "e-silent.jar");
            assertThat(host.load(Greeter.class)).isSameAs(found);
            assertThat(host.refusals()).hasSize(4);
        }
    }

    @Test
    void twoJarsWithOneIdAreBothRefused() throws IOException {
        jar("a.jar", "one.One", greeter("one", "One", "same", ""), "one.One");
        jar("b.jar", "two.Two", greeter("two", "Two", "same", ""), "two.Two");
        try (PluginHost host = PluginHost.withFolder(work)) {
            assertThat(host.load(Greeter.class)).isEmpty();
            assertThat(host.refusals()).extracting(PluginRefusal::where).containsExactlyInAnyOrder("a.jar", "b.jar");
            assertThat(host.refusals()).allMatch(r -> r.reason().contains("same"));
        }
    }

    @Test
    void badIdIsRefused() throws IOException {
        jar("a.jar", "one.One", greeter("one", "One", "Not An Id", ""), "one.One");
        try (PluginHost host = PluginHost.withFolder(work)) {
            assertThat(host.load(Greeter.class)).isEmpty();
            assertThat(host.refusals())
                    .singleElement()
                    .extracting(PluginRefusal::reason)
                    .asString()
                    .contains("Not An Id");
        }
    }

    @Test
    void whatThrowsLaterIsNamedAndStaysOffUntilItIsSwitchedOn() throws IOException {
        String bad = "public String greet(String whom) { throw new IllegalStateException(\"mute for \" + whom); }";
        jar("bad.jar", "bad.Bad", greeter("bad", "Bad", "bad", bad), "bad.Bad");
        jar("fine.jar", "fine.Fine", greeter("fine", "Fine", "fine", ""), "fine.Fine");
        try (PluginHost host = PluginHost.withFolder(work)) {
            Greeter greeter = host.load(Greeter.class).get(0);
            assertThatThrownBy(() -> greeter.greet("Ann"))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(PluginProblem.FAILED))
                    .hasMessageContaining("\"Bad\" in bad.jar")
                    .hasMessageContaining("mute for Ann");
            assertThatThrownBy(() -> greeter.greet("Ben"))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(PluginProblem.SWITCHED_OFF));
            assertThat(greeter.label()).isEqualTo("Bad");
            assertThat(host.load(Greeter.class).get(1).greet("Cleo")).isEqualTo("hello Cleo");
        }
        try (PluginHost host = PluginHost.withFolder(work)) {
            assertThat(host.load(Greeter.class)).extracting(Greeter::id).containsExactly("fine");
            assertThat(host.switches().off()).singleElement().satisfies(f -> assertThat(f.text())
                    .contains("bad.jar", "mute for Ann", "at plugin bad.jar//bad.Bad"));
            host.switches().switchOn("bad.jar");
            assertThat(host.load(Greeter.class)).extracting(Greeter::id).containsExactly("fine", "bad");
        }
        assertThat(work.resolve("switched-off.properties")).doesNotExist();
    }

    @Test
    void whatIsNotMadeInTimeIsRefused() throws IOException {
        String slow = "public Slow() throws InterruptedException { Thread.sleep(60000); }";
        jar("slow.jar", "slow.Slow", greeter("slow", "Slow", "slow", slow), "slow.Slow");
        jar("fine.jar", "fine.Fine", greeter("fine", "Fine", "fine", ""), "fine.Fine");
        try (PluginHost host = PluginHost.withFolder(work, java.time.Duration.ofMillis(1500))) {
            assertThat(host.load(Greeter.class)).extracting(Greeter::id).containsExactly("fine");
            assertThat(host.refusals()).singleElement().satisfies(r -> assertThat(r.toString())
                    .contains("slow.jar", "did not come back"));
        }
    }

    @Test
    void whatThrewSomethingIsFoundFromItsFrames() throws IOException {
        String bad = "public String greet(String whom) { return String.valueOf(whom.charAt(9)); }";
        jar("bad.jar", "bad.Bad", greeter("bad", "Bad", "bad", bad), "bad.Bad");
        try (PluginHost host = PluginHost.withFolder(work)) {
            Greeter greeter = host.load(Greeter.class).get(0);
            assertThatThrownBy(() -> greeter.greet("x"))
                    .satisfies(e -> assertThat(host.blame(new IllegalStateException("outer", e.getCause())))
                            .contains("bad.jar"));
            assertThat(host.blame(new IllegalStateException("ours"))).isEmpty();
        }
    }

    private static String classPath() {
        return Stream.of(PluginHost.class, PluginHostTest.class)
                .map(c -> Path.of(URI.create(c.getProtectionDomain()
                                .getCodeSource()
                                .getLocation()
                                .toString()))
                        .toString())
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static String greeter(String pack, String name, String id, String constructor) {
        return "package " + pack + "; public class " + name + " implements oblate.base.PluginHostTest.Greeter { "
                + constructor
                + " public String id() { return \"" + id + "\"; } public String label() { return \"" + name
                + "\"; } public String greet() { return \"hello from " + name + "\"; } }";
    }

    private void jar(String file, String className, String source, String provider) throws IOException {
        Path build = Files.createTempDirectory(work, "build");
        Path java = build.resolve(className.substring(className.lastIndexOf('.') + 1) + ".java");
        Files.writeString(java, source);
        int status = ToolProvider.getSystemJavaCompiler()
                .run(null, null, null, "-proc:none", "-cp", classPath(), "-d", build.toString(), java.toString());
        assertThat(status).isZero();
        String entry = className.replace('.', '/') + ".class";
        Map<String, byte[]> entries = provider == null
                ? Map.of(entry, Files.readAllBytes(build.resolve(entry)))
                : Map.of(
                        entry,
                        Files.readAllBytes(build.resolve(entry)),
                        "META-INF/services/oblate.base.PluginHostTest$Greeter",
                        provider.getBytes(StandardCharsets.UTF_8));
        try (OutputStream out = Files.newOutputStream(work.resolve(file));
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> e : entries.entrySet()) {
                zip.putNextEntry(new ZipEntry(e.getKey()));
                zip.write(e.getValue());
            }
        }
    }
}
