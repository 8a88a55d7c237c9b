/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.net.URL;
import java.security.CodeSource;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import oblate.base.Plugin;
import oblate.base.PluginHost;
import oblate.base.PluginRefusal;

/** All plug-ins in use, with their jars, and those that were refused, with the reason. On the event thread only. */
public final class PluginRoll {
    /**
     * A plug-in in use.
     *
     * @param kind what it adds, in words
     * @param id its id
     * @param label its label
     * @param jar file it came from, or "bundled"
     */
    public record Entry(String kind, String id, String label, String jar) {}

    private final PluginHost host;
    private final List<Entry> entries = new ArrayList<>();
    private final List<PluginRefusal> panelRefusals = new ArrayList<>();
    private final List<Runnable> listeners = new ArrayList<>();

    PluginRoll(PluginHost host) {
        this.host = host;
    }

    void add(String kind, List<? extends Plugin> plugins) {
        for (Plugin plugin : plugins) {
            entries.add(new Entry(kind, plugin.id(), plugin.label(), jarOf(plugin)));
        }
    }

    void refuse(WorkbenchPanel panel, Throwable why) {
        entries.removeIf(e -> e.kind().equals("panel") && e.id().equals(panel.id()));
        String reason = "could not make its panel: " + why.getClass().getSimpleName()
                + (why.getMessage() == null ? "" : ": " + why.getMessage());
        panelRefusals.add(new PluginRefusal(jarOf(panel), panel.label(), reason));
        List.copyOf(listeners).forEach(Runnable::run);
    }

    /** Plug-ins in use, by kind. */
    public List<Entry> entries() {
        return List.copyOf(entries);
    }

    /** What was refused, each once. */
    public List<PluginRefusal> refusals() {
        Set<PluginRefusal> all = new LinkedHashSet<>(host.refusals());
        all.addAll(panelRefusals);
        return List.copyOf(all);
    }

    /** Called when a panel was refused later on. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    private String jarOf(Plugin plugin) {
        CodeSource source = plugin.getClass().getProtectionDomain().getCodeSource();
        URL url = source == null ? null : source.getLocation();
        String name = url == null ? "" : url.getPath().replaceAll(".*/", "");
        return host.jarNames().contains(name) ? name : "bundled";
    }
}
