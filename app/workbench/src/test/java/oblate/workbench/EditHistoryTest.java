/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.FilingFacts;
import oblate.archive.MarkSearch;
import oblate.archive.NewMark;
import oblate.archive.PictureCorrections;
import oblate.archive.PictureFacts;
import oblate.archive.SeenState;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.image.TimeWish;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Undo and redo of every kind of edit on a real archive, across sessions, and with someone else at work on it; edits come back on the event thread, which needs a display. */
@Tag("window")
class EditHistoryTest {
    private static final Instant TIME = Instant.parse("2031-03-24T21:05:30Z");

    @TempDir
    Path folder;

    private final PluginHost plugins = PluginHost.bundledOnly();
    private final List<String> said = new ArrayList<>();
    private WorkbenchContext context;
    private Background background;
    private EditHistory edits;
    private ArchivedPicture picture;

    @BeforeEach
    void fileAPicture() throws IOException {
        context = OpenWindow.context(folder.resolve("archive"), folder.resolve("settings"), plugins);
        Path file = folder.resolve("20310324T210530Z.png");
        ImageIO.write(new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY), "png", file.toFile());
        TimeWish wish = new TimeWish(
                Optional.of(TIME.toString()),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        FilingFacts facts = new FilingFacts(
                Optional.of("jupiter"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                wish,
                false);
        context.filing().file(List.of(file), facts, Progress.SILENT);
        picture = archive().pictureCalled("1");
        open();
    }

    private void open() {
        background = new Background(said::add);
        edits = OpenWindow.ask(
                () -> new EditHistory(archive(), context.sky(), folder.resolve("settings"), background, said::add));
        settle();
    }

    /** As closing the window and opening it again does. */
    private void startAgain() {
        background.close();
        open();
    }

    @AfterEach
    void close() {
        background.close();
        archive().close();
        plugins.close();
    }

    private Archive archive() {
        return context.archive();
    }

    private void settle() {
        OpenWindow.await("the background", background::isIdle);
    }

    private List<StoredMark> marks() {
        return archive().marks(MarkSearch.ofPicture(picture.id()));
    }

    private DiscFit fit(double centre) {
        return new DiscFit(
                new Placement(centre, 31, 25, 10, false),
                PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.3),
                Trust.TRUSTED,
                List.of(),
                "test",
                "grey",
                0.1,
                100,
                List.of());
    }

    private StoredFit keepFit(double centre) {
        return perform(() -> {
            Optional<Long> before = archive().currentFit(picture.id()).map(StoredFit::id);
            StoredFit stored = archive().keepFit(picture.id(), fit(centre), "DE405", "test");
            return EditHistory.Done.of(new Edit.FitKept(picture.id(), before, stored.id(), Edit.Origin.FITTED), stored);
        });
    }

    private <T> T perform(java.util.function.Supplier<EditHistory.Done<T>> deed) {
        List<T> result = new ArrayList<>();
        OpenWindow.act(() -> edits.perform(deed, result::add, said::add));
        settle();
        return result.get(0);
    }

    private NewMark at(double x, StoredFit fit, Optional<Long> feature) {
        var disc = context.sky().disc(context.planets().get(0), TIME);
        PixelPoint pixel = new PixelPoint(x, 30);
        var place = new MarkMeasurer()
                .measure(new DiscFrame(disc, fit.fit().placement()), fit.fit().covariance(), pixel, 0.7, 3);
        return new NewMark(
                picture.id(),
                Optional.of(fit.id()),
                feature,
                pixel,
                0.7,
                place.map(m -> m.point()),
                place.map(m -> m.errors()),
                "centre",
                "test");
    }

    private StoredMark add(NewMark mark) {
        return perform(() -> {
            StoredMark stored = archive().addMark(mark);
            return EditHistory.Done.of(new Edit.MarkAdded(picture.id(), stored.id()), stored);
        });
    }

    private StoredMark replace(StoredMark old, NewMark fresh, Edit.Change change) {
        return perform(() -> {
            StoredMark stored = archive().supersedeMark(old.id(), fresh, "by hand");
            return EditHistory.Done.of(new Edit.MarkReplaced(picture.id(), old.id(), stored.id(), change), stored);
        });
    }

    private void withdraw(StoredMark mark) {
        perform(() -> {
            archive().withdrawMark(mark.id(), "by hand");
            return EditHistory.Done.of(new Edit.MarkWithdrawn(picture.id(), mark.id()), mark);
        });
    }

    private void undo() {
        OpenWindow.act(edits::undo);
        settle();
    }

