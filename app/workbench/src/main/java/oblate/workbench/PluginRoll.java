/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import oblate.base.Plugin;
import oblate.base.PluginEntry;
import oblate.base.PluginFault;
import oblate.base.PluginHost;
import oblate.base.PluginProblem;
import oblate.base.PluginRefusal;
import oblate.base.ProblemException;
import oblate.disc.MapFormat;
import oblate.image.ImageFormat;
import oblate.report.ChartWriter;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.workbench.words.Texts;

/**
 * All plug-ins in use, with their jars, those that were refused, with the reason, and those that failed and were switched off; and the way to
 * ask a plug-in something so that a failure costs only itself. On the event thread only.
 */
public final class PluginRoll {
    private static final Texts TEXTS = Texts.of(PluginRoll.class);
    private static final Map<String, Class<? extends Plugin>> KINDS = kinds();

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
    private final Consumer<String> say;
    private final Map<String, PluginFault> bundledFaults = new LinkedHashMap<>();
    private final Set<PluginFault> told;
    private final Listeners listeners = new Listeners();

    /**
     * @param say shows one sentence to a person
     */
    PluginRoll(PluginHost host, Consumer<String> say) {
        this.host = host;
        this.say = say;
        told = new LinkedHashSet<>(host.switches().off());
    }

    private static Map<String, Class<? extends Plugin>> kinds() {
        Map<String, Class<? extends Plugin>> kinds = new LinkedHashMap<>();
        kinds.put(TEXTS.text("kind.planet"), PlanetModel.class);
        kinds.put(TEXTS.text("kind.picture.format"), ImageFormat.class);
        kinds.put(TEXTS.text("kind.report.format"), ReportFormat.class);
        kinds.put(TEXTS.text("kind.chart.writer"), ChartWriter.class);
        kinds.put(TEXTS.text("kind.map.format"), MapFormat.class);
        kinds.put(TEXTS.text("kind.panel"), WorkbenchPanel.class);
        kinds.put(TEXTS.text("kind.measuring.tool"), MeasureTool.class);
        return java.util.Collections.unmodifiableMap(kinds);
    }

    /** Plug-ins in use, by kind. Makes those that were not needed before. */
    public List<Entry> entries() {
        List<Entry> all = new ArrayList<>();
        KINDS.forEach((kind, point) -> {
            for (PluginEntry e : host.entries(point)) {
                if (!bundledFaults.containsKey(key(e))) {
                    all.add(new Entry(kind, e.id(), e.label(), e.jar()));
                }
            }
        });
        return all;
    }

    /** What was refused, each once. */
    public List<PluginRefusal> refusals() {
        Set<PluginRefusal> all = new LinkedHashSet<>(host.refusals());
        return List.copyOf(all);
    }

    /** What failed, or was switched off by hand, and is off now. */
    public List<PluginFault> faults() {
        List<PluginFault> all = new ArrayList<>(bundledFaults.values());
        all.addAll(host.switches().off());
        return all;
    }

    /** Measuring tools that are switched on. */
    public List<MeasureTool> tools() {
        return usable(MeasureTool.class);
    }

    /** Panels that are switched on, in the order of the rail. */
    List<WorkbenchPanel> panels() {
        Map<WorkbenchPanel, Integer> orders = new LinkedHashMap<>();
        for (WorkbenchPanel panel : usable(WorkbenchPanel.class)) {
            ask(panel, TEXTS.text("doing.place"), panel::order).ifPresent(order -> orders.put(panel, order));
        }
        return orders.entrySet().stream()
                .sorted(Map.Entry.<WorkbenchPanel, Integer>comparingByValue()
                        .thenComparing(e -> label(e.getKey()), Comparator.naturalOrder()))
                .map(Map.Entry::getKey)
                .toList();
    }

    private <T extends Plugin> List<T> usable(Class<T> point) {
        return host.load(point).stream()
                .filter(p -> host.entryOf(p)
                        .filter(e -> host.isOn(e) && !bundledFaults.containsKey(key(e)))
                        .isPresent())
                .toList();
    }

    /** Whether a plug-in came in a jar of the plug-in folder. */
    boolean isStranger(Plugin plugin) {
        return host.entryOf(plugin).filter(e -> !e.isBundled()).isPresent();
    }

    /** Label of a plug-in as it was when it came in. */
    String label(Plugin plugin) {
        return host.entryOf(plugin).map(PluginEntry::label).orElse("");
    }

    private static String key(PluginEntry entry) {
        return entry.point().getName() + " " + entry.id();
    }

    /**
     * Asks a plug-in something. Whatever it throws switches it off and is told in one sentence.
     *
     * @param doing what it is asked, completing "failed while …"
     * @return its answer; empty when it failed
     */
    @SuppressWarnings("checkstyle:IllegalCatch") // border to a stranger's code: whatever it throws costs only itself
    public <T> Optional<T> ask(Plugin plugin, String doing, Supplier<T> question) {
        try {
            return Optional.ofNullable(question.get());
        } catch (RuntimeException | Error e) {
            if (!(e instanceof ProblemException known && known.kind() instanceof PluginProblem)) {
                host.entryOf(plugin).ifPresent(entry -> failed(host.fault(entry, doing, e), key(entry)));
            }
            return Optional.empty();
        }
    }

    /** Tells a plug-in something, as {@link #ask}. */
    public void tell(Plugin plugin, String doing, Runnable deed) {
        ask(plugin, doing, () -> {
            deed.run();
            return null;
        });
    }

    /**
     * Hears of something nobody caught.
     *
     * @return the sentence that tells of it when it came from a jar's code
     */
    Optional<String> heard(Throwable thrown, String doing) {
        return host.blame(thrown).map(jar -> {
            PluginFault fault = host.fault(jar, doing, thrown);
            failed(fault, jar);
            return fault.sentence();
        });
    }

    private void failed(PluginFault fault, String bundledKey) {
        System.getLogger(PluginRoll.class.getName()).log(System.Logger.Level.WARNING, fault.text());
        if (fault.jar().equals(PluginEntry.BUNDLED)) {
            bundledFaults.put(bundledKey, fault);
            say.accept(fault.sentence());
            listeners.tell();
        } else {
            host.switches().switchOff(fault);
        }
    }

    /** Switches a jar off, because a person wants it. */
    public void switchOff(String jar) {
        host.switches().switchOff(new PluginFault(jar, host.labels(jar), TEXTS.text("plugin.off.by.hand"), ""));
    }

    /** Switches on again what failed: panels and tools at once, the rest at the next start unless it was on at this one. */
    public void switchOn(PluginFault fault) {
        if (bundledFaults.values().remove(fault)) {
            listeners.tell();
        } else {
            host.switches().switchOn(fault.jar());
        }
    }

    /** Called after a plug-in was switched off or on. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    /** Failures since the last call or the start; what was switched off by hand needs no telling. */
    List<PluginFault> untold() {
        List<PluginFault> fresh = host.switches().off().stream()
                .filter(f -> !f.details().isEmpty() && !told.contains(f))
                .toList();
        told.clear();
        told.addAll(host.switches().off());
        return fresh;
    }

    /** The switches have been turned. */
    void turned() {
        listeners.tell();
    }
}
