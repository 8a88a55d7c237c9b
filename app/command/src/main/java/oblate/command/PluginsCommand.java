/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import oblate.base.Plugin;
import oblate.base.PluginEntry;
import oblate.base.PluginFault;
import oblate.base.PluginRefusal;
import oblate.disc.MapFormat;
import oblate.image.ImageFormat;
import oblate.report.ChartWriter;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.workbench.MeasureTool;
import oblate.workbench.WorkbenchPanel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code oblate plugins}. */
@Command(
        name = "plugins",
        mixinStandardHelpOptions = true,
        description = {
            "Lists planets, picture formats, report, chart and map formats, panels, measuring tools and commands",
            "that are plugged in, and what was refused or switched off with the reason. Jars go into the plugins",
            "folder of the settings. A jar whose plug-in failed is switched off until you switch it on again."
        })
final class PluginsCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Mixin
    private OutputOptions output;

    @Option(
            names = "--on",
            paramLabel = "JAR",
            description = "Switches a jar of the plugins folder on again, by its file name.")
    private String on;

    @Option(
            names = "--off",
            paramLabel = "JAR",
            description = "Switches a jar of the plugins folder off, by its file name.")
    private String off;

    PluginsCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    private record Row(String kind, String id, String label, String where, String state) {}

    @Override
    public Integer call() {
        turn();
        List<Row> rows = new ArrayList<>();
        add(rows, "planet", PlanetModel.class);
        add(rows, "picture format", ImageFormat.class);
        add(rows, "map format", MapFormat.class);
        add(rows, "report format", ReportFormat.class);
        add(rows, "chart writer", ChartWriter.class);
        add(rows, "panel", WorkbenchPanel.class);
        add(rows, "measuring tool", MeasureTool.class);
        add(rows, "command", Subcommand.class);
        for (PluginRefusal refusal : services.plugins().refusals()) {
            rows.add(new Row("refused", refusal.what(), "", refusal.where(), refusal.reason()));
        }
        for (PluginFault fault : services.plugins().switches().off()) {
            rows.add(new Row("switched off", fault.plugin(), "", fault.jar(), fault.reason()));
        }
        TableOf<Row> table = new TableOf<>("Plug-ins");
        table.fact("folder", services.settingsFolder().resolve("plugins").toString());
        table.text("kind", "what it adds", Row::kind);
        table.text("id", "id", Row::id);
        table.text("label", "label", Row::label);
        table.text("where", "jar", Row::where);
        table.text("state", "in use, or why not", Row::state);
        output.write(table.rows(rows), services, console);
        return services.plugins().refusals().isEmpty() ? 0 : 1;
    }

    private void turn() {
        for (String jar : java.util.Arrays.asList(on, off)) {
            if (jar != null && !services.plugins().jarNames().contains(jar)) {
                throw new UsageException("there is no " + jar + " in "
                        + services.settingsFolder().resolve("plugins") + "; there: "
                        + String.join(", ", services.plugins().jarNames()));
            }
        }
        if (on != null) {
            services.plugins().switches().switchOn(on);
        }
        if (off != null) {
            services.plugins()
                    .switches()
                    .switchOff(new PluginFault(off, services.plugins().labels(off), "was switched off by hand", ""));
        }
    }

    private <T extends Plugin> void add(List<Row> rows, String kind, Class<T> point) {
        for (PluginEntry entry : services.plugins().entries(point)) {
            rows.add(new Row(kind, entry.id(), entry.label(), entry.jar(), "in use"));
        }
    }
}