    private void redo() {
        OpenWindow.act(edits::redo);
        settle();
    }

    private String state() {
        String fit = archive()
                .currentFit(picture.id())
                .map(f -> "fit at " + f.fit().placement().centreXPx())
                .orElse("no fit");
        StringBuilder words = new StringBuilder(fit);
        marks().forEach(m -> words.append("; ")
                .append(m.featureName().orElse("?"))
                .append(" at ")
                .append(m.mark().pixel().xPx()));
        return words.toString();
    }

    @Test
    void everyEditIsUndoneAndDoneAgainInOrderAcrossSessions() {
        List<String> states = new ArrayList<>(List.of(state()));
        keepFit(32);
        states.add(state());
        StoredFit second = keepFit(31.5);
        states.add(state());
        StoredMark mark = add(at(30, second, Optional.empty()));
        states.add(state());
        StoredMark moved = replace(mark, at(30.5, second, Optional.empty()), Edit.Change.MOVED);
        states.add(state());
        Feature feature = archive()
                .addFeature(new Feature(
                        0, "jupiter", "oval A", "oval", Optional.empty(), Optional.empty(), Optional.empty()));
        StoredMark named = replace(moved, at(30.5, second, Optional.of(feature.id())), Edit.Change.NAMED);
        states.add(state());
        withdraw(named);
        states.add(state());
        // Only the end, with its mark withdrawn, looks as it did before the mark.
        assertThat(states.subList(0, states.size() - 1)).doesNotHaveDuplicates();
        assertThat(states.get(states.size() - 1)).isEqualTo("fit at 31.5");

        for (int round = 0; round < 2; round++) {
            for (int i = states.size() - 2; i >= 0; i--) {
                undo();
                assertThat(state()).as("undone to " + i).isEqualTo(states.get(i));
                if (i % 2 == 0) {
                    startAgain();
                }
            }
            assertThat(edits.nextUndo()).isEmpty();
            for (int i = 1; i < states.size(); i++) {
                redo();
                assertThat(state()).as("done again to " + i).isEqualTo(states.get(i));
                if (i % 2 == 0) {
                    startAgain();
                }
            }
            assertThat(edits.nextRedo()).isEmpty();
        }
        assertThat(said).isEmpty();
        // Nothing was deleted: every row that ever was is still readable.
        assertThat(archive()
                        .marks(new MarkSearch(
                                Optional.empty(),
                                Optional.of(picture.id()),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                true)))
                .hasSizeGreaterThan(10);
        assertThat(archive().fitHistory(picture.id())).hasSize(6);
    }

    @Test
    void factsAreCorrectedBackAndForth() {
        PictureFacts before = PictureFacts.of(picture);
        PictureFacts after = before.withFilter(Optional.of("red")).withNotes(Optional.of("wind"));
        perform(() -> {
            ArchivedPicture corrected =
                    new PictureCorrections(archive(), context.sky()).correct(picture.id(), after, "by hand");
            return EditHistory.Done.of(
                    new Edit.FactsCorrected(
                            List.of(new Edit.FactsChange(picture.id(), before, after, List.of())), "a picture"),
                    corrected);
        });
        startAgain();
        undo();
        assertThat(PictureFacts.of(archive().picture(picture.id()).orElseThrow()))
                .isEqualTo(before);
        redo();
        assertThat(PictureFacts.of(archive().picture(picture.id()).orElseThrow()))
                .isEqualTo(after);
        // Someone else says more: then the correction is no longer ours to take back.
        new PictureCorrections(archive(), context.sky())
                .correct(picture.id(), after.withNotes(Optional.of("calm")), "elsewhere");
        undo();
        assertThat(said)
                .singleElement()
                .asString()
                .contains("changed elsewhere")
                .contains("skipped");
        assertThat(archive().picture(picture.id()).orElseThrow().notes()).contains("calm");
        assertThat(edits.nextUndo()).isEmpty();
    }

    private List<String> states() {
        return archive().seenStates("jupiter").stream().map(SeenState::state).toList();
    }

    private void say(String state) {
        perform(() -> {
            Optional<SeenState> before =
                    archive().seenStates("jupiter").stream().findFirst();
            SeenState now = SeenState.in(picture.id(), "jupiter", "io", "transit", state, "tester");
            archive().saySeen(List.of(now));
            return EditHistory.Done.of(new Edit.StatesSeen(List.of(new Edit.StateChange(before, now))), now);
        });
    }

