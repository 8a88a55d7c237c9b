/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.nio.file.Path;
import java.util.List;
import oblate.archive.Archive;
import oblate.archive.Filing;
import oblate.base.PluginHost;
import oblate.disc.MoonWitness;
import oblate.image.ImageFormat;
import oblate.image.PictureReader;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/**
 * What the window needs to work: the open archive and the services of the stages. Immutable.
 *
 * @param archive the archive shown; the window closes it when it is closed itself
 * @param sky apparent discs
 * @param planets known planets
 * @param imageFormats picture formats, for the list of plug-ins
 * @param reader reads picture files
 * @param fitter fits discs and hears the moons beside them
 * @param filing takes files into the archive
 * @param reportFormats ways to write tables
 * @param plugins host the panels are loaded from
 * @param settingsFolder where the layout is kept; made when absent
 * @param measurer name put on marks
 * @param software program and version put on fits, e.g. "Oblate 0.1.0"
 */
public record WorkbenchContext(
        Archive archive,
        Sky sky,
        List<PlanetModel> planets,
        List<ImageFormat> imageFormats,
        PictureReader reader,
        MoonWitness fitter,
        Filing filing,
        List<ReportFormat> reportFormats,
        PluginHost plugins,
        Path settingsFolder,
        String measurer,
        String software) {
    /** Copies the lists. */
    public WorkbenchContext {
        planets = List.copyOf(planets);
        imageFormats = List.copyOf(imageFormats);
        reportFormats = List.copyOf(reportFormats);
    }
}
