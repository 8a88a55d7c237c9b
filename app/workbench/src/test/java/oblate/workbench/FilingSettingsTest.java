/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.TransferHandler;
import oblate.archive.PictureSearch;
import oblate.workbench.testing.OnScreen;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What was said once for dropped files is there the next time: kept by id, and understood as earlier versions kept it. */
@Tag("window")
@ExtendWith(OnScreen.class)
class FilingSettingsTest extends PanelJourney {
    private PanelSettings settings() {
        return new DeskSettings(folder.resolve("settings")).forPanel("panel.nights");
    }

    private void keep(String planet, String zone) throws IOException {
        DeskSettings settings = new DeskSettings(folder.resolve("settings"));
        settings.forPanel("panel.nights").keep("filing.planet", planet);
        settings.forPanel("panel.nights").keep("filing.zone", zone);
        settings.save();
    }

    private Path picture(int number) throws IOException {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setSample(5, 5, 0, 40 + number);
        Path file = folder.resolve("20310324T21053" + number + "Z.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private String chosen(String box) {
        return OpenWindow.ask(() -> String.valueOf(((JComboBox<?>) window.find(box)).getSelectedItem()));
    }

    private void drop(Path file) {
        JComponent pane = (JComponent) window.workbench().frame().getContentPane();
        OpenWindow.act(() -> pane.getTransferHandler()
                .importData(new TransferHandler.TransferSupport(pane, new FileList(List.of(file.toFile())))));
        window.settle();
    }

    @Test
    void whatWasSaidIsKeptByIdAndOlderWordsAreUnderstood() throws IOException {
        List<List<String>> before = List.of(List.of("Jupiter", "not said"), List.of("jupiter", "+02:00"));
        for (int i = 0; i < before.size(); i++) {
            keep(before.get(i).get(0), before.get(i).get(1));
            open("nights");
            drop(picture(i));
            assertThat(chosen("filing.planet")).isEqualTo("Jupiter");
            assertThat(chosen("filing.zone")).isEqualTo(before.get(i).get(1));
            OpenWindow.act(() -> ((AbstractButton) window.find("file")).doClick());
            int filed = i + 1;
            OpenWindow.await(
                    "it is filed",
                    () -> window.context()
                                    .archive()
                                    .pictures(PictureSearch.all())
                                    .size()
                            == filed);
            window.settle();
            window.close();
            assertThat(settings().text("filing.planet", "")).isEqualTo("jupiter");
            assertThat(settings().text("filing.zone", "?")).isEqualTo(i == 0 ? "" : "+02:00");
        }
        keep("as the files say", "UTC");
        open("nights");
        drop(picture(2));
        assertThat(chosen("filing.planet")).isEqualTo("as the files say");
        assertThat(chosen("filing.zone")).isEqualTo("UTC");
    }
}