    @Test
    void aStateSeenIsTakenBackAndSaidAgainByNewRows() {
        say("clear");
        say("on_limb");
        say(SeenState.OPEN);
        assertThat(edits.nextUndo()).contains("taking a state back");
        undo();
        assertThat(states()).containsExactly("on_limb");
        startAgain();
        assertThat(edits.nextUndo()).contains("the state seen");
        undo();
        assertThat(states()).containsExactly("clear");
        undo();
        assertThat(states()).isEmpty();
        redo();
        redo();
        assertThat(states()).containsExactly("on_limb");
        redo();
        assertThat(states()).isEmpty();
        assertThat(archive().seenStateHistory("jupiter")).hasSize(9);
        undo();
        archive().saySeen(List.of(SeenState.in(picture.id(), "jupiter", "io", "transit", "on_disc", "another")));
        undo();
        assertThat(said).last().asString().contains("changed elsewhere");
        assertThat(states()).containsExactly("on_disc");
    }

    @Test
    void whatWasChangedElsewhereIsSaidAndSkipped() {
        StoredFit fit = keepFit(32);
        StoredMark first = add(at(30, fit, Optional.empty()));
        StoredMark second = add(at(35, fit, Optional.empty()));
        archive().supersedeMark(second.id(), at(36, fit, Optional.empty()), "from another window");
        String before = state();
        undo();
        assertThat(said)
                .singleElement()
                .asString()
                .contains("changed elsewhere")
                .contains("skipped");
        assertThat(state()).isEqualTo(before);
        undo();
        assertThat(marks())
                .extracting(StoredMark::id)
                .doesNotContain(first.id())
                .hasSize(1);
        assertThat(said).hasSize(1);
    }

    @Test
    void aMarkMeasuredAnewIsStillTheSameMark() {
        StoredFit fit = keepFit(32);
        StoredMark mark = add(at(30, fit, Optional.empty()));
        StoredFit other = archive().keepFit(picture.id(), fit(31), "DE405", "test");
        archive().supersedeMark(mark.id(), at(30, other, Optional.empty()), "the disc was fitted anew");
        undo();
        assertThat(said).isEmpty();
        assertThat(marks()).isEmpty();
        redo();
        assertThat(marks()).hasSize(1);
    }

