/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Takes plug-ins of one kind out of one class loader: makes them, and asks each once what it says about itself (every method of the extension
 * point that needs no argument), so that one that cannot answer is refused at the door. Not for many threads.
 *
 * @param <T> kind of plug-in
 */
final class PluginDoor<T extends Plugin> {
    private static final String ID = "[a-z0-9][a-z0-9-]*";
    private final Class<T> point;
    private final String jar;
    private final ClassLoader loader;

    PluginDoor(Class<T> point, String jar, ClassLoader loader) {
        this.point = point;
        this.jar = jar;
        this.loader = loader;
    }

    /**
     * One that was let in.
     *
     * @param plugin itself
     * @param entry what it is
     */
    record Arrival<T>(T plugin, PluginEntry entry) {}

    /**
     * Who came and who was refused.
     *
     * @param arrivals in the order they are named
     * @param refusals with the reason
     */
    record Outcome<T>(List<Arrival<T>> arrivals, List<PluginRefusal> refusals) {}

    /** Opens the door here and now. */
    Outcome<T> open() {
        Outcome<T> outcome = new Outcome<>(new ArrayList<>(), new ArrayList<>());
        collect(outcome);
        return outcome;
    }

    /** Opens the door for so long; one that does not come back is refused, and its thread left to itself. */
    Outcome<T> open(Duration patience) {
        Outcome<T> outcome = new Outcome<>(new ArrayList<>(), new ArrayList<>());
        CountDownLatch done = new CountDownLatch(1);
        Thread thread = new Thread(
                () -> {
                    try {
                        collect(outcome);
                    } finally {
                        done.countDown();
                    }
                },
                "oblate-door " + jar);
        thread.setDaemon(true);
        thread.start();
        try {
            if (done.await(patience.toMillis(), TimeUnit.MILLISECONDS)) {
                return outcome;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return new Outcome<>(
                List.of(),
                List.of(new PluginRefusal(
                        jar,
                        point.getSimpleName(),
                        "did not come back within " + patience.toSeconds()
                                + " s of being made; take the jar away and start the program again")));
    }

    @SuppressWarnings(
            "checkstyle:IllegalCatch") // border to a stranger's code: whatever making it throws costs only itself
    private void collect(Outcome<T> outcome) {
        var providers = ServiceLoader.load(point, loader).stream().iterator();
        while (true) {
            try {
                if (!providers.hasNext()) {
                    return;
                }
                ServiceLoader.Provider<T> provider = providers.next();
                // A child loader lists its parents' providers too; those were seen already.
                if (jar.equals(PluginEntry.BUNDLED) || provider.type().getClassLoader() == loader) {
                    T plugin = provider.get();
                    admit(plugin, outcome);
                }
            } catch (RuntimeException | Error e) {
                outcome.refusals().add(new PluginRefusal(jar, point.getSimpleName(), reason(e)));
            }
        }
    }

    private void admit(T plugin, Outcome<T> outcome) {
        String name = plugin.getClass().getName();
        Object id = Optional.empty();
        Object label = "";
        for (Method method : point.getMethods()) {
            boolean question = method.getParameterCount() == 0
                    && !java.lang.reflect.Modifier.isStatic(method.getModifiers())
                    && method.getReturnType() != void.class;
            // What ships is known to answer; asking it would only load classes before they are needed.
            boolean needed = List.of("id", "label").contains(method.getName());
            if (!question || jar.equals(PluginEntry.BUNDLED) && !needed) {
                continue;
            }
            Object answer;
            try {
                answer = method.invoke(plugin);
            } catch (InvocationTargetException e) {
                refuse(outcome, name, "its " + method.getName() + "() threw " + reason(e));
                return;
            } catch (IllegalAccessException e) {
                refuse(outcome, name, "its " + method.getName() + "() cannot be called: " + e.getMessage());
                return;
            }
            if (answer == null) {
                refuse(outcome, name, "its " + method.getName() + "() gives nothing");
                return;
            }
            id = method.getName().equals("id") ? answer : id;
            label = method.getName().equals("label") ? answer : label;
        }
        if (!id.toString().matches(ID)) {
            refuse(
                    outcome,
                    name,
                    "its id \"" + id + "\" is not lower-case letters, digits and hyphens; give it one that is");
            return;
        }
        outcome.arrivals().add(new Arrival<>(plugin, new PluginEntry(point, id.toString(), label.toString(), jar)));
    }

    private void refuse(Outcome<T> outcome, String name, String reason) {
        outcome.refusals().add(new PluginRefusal(jar, name, reason));
    }

    private static String reason(Throwable e) {
        Throwable root = e;
        while (root.getCause() != null && root.getCause() != root) {
            root = root.getCause();
        }
        Throwable told = root;
        return told.getClass().getSimpleName() + ": " + PluginHost.told(told::getMessage);
    }
}
