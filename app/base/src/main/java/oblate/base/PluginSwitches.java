/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Which jars with plug-ins are switched off, and why; kept in a file of the plug-in folder, so that what failed stays off. Safe for many threads.
 *
 * <p>A file that cannot be read or written costs only the memory of it.
 */
public final class PluginSwitches {
    private static final String FILE = "switched-off.properties";
    private final Path folder;
    private final Map<String, PluginFault> off = new TreeMap<>();
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

    /**
     * @param folder plug-in folder; need not exist
     */
    PluginSwitches(Path folder) {
        this.folder = folder;
        Properties kept = new Properties();
        try (InputStream in = Files.newInputStream(folder.resolve(FILE))) {
            kept.load(in);
        } catch (IOException | IllegalArgumentException e) {
            kept.clear();
        }
        for (String key : kept.stringPropertyNames()) {
            if (key.endsWith(".reason")) {
                String jar = key.substring(0, key.length() - ".reason".length());
                off.put(
                        jar,
                        new PluginFault(
                                jar,
                                kept.getProperty(jar + ".plugin", jar),
                                kept.getProperty(key),
                                kept.getProperty(jar + ".details", "")));
            }
        }
    }

    /** Whether a jar may be used. */
    public synchronized boolean isOn(String jar) {
        return !off.containsKey(jar);
    }

    /** Why a jar is switched off; empty when it is on. */
    public synchronized Optional<PluginFault> whyOff(String jar) {
        return Optional.ofNullable(off.get(jar));
    }

    /** All that is switched off, by the names of the jars. */
    public synchronized List<PluginFault> off() {
        return List.copyOf(off.values());
    }

    /** Switches a jar off; the first reason stands. Returns false when it was off already. */
    public boolean switchOff(PluginFault why) {
        synchronized (this) {
            if (off.putIfAbsent(why.jar(), why) != null) {
                return false;
            }
            keep();
        }
        tell();
        return true;
    }

    /** Switches a jar on again. */
    public void switchOn(String jar) {
        synchronized (this) {
            if (off.remove(jar) == null) {
                return;
            }
            keep();
        }
        tell();
    }

    /** Writes down that a jar is off from the next start unless {@link #clear} comes first; it stays on until then. */
    void suspect(PluginFault why) {
        synchronized (this) {
            if (off.containsKey(why.jar())) {
                return;
            }
            off.put(why.jar(), why);
            keep();
            off.remove(why.jar());
        }
    }

    /** Takes back every suspicion. */
    synchronized void clear() {
        keep();
    }

    /** Called after every switching, on the thread that did it. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    private void tell() {
        listeners.forEach(Runnable::run);
    }

    private void keep() {
        Path file = folder.resolve(FILE);
        Properties kept = new Properties();
        for (PluginFault fault : off.values()) {
            kept.setProperty(fault.jar() + ".plugin", fault.plugin());
            kept.setProperty(fault.jar() + ".reason", fault.reason());
            kept.setProperty(fault.jar() + ".details", fault.details());
        }
        try {
            if (kept.isEmpty()) {
                Files.deleteIfExists(file);
                return;
            }
            Path fresh = folder.resolve(FILE + ".new");
            try (OutputStream out = Files.newOutputStream(fresh)) {
                kept.store(out, "Plug-ins that are switched off; delete this file to switch all of them on");
            }
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            System.getLogger(PluginSwitches.class.getName())
                    .log(System.Logger.Level.WARNING, "what is switched off is not kept: " + e.getMessage());
        }
    }
}
