/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Starts the distribution on an archive, without and with shared classes, and a bare frame in the same look, in turn, and prints the medians and
 * their ratio.
 */
public final class StartTimes {
    private final Path distribution;
    private final Path options;
    private final Path archive;
    private final Path work;

    private StartTimes(Path distribution, Path options, Path archive, Path work) {
        this.distribution = distribution;
        this.options = options;
        this.archive = archive;
        this.work = work;
    }

    /**
     * Measures and prints.
     *
     * @param words folder of the distribution, the start script's file of options, folder of an archive with more pictures than the window shows,
     *     number of runs
     */
    public static void main(String[] words) throws IOException, InterruptedException {
        new StartTimes(
                        Path.of(words[0]).toAbsolutePath(),
                        Path.of(words[1]).toAbsolutePath(),
                        Path.of(words[2]),
                        Files.createTempDirectory("start"))
                .run(Integer.parseInt(words[3]));
    }

    private void run(int runs) throws IOException, InterruptedException {
        Path shared = work.resolve("oblate.jsa");
        // Twice: the first start also unpacks what is kept unpacked.
        start(List.of(), "program");
        start(List.of("-XX:ArchiveClassesAtExit=" + shared), "program");
        Map<String, List<String>> cases = new LinkedHashMap<>();
        cases.put("bare frame", List.of());
        cases.put("window", List.of());
        cases.put("window, shared classes", List.of("-XX:SharedArchiveFile=" + shared));
        Map<String, List<Double>> times = new LinkedHashMap<>();
        for (int i = 0; i < runs; i++) {
            for (Map.Entry<String, List<String>> one : cases.entrySet()) {
                double ms = start(one.getValue(), one.getKey().startsWith("bare") ? "bare" : "program");
                times.computeIfAbsent(one.getKey(), k -> new ArrayList<>()).add(ms);
            }
        }
        double bare = Figures.of(times.get("bare frame")).median();
        times.forEach((name, all) -> System.out.printf(
                Locale.ROOT,
                "%-24s %s, %.2f of a bare frame%n",
                name,
                Figures.of(all),
                Figures.of(all).median() / bare));
    }

    /** Starts a process and gives the time until it can be used (ms). */
    private double start(List<String> options, String what) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        words.add(what.equals("bare") ? "-XX:+UseSerialGC" : "@" + this.options);
        words.addAll(options);
        String program = distribution.resolve("oblate.jar").toString();
        String probe = probeJar();
        if (what.equals("bare")) {
            words.addAll(List.of("-cp", flatLaf() + File.pathSeparator + probe, StartProbe.class.getName(), "bare"));
        } else {
            words.addAll(List.of(
                    "-cp",
                    program + File.pathSeparator + probe,
                    StartProbe.class.getName(),
                    "program",
                    "--archive",
                    archive.toString()));
        }
        ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
        builder.environment().put("OBLATE_SETTINGS", work.resolve("settings").toString());
        long begun = System.currentTimeMillis();
        Process process = builder.start();
        double usable = -1;
        StringBuilder said = new StringBuilder();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                said.append(line).append('\n');
                if (line.startsWith("usable ")) {
                    usable = Long.parseLong(line.substring(7)) - begun;
                }
            }
        }
        process.waitFor();
        if (usable < 0) {
            throw new IllegalStateException("no window came: " + said);
        }
        return usable;
    }

    /** The jar, or folder of classes, this class is in. */
    private static String probeJar() {
        try {
            return Path.of(StartTimes.class
                            .getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (java.net.URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private String flatLaf() throws IOException {
        try (var jars = Files.list(distribution.resolve("lib"))) {
            return jars.map(Path::toString)
                    .filter(name -> name.matches(".*flatlaf-\\d.*\\.jar"))
                    .findFirst()
                    .orElseThrow();
        }
    }
}
