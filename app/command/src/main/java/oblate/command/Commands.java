/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine;

/** The subcommands: those that ship, then those that are plugged in. */
final class Commands {
    private final Services services;
    private final Console console;

    Commands(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    void addTo(CommandLine line) {
        Map<String, Object> own = new LinkedHashMap<>();
        own.put("demo", new DemoCommand(services, console));
        own.put("file", new FileCommand(services, console));
        own.put("pictures", new PicturesCommand(services, console));
        own.put("fit", new FitCommand(services, console));
        own.put("locate", new LocateCommand(services, console));
        own.put("map", new MapCommand(services, console));
        own.put("measure", new MeasureCommand(services, console));
        own.put(
                "marks",
                new CommandLine(new MarksCommand(services, console))
                        .addSubcommand(new MarksCommand.Add(services, console))
                        .addSubcommand(new MarksCommand.Supersede(services, console))
                        .addSubcommand(new MarksCommand.Withdraw(services, console))
                        .addSubcommand(new RepeatCommands.Blind(services, console))
                        .addSubcommand(new RepeatCommands.Repeat(services, console)));
        own.put("drift", new DriftCommand(services, console));
        own.put("chart", new ChartCommand(services, console));
        own.put("report", new ReportCommand(services, console));
        own.put("sky", new SkyCommand(services, console));
        own.put("night", new NightCommand(services, console));
        own.put("tonight", new TonightCommand(services, console));
        own.put("crossings", new CrossingsCommand(services, console));
        own.put("smear", new SmearCommand(services, console));
        own.put("data", new DataCommand(services, console));
        own.put("moons", new MoonsCommand(services, console));
        own.put("events", new EventsCommand(services, console));
        own.put("timings", new TimingsCommand(services, console));
        own.put(
                "states",
                new CommandLine(new StatesCommand(services, console))
                        .addSubcommand(new StateChanges.Add(services, console))
                        .addSubcommand(new StateChanges.Import(services, console))
                        .addSubcommand(new StateChanges.Withdraw(services, console)));
        own.put(
                "site",
                new CommandLine(new SiteCommand(services, console))
                        .addSubcommand(new SiteCommand.Add(services, console)));
        own.put(
                "kit",
                new CommandLine(new KitCommand(services, console))
                        .addSubcommand(new KitCommand.Add(services, console)));
        own.put("correct", new CorrectCommand(services, console));
        own.put("history", new HistoryCommand(services, console));
        own.put("check", new CheckCommand(services, console));
        own.put("backup", new BackupCommand(services, console));
        own.put("restore", new RestoreCommand(console));
        own.put("plugins", new PluginsCommand(services, console));
        own.forEach(line::addSubcommand);
        for (Subcommand plugged : services.plugins().load(Subcommand.class)) {
            if (own.containsKey(plugged.id())) {
                console.say("The plugged-in command \"" + plugged.id()
                        + "\" has the name of one that ships and is left out.");
            } else {
                line.addSubcommand(plugged.id(), plugged.command(services, console));
            }
        }
    }
}
