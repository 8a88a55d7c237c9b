/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.Kit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate kit}: lists and adds kits. */
@Command(
        name = "kit",
        mixinStandardHelpOptions = true,
        description = "Lists the kits (named sets of gear) of an archive; with add, adds or changes one.",
        footer = {
            "",
            "Example:  oblate kit add \"long tube\" --archive season --aperture 250 --focal 6200 --pixel 2.9 --mirrored no"
        })
final class KitCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Mixin
    private OutputOptions output;

    KitCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if (archive == null) {
            throw new UsageException("no archive is given; add --archive DIR");
        }
        try (Archive open = services.openArchive(archive)) {
            TableOf<Kit> t = new TableOf<>("Kits");
            t.text("kit", "name", Kit::name);
            t.text("telescope", "optical type", k -> k.telescope().orElse(null));
            t.number("aperture_mm", "mm", 0, "clear aperture", k -> boxed(k.apertureMm()));
            t.number("focal_mm", "mm", 0, "effective focal length", k -> boxed(k.focalMm()));
            t.text("camera", "camera", k -> k.camera().orElse(null));
            t.number("pixel_um", "um", 2, "pixel size", k -> boxed(k.pixelUm()));
            t.text("amplifier", "amplifier lens", k -> k.amplifier().orElse(null));
            t.text("corrector", "dispersion corrector", k -> k.corrector().orElse(null));
            t.text("filter", "filters in order", k -> k.filter().orElse(null));
            t.text("mirrored", "mirror images", k -> k.mirrored()
                    .map(m -> m ? "yes" : "no")
                    .orElse(null));
            t.text("note", "anything else", k -> k.note().orElse(null));
            output.write(t.rows(open.kits()), services, console);
            return 0;
        }
    }

    private static Double boxed(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    /** {@code oblate kit add}. */
    @Command(name = "add", mixinStandardHelpOptions = true, description = "Adds or changes a kit.")
    static final class Add implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "NAME", description = "name of the kit")
        private String name;

        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(names = "--telescope", paramLabel = "WORDS", description = "optical type")
        private String telescope;

        @Option(names = "--aperture", paramLabel = "MM", description = "clear aperture")
        private Double apertureMm;

        @Option(names = "--focal", paramLabel = "MM", description = "effective focal length")
        private Double focalMm;

        @Option(names = "--camera", paramLabel = "WORDS", description = "camera")
        private String camera;

        @Option(names = "--pixel", paramLabel = "UM", description = "pixel size")
        private Double pixelUm;

        @Option(names = "--amplifier", paramLabel = "WORDS", description = "amplifier lens")
        private String amplifier;

        @Option(names = "--corrector", paramLabel = "WORDS", description = "dispersion corrector")
        private String corrector;

        @Option(names = "--filter", paramLabel = "WORDS", description = "filters in order")
        private String filter;

        @Option(names = "--mirrored", paramLabel = "yes|no", description = "whether its pictures are mirror images")
        private PictureOptions.YesNo mirrored;

        @Option(names = "--note", paramLabel = "WORDS", description = "anything else")
        private String note;

        Add(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            try (Archive open = services.openOrMakeArchive(archive, console)) {
                open.keepKit(new Kit(
                        name,
                        Optional.ofNullable(telescope),
                        optional("--aperture", apertureMm),
                        optional("--focal", focalMm),
                        Optional.ofNullable(camera),
                        optional("--pixel", pixelUm),
                        Optional.ofNullable(amplifier),
                        Optional.ofNullable(corrector),
                        Optional.ofNullable(filter),
                        Optional.ofNullable(mirrored).map(m -> m == PictureOptions.YesNo.YES),
                        Optional.ofNullable(note)));
                console.say("Kit \"" + name + "\" is kept.");
                return 0;
            }
        }

        private static OptionalDouble optional(String option, Double value) {
            if (value != null && !(value > 0 && value < 1e6)) {
                throw new UsageException(option + " " + value + " is not a length above 0");
            }
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }
    }
}