    /** Files more pictures, names their filter together, and remembers it; the third one's earlier planet is none any more, so that taking it back fails there. */
    private List<ArchivedPicture> filterOfFour(boolean troubleAtThird) throws IOException {
        List<ArchivedPicture> pictures = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Path file = folder.resolve("20310325T21000" + i + "Z.png");
            BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
            image.setRGB(i, 0, 0xFFFFFF);
            ImageIO.write(image, "png", file.toFile());
            context.filing().file(List.of(file), FilingFacts.forPlanet("jupiter"), Progress.SILENT);
            pictures.add(archive().pictureCalled(file.getFileName().toString()));
        }
        perform(() -> {
            List<Edit.FactsChange> changes = new ArrayList<>();
            for (ArchivedPicture p : pictures) {
                PictureFacts before = PictureFacts.of(p);
                PictureFacts after = before.withFilter(Optional.of("red"));
                new PictureCorrections(archive(), context.sky()).correct(p.id(), after, "by hand");
                boolean trouble = troubleAtThird && changes.size() == 2;
                changes.add(new Edit.FactsChange(
                        p.id(), trouble ? before.withPlanet(Optional.of("vulcan")) : before, after, List.of()));
            }
            return EditHistory.Done.of(new Edit.FactsCorrected(changes, "filter of 4 pictures"), pictures);
        });
        return pictures;
    }

    private List<String> filters(List<ArchivedPicture> of) {
        return of.stream()
                .map(p -> archive().picture(p.id()).orElseThrow().filter().orElse("none"))
                .toList();
    }

    @Test
    void troubleHalfWayThroughManyPicturesLeavesBothHalvesToBeUndoneAndRedone() throws IOException {
        List<ArchivedPicture> four = filterOfFour(true);
        undo();
        assertThat(filters(four)).containsExactly("none", "none", "red", "red");
        assertThat(said).singleElement().asString().contains("vulcan").contains("Stopped after 2 of 4 pictures");
        startAgain();
        assertThat(edits.nextUndo().orElseThrow())
                .contains("filter of 4 pictures")
                .contains("2 of them");
        assertThat(edits.nextRedo().orElseThrow()).contains("2 of them");
        redo();
        assertThat(filters(four)).containsExactly("red", "red", "red", "red");
        undo();
        assertThat(filters(four)).containsExactly("none", "none", "red", "red");
    }

    @Test
    void undoingManyPicturesIsShownAndMayBeStoppedBetweenTwo() throws IOException {
        List<ArchivedPicture> four = filterOfFour(false);
        EditJournal journal = EditJournal.empty()
                .with(new Edit.FactsCorrected(
                        four.stream()
                                .map(p -> new Edit.FactsChange(
                                        p.id(),
                                        PictureFacts.of(p),
                                        PictureFacts.of(p).withFilter(Optional.of("red")),
                                        List.of()))
                                .toList(),
                        "filter of 4 pictures"));
        List<String> told = new ArrayList<>();
        Progress stopsAfterThree = new Progress() {
            @Override
            public void report(long done, long total, String message) {
                told.add(message);
            }

            @Override
            public boolean isCancelled() {
                return told.size() == 3;
            }
        };
        EditPerformer.Outcome outcome =
                new EditPerformer(archive(), context.sky()).undo(journal.done().get(0), journal, stopsAfterThree);
        assertThat(outcome).isInstanceOfSatisfying(EditPerformer.Outcome.Stopped.class, s -> assertThat(s.pictures())
                .isEqualTo(3));
        assertThat(told).containsExactly("picture 1 of 4", "picture 2 of 4", "picture 3 of 4");
        assertThat(filters(four)).containsExactly("none", "none", "none", "red");
        EditJournal after = journal.backPartly(3);
        assertThat(after.done()).singleElement().satisfies(e -> assertThat(e.weight())
                .isEqualTo(1));
        assertThat(after.undone()).singleElement().satisfies(e -> assertThat(e.weight())
                .isEqualTo(3));
    }

    @Test
    void anUndoThatIsStoppedBeforeItBeganChangesNothing() throws IOException {
        List<ArchivedPicture> four = filterOfFour(false);
        OpenWindow.act(() -> {
            edits.undo();
            background.jobs().forEach(Job::stop);
        });
        settle();
        // It may have come through before it was stopped, or to any place: what is undone and what is not is always
        // known.
        long undone = filters(four).stream().filter("none"::equals).count();
        OpenWindow.act(edits::undo);
        settle();
        assertThat(filters(four)).as("after %s were undone", undone).containsOnly("none");
    }

    @Test
    void closingKeepsWhatWasAskedForBefore() {
        StoredFit fit = keepFit(32);
        OpenWindow.act(() -> {
            edits.perform(
                    () -> {
                        StoredMark stored = archive().addMark(at(30, fit, Optional.empty()));
                        return EditHistory.Done.of(new Edit.MarkAdded(picture.id(), stored.id()), stored);
                    },
                    stored -> {},
                    said::add);
            background.close();
        });
        assertThat(marks()).hasSize(1);
        open();
        assertThat(edits.nextUndo()).contains("marking");
    }

    @Test
    void whatTheArchiveRefusesIsToldAndNotRemembered() {
        StoredFit fit = keepFit(32);
        OpenWindow.act(() -> edits.perform(
                () -> {
                    StoredMark stored = archive().addMark(at(30, fit, Optional.of(77L)));
                    return EditHistory.Done.of(new Edit.MarkAdded(picture.id(), stored.id()), stored);
                },
                stored -> said.add("done"),
                why -> said.add("failed: " + why)));
        settle();
        assertThat(said).singleElement().asString().startsWith("failed: feature 77");
        assertThat(edits.nextUndo()).contains("fitting the disc");
    }

    @Test
    void anEditIsDoneEvenWhenTheJournalCannotBeKept() throws IOException {
        Files.createDirectories(folder.resolve("settings"));
        Files.writeString(folder.resolve("settings/edits"), "a file where the folder should be");
        StoredFit fit = keepFit(32);
        assertThat(archive().currentFit(picture.id()).map(StoredFit::id)).contains(fit.id());
        assertThat(said)
                .singleElement()
                .asString()
                .contains("list of edits could not be written")
                .startsWith("What was done is kept");
        undo();
        assertThat(archive().currentFit(picture.id())).isEmpty();
    }

    @Test
    void settingsComeBackAndABrokenFileCostsOnlyTheLayout() throws IOException {
        Path where = folder.resolve("layout");
        DeskSettings settings = new DeskSettings(where);
        settings.forPanel("nights").keep("zoom", 7);
        settings.save();
        assertThat(new DeskSettings(where).forPanel("nights").number("zoom", 1)).isEqualTo(7);
        assertThat(new DeskSettings(where).forPanel("measure").number("zoom", 1))
                .isEqualTo(1);
        Files.writeString(where.resolve("workbench.properties"), "a=\\uZZZZ");
        assertThat(new DeskSettings(where).forPanel("nights").number("zoom", 1)).isEqualTo(1);
    }
}
