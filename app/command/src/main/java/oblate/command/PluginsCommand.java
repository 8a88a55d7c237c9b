/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import oblate.base.Plugin;
import oblate.base.PluginRefusal;
import oblate.disc.MapFormat;
import oblate.image.ImageFormat;
import oblate.report.ChartWriter;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.workbench.WorkbenchPanel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code oblate plugins}. */
@Command(
        name = "plugins",
        mixinStandardHelpOptions = true,
        description = {
            "Lists planets, formats of pictures, maps and reports, chart writers, panels and commands that are plugged in,",
            "and what was refused with the reason. Jars go into the plugins folder of the settings."
        })
final class PluginsCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Mixin
    private OutputOptions output;

    PluginsCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    private record Row(String kind, String id, String label, String where, String state) {}

    @Override
    public Integer call() {
        List<Row> rows = new ArrayList<>();
        add(rows, "planet", PlanetModel.class);
        add(rows, "picture format", ImageFormat.class);
        add(rows, "map format", MapFormat.class);
        add(rows, "report format", ReportFormat.class);
        add(rows, "chart writer", ChartWriter.class);
        add(rows, "panel", WorkbenchPanel.class);
        add(rows, "command", Subcommand.class);
        for (PluginRefusal refusal : services.plugins().refusals()) {
            rows.add(new Row("refused", refusal.what(), "", refusal.where(), refusal.reason()));
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

    private <T extends Plugin> void add(List<Row> rows, String kind, Class<T> point) {
        for (T plugin : services.plugins().load(point)) {
            ClassLoader loader = plugin.getClass().getClassLoader();
            String where = loader == getClass().getClassLoader() ? "bundled" : String.valueOf(loader.getName());
            rows.add(new Row(kind, plugin.id(), plugin.label(), where, "in use"));
        }
    }
}
