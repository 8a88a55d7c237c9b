/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import oblate.base.ProblemException;
import picocli.CommandLine;

/** One run of the command line. */
public final class Program {
    private static final int REFUSED = 1;
    private static final int WRONG_USAGE = 2;

    private final Console console;
    private final Clock clock;
    private final Map<String, String> environment;

    /**
     * @param console the streams
     * @param clock for times in an archive's history
     * @param environment environment variables: {@code OBLATE_SETTINGS} names another settings folder, {@code OBLATE_TRACE} asks for stack traces
     */
    public Program(Console console, Clock clock, Map<String, String> environment) {
        this.console = console;
        this.clock = clock;
        this.environment = environment;
    }

    /** A run on the process's own streams, with its exit status. */
    public static int onProcess(String... args) {
        Console console = new Console(System.in, System.out, System.err, System.console() != null);
        return new Program(console, Clock.systemUTC(), System.getenv()).run(args);
    }

    /** Follows the words of a command line. */
    public int run(String... args) {
        if (!opensWindow(args)) {
            // Charts and maps are drawn without any display, also where one is named but not there; whoever asks first
            // settles it.
            System.setProperty("java.awt.headless", "true");
        }
        SettingsFolder folders = new SettingsFolder(environment);
        try (Services services = new Services(folders.path(), folders.cache(), clock, console::say)) {
            if (isPlainWindow(args)) {
                return openWindow(services, args);
            }
            CommandLine line = new CommandLine(new OblateCommand(services, console, line()));
            new Commands(services, console).addTo(line);
            line.setOut(new java.io.PrintWriter(console.out(), true, java.nio.charset.StandardCharsets.UTF_8));
            line.setErr(new java.io.PrintWriter(console.err(), true, java.nio.charset.StandardCharsets.UTF_8));
            line.setExecutionExceptionHandler((e, command, parsed) -> tell(e));
            line.setParameterExceptionHandler((e, words) -> {
                console.say("oblate: " + e.getMessage() + "; see: "
                        + e.getCommandLine().getCommandSpec().qualifiedName() + " --help");
                return WRONG_USAGE;
            });
            line.setCaseInsensitiveEnumValuesAllowed(true);
            int status = line.execute(args);
            console.out().flush();
            return status;
        }
    }

    /** Whether nothing but the window is asked for; making all commands for that would cost half a second. */
    private static boolean isPlainWindow(String... args) {
        return args.length == 0 || (args.length == 2 && args[0].equals("--archive") && !args[1].startsWith("-"));
    }

    @SuppressWarnings("checkstyle:IllegalCatch") // border: whatever happens is told in a sentence, as after a command
    private int openWindow(Services services, String... args) {
        try {
            return new OblateCommand(services, console, line()).open(args.length == 0 ? null : Path.of(args[1]));
        } catch (Exception e) {
            return tell(e);
        }
    }

    private static boolean opensWindow(String... args) {
        return args.length == 0 || args[0].startsWith("-") || List.of(args).contains("--open");
    }

    private LaunchHint line() {
        return new LaunchHint(environment.containsKey("DISPLAY") || !java.awt.GraphicsEnvironment.isHeadless());
    }

    private int tell(Exception e) {
        if (environment.containsKey("OBLATE_TRACE")) {
            e.printStackTrace(console.err());
        }
        if (e instanceof UsageException) {
            console.say("oblate: " + e.getMessage());
            return WRONG_USAGE;
        }
        if (e instanceof ProblemException) {
            console.say(e.getMessage());
            return REFUSED;
        }
        console.say("oblate: this should not have happened (" + e.getClass().getSimpleName() + ": " + e.getMessage()
                + "); run again with OBLATE_TRACE=1 and report what it prints");
        return REFUSED;
    }

    /**
     * What is known about the place the program runs at.
     *
     * @param windowPossible whether a window can be opened
     */
    record LaunchHint(boolean windowPossible) {}
}
