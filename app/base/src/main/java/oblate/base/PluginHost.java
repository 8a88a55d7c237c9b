/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.ServiceConfigurationError;
import java.util.ServiceLoader;

/**
 * Finds plug-ins: those on the program's class path, then those in jars of one folder, each jar in a class loader of its own.
 *
 * <p>One bad jar costs one plug-in: what cannot be loaded is listed in {@link #refusals()} with the reason, and the rest goes on. Two plug-ins
 * of one kind with the same id are both refused, except that a bundled one keeps its id. Safe for many threads.
 */
public final class PluginHost implements AutoCloseable {
    private final List<PluginJar> jars = new ArrayList<>();
    private final List<PluginRefusal> refusals = new ArrayList<>();
    private final Map<Class<?>, List<?>> loaded = new LinkedHashMap<>();

    private PluginHost() {}

    /** Only what the class path brings. */
    public static PluginHost bundledOnly() {
        return new PluginHost();
    }

    /**
     * What the class path brings, and the jars of a folder, in the order of their names.
     *
     * @param folder may be absent: then there are no jars
     */
    public static PluginHost withFolder(Path folder) {
        PluginHost host = new PluginHost();
        host.jars.addAll(PluginJar.openAll(folder, host.refusals));
        return host;
    }

    /**
     * All usable plug-ins of one kind, bundled ones first.
     *
     * @param point the extension point's interface
     * @param <T> kind of plug-in
     * @return unmodifiable list, the same at every call; what was refused is added to {@link #refusals()} at the first
     */
    @SuppressWarnings("unchecked") // the map's values are lists of their key's type
    public synchronized <T extends Plugin> List<T> load(Class<T> point) {
        return (List<T>) loaded.computeIfAbsent(point, p -> find(point));
    }

    private <T extends Plugin> List<T> find(Class<T> point) {
        Map<String, Found<T>> byId = new LinkedHashMap<>();
        collect(point, PluginHost.class.getClassLoader(), "bundled", byId);
        int bundled = byId.size();
        for (PluginJar jar : jars) {
            collect(point, jar.loader(), jar.name(), byId);
        }
        List<T> usable = new ArrayList<>(Math.max(bundled, byId.size()));
        for (Found<T> found : byId.values()) {
            if (found.usable()) {
                usable.add(found.plugin());
            }
        }
        return List.copyOf(usable);
    }

    private <T extends Plugin> void collect(
            Class<T> point, ClassLoader loader, String where, Map<String, Found<T>> byId) {
        var providers = ServiceLoader.load(point, loader).stream().iterator();
        while (true) {
            try {
                if (!providers.hasNext()) {
                    return;
                }
                ServiceLoader.Provider<T> provider = providers.next();
                // A child loader lists its parents' providers too; those were seen already.
                if (!where.equals("bundled") && provider.type().getClassLoader() != loader) {
                    continue;
                }
                admit(provider.get(), where, byId);
            } catch (ServiceConfigurationError | LinkageError e) {
                refusals.add(new PluginRefusal(where, point.getSimpleName(), reason(e)));
            }
        }
    }

    @SuppressWarnings(
            "checkstyle:IllegalCatch") // border to a stranger's code: whatever its id() throws costs only itself
    private <T extends Plugin> void admit(T plugin, String where, Map<String, Found<T>> byId) {
        String name = plugin.getClass().getName();
        String id;
        try {
            id = plugin.id();
        } catch (RuntimeException e) {
            refusals.add(new PluginRefusal(where, name, "its id() threw " + e));
            return;
        }
        if (id == null || !id.matches("[a-z0-9][a-z0-9-]*")) {
            refusals.add(new PluginRefusal(
                    where,
                    name,
                    "its id \"" + id + "\" is not lower-case letters, digits and hyphens; give it one that is"));
            return;
        }
        Found<T> other = byId.get(id);
        if (other == null) {
            byId.put(id, new Found<>(plugin, where, true));
            return;
        }
        refusals.add(new PluginRefusal(
                where,
                name,
                "its id \"" + id + "\" is already that of a plug-in in " + other.where() + "; remove one of the two"));
        if (!other.where().equals("bundled") && other.usable()) {
            refusals.add(new PluginRefusal(
                    other.where(),
                    other.plugin().getClass().getName(),
                    "its id \"" + id + "\" is also that of a plug-in in " + where + "; remove one of the two"));
            byId.put(id, new Found<>(other.plugin(), other.where(), false));
        }
    }

    private static String reason(Throwable e) {
        Throwable root = e.getCause() == null ? e : e.getCause();
        return root.getClass().getSimpleName() + ": " + root.getMessage();
    }

    /** What could not be used so far, in the order it was met. */
    public synchronized List<PluginRefusal> refusals() {
        return List.copyOf(refusals);
    }

    /** Names of the jars that were opened. */
    public List<String> jarNames() {
        return jars.stream().map(PluginJar::name).toList();
    }

    /** Closes the jars; plug-ins from them must not be used afterwards. */
    @Override
    public void close() {
        jars.forEach(PluginJar::close);
    }

    private record Found<T>(T plugin, String where, boolean usable) {}
}
