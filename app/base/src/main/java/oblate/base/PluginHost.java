/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Finds plug-ins: those on the program's class path, then those in jars of one folder, each jar in a class loader of its own.
 *
 * <p>One bad jar costs one jar: what cannot be loaded is listed in {@link #refusals()} with the reason, what throws later is switched off
 * ({@link #switches()}), and the rest goes on. Two plug-ins of one kind with the same id are both refused, except that a bundled one keeps its
 * id. What {@link #load} gives of a jar stands behind a guard that turns whatever it throws into one sentence. Safe for many threads.
 */
public final class PluginHost implements AutoCloseable {
    /** A stranger's constructor that takes longer than this is refused. */
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    private static final int LONGEST_TRACE = 20_000;
    private final List<PluginJar> jars = new ArrayList<>();
    private final List<PluginRefusal> refusals = new ArrayList<>();
    private final Map<Class<?>, Kind<?>> kinds = new LinkedHashMap<>();
    private final Map<Object, PluginEntry> entries = new IdentityHashMap<>();
    private final PluginSwitches switches;

    private final Duration patience;

    private PluginHost(Path folder, Duration patience) {
        switches = new PluginSwitches(folder);
        this.patience = patience;
    }

    /** Only what the class path brings. */
    public static PluginHost bundledOnly() {
        return new PluginHost(Path.of("no-plugins"), PATIENCE);
    }

    /**
     * What the class path brings, and the jars of a folder, in the order of their names.
     *
     * @param folder may be absent: then there are no jars
     */
    public static PluginHost withFolder(Path folder) {
        return withFolder(folder, PATIENCE);
    }

    static PluginHost withFolder(Path folder, Duration patience) {
        PluginHost host = new PluginHost(folder, patience);
        host.jars.addAll(PluginJar.openAll(folder, host.refusals));
        return host;
    }

    /**
     * All usable plug-ins of one kind, bundled ones first.
     *
     * @param point the extension point's interface
     * @param <T> kind of plug-in
     * @return unmodifiable list; the same at every call, until a jar is switched on that was off at the first. One that is switched off later is
     *     still in it and answers every call with a problem. What was refused is added to {@link #refusals()} at the first call.
     */
    @SuppressWarnings("unchecked") // the map's values are of their key's type
    public synchronized <T extends Plugin> List<T> load(Class<T> point) {
        Kind<T> kind = (Kind<T>) kinds.get(point);
        if (kind == null) {
            kind = new Kind<>(point);
            kinds.put(point, kind);
            kind.admit(PluginEntry.BUNDLED, PluginHost.class.getClassLoader());
        }
        for (PluginJar jar : jars) {
            if (switches.isOn(jar.name())) {
                kind.admit(jar.name(), jar.loader());
            }
        }
        return kind.usable;
    }

    /** What is known of a plug-in that {@link #load} gave. */
    public synchronized Optional<PluginEntry> entryOf(Object plugin) {
        return Optional.ofNullable(entries.get(plugin));
    }

    /** Entries of the plug-ins of one kind that are switched on. */
    public <T extends Plugin> List<PluginEntry> entries(Class<T> point) {
        return load(point).stream()
                .flatMap(p -> entryOf(p).stream())
                .filter(this::isOn)
                .toList();
    }

    /** Whether a plug-in may be used. */
    public boolean isOn(PluginEntry entry) {
        return entry.isBundled() || switches.isOn(entry.jar());
    }

    /** What is switched off, and the switches themselves. */
    public PluginSwitches switches() {
        return switches;
    }

    /** The jar whose code something was thrown in, or that gave the program what threw it; empty when it was the program's own. */
    public Optional<String> blame(Throwable thrown) {
        return PluginBlame.jarOf(thrown, jarNames());
    }

    /** The jar whose code a thread is in. */
    public Optional<String> blame(List<StackTraceElement> frames) {
        return PluginBlame.jarOf(frames, jarNames());
    }

    /** The jar that an object's class is from. */
    public Optional<String> jarOf(Object object) {
        return PluginBlame.loaderOf(object.getClass().getClassLoader(), jarNames());
    }

    /**
     * Tells of a failure of a plug-in that is known.
     *
     * @param doing completes "while …", e.g. "making its panel"
     */
    public PluginFault fault(PluginEntry entry, String doing, Throwable thrown) {
        return new PluginFault(entry.jar(), entry.label(), failed(doing, thrown), trace(thrown));
    }

    /**
     * Tells of a failure of which only the jar is known.
     *
     * @param doing completes "while …"
     */
    public PluginFault fault(String jar, String doing, Throwable thrown) {
        return new PluginFault(jar, labels(jar), failed(doing, thrown), trace(thrown));
    }

    /** Labels of what a jar has brought so far; its name while that is nothing. */
    public synchronized String labels(String jar) {
        String labels = entries.values().stream()
                .filter(e -> e.jar().equals(jar))
                .map(PluginEntry::label)
                .distinct()
                .sorted()
                .collect(Collectors.joining(", "));
        return labels.isEmpty() ? jar : labels;
    }

    /** Writes down that a jar does not come back, so that it is off at the next start if the program has to be ended. */
    public void suspect(String jar, String reason, List<StackTraceElement> frames) {
        String where = frames.stream().map(f -> "\tat " + f).collect(Collectors.joining("\n"));
        switches.suspect(new PluginFault(jar, labels(jar), reason, where));
    }

    /** Takes back what {@link #suspect} wrote: it has come back. */
    public void clearSuspicion() {
        switches.clear();
    }

    private static String failed(String doing, Throwable thrown) {
        String message = told(thrown::getMessage).lines().findFirst().orElse("");
        return "failed while " + doing + " (" + thrown.getClass().getSimpleName()
                + (message.isEmpty() ? "" : ": " + message) + ")";
    }

    private static String trace(Throwable thrown) {
        String text = told(() -> {
            StringWriter all = new StringWriter();
            thrown.printStackTrace(new PrintWriter(all));
            return all.toString();
        });
        return text.substring(0, Math.min(LONGEST_TRACE, text.length()));
    }

    @SuppressWarnings("checkstyle:IllegalCatch") // a stranger's exception may throw when asked for its words
    static String told(Supplier<String> words) {
        try {
            String told = words.get();
            return told == null ? "" : told;
        } catch (RuntimeException | Error e) {
            return "its words cannot be had";
        }
    }

    /** What could not be used so far, in the order it was met. */
    public synchronized List<PluginRefusal> refusals() {
        return List.copyOf(refusals);
    }

    /** Names of the jars that were opened. */
    public Collection<String> jarNames() {
        return jars.stream().map(PluginJar::name).toList();
    }

    /** Closes the jars; plug-ins from them must not be used afterwards. */
    @Override
    public void close() {
        jars.forEach(PluginJar::close);
    }

    /** Plug-ins of one kind, as they come in. */
    private final class Kind<T extends Plugin> {
        private final Class<T> point;
        private final List<String> asked = new ArrayList<>();
        private final Map<String, Found<T>> byId = new LinkedHashMap<>();
        private List<T> usable = List.of();

        Kind(Class<T> point) {
            this.point = point;
        }

        void admit(String jar, ClassLoader loader) {
            if (asked.contains(jar)) {
                return;
            }
            asked.add(jar);
            PluginDoor<T> door = new PluginDoor<>(point, jar, loader);
            PluginDoor.Outcome<T> outcome = jar.equals(PluginEntry.BUNDLED) ? door.open() : door.open(patience);
            refusals.addAll(outcome.refusals());
            outcome.arrivals().forEach(this::admit);
            usable = byId.values().stream()
                    .filter(Found::usable)
                    .map(Found::plugin)
                    .toList();
        }

        private void admit(PluginDoor.Arrival<T> arrival) {
            PluginEntry entry = arrival.entry();
            String id = entry.id();
            Found<T> other = byId.get(id);
            if (other == null) {
                T plugin = entry.isBundled()
                        ? arrival.plugin()
                        : PluginGuard.guarded(point, arrival.plugin(), entry, PluginHost.this);
                entries.put(plugin, entry);
                byId.put(id, new Found<>(plugin, entry, true));
                return;
            }
            refusals.add(new PluginRefusal(
                    entry.jar(),
                    arrival.plugin().getClass().getName(),
                    "its id \"" + id + "\" is already that of a plug-in in "
                            + other.entry().jar() + "; remove one of the two"));
            if (!other.entry().isBundled() && other.usable()) {
                refusals.add(new PluginRefusal(
                        other.entry().jar(),
                        other.entry().label(),
                        "its id \"" + id + "\" is also that of a plug-in in " + entry.jar()
                                + "; remove one of the two"));
                byId.put(id, new Found<>(other.plugin(), other.entry(), false));
                entries.remove(other.plugin());
            }
        }
    }

    private record Found<T>(T plugin, PluginEntry entry, boolean usable) {}
}
