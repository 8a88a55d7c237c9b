/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.event.ActionEvent;
import java.awt.event.KeyEvent;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.Icon;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.FilingOutcome;
import oblate.archive.PictureSearch;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.FoldSection;
import oblate.workbench.look.LineIcon;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.pictures.PictureFacts;
import oblate.workbench.pictures.SystemLabel;

/** Pictures by night; files dropped on the window are filed here. */
public final class NightsPanel implements WorkbenchPanel {
    @Override
    public String id() {
        return "nights";
    }

    @Override
    public String label() {
        return "Nights";
    }

    @Override
    public int order() {
        return 100;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, Drawings::nights));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new View(context);
    }

    /** The component. */
    private static final class View extends JPanel {
        private static final long serialVersionUID = 1L;
        private final transient PanelContext context;
        private final PictureWall wall;
        private final JTextField words = new JTextField(18);
        private final JComboBox<String> systems = new JComboBox<>();
        private final JLabel count = new JLabel();
        private final JPanel sheets = new JPanel(new CardLayout());
        private final JPanel inspector =
                new JPanel(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        private final FilingSheet filing;
        private final OutcomeList outcomes;
        private final Timer typing;
        private transient String systemsOf = "";

        View(PanelContext context) {
            super(new BorderLayout());
            this.context = context;
            setOpaque(false);
            wall = new PictureWall(context, context::openPicture);
            filing = new FilingSheet(context, this::file, () -> sheets.setVisible(false));
            outcomes = new OutcomeList(context, () -> sheets.setVisible(false));
            typing = new Timer(250, e -> search());
            typing.setRepeats(false);
            add(top(), BorderLayout.NORTH);
            JScrollPane scroll = new JScrollPane(wall);
            scroll.setBorder(BorderFactory.createEmptyBorder());
            scroll.getVerticalScrollBar().setUnitIncrement(32);
            add(scroll, BorderLayout.CENTER);
            inspector.setOpaque(false);
            context.showInInspector(inspector);
            context.takeDroppedFiles(this::ask);
            context.offer(addAction());
            context.shelf().whenChanged(this::search);
            context.selection().whenChanged(this::showFacts);
            context.whenLookChanged(() -> {
                showFacts();
                wall.repaint();
            });
            search();
        }

        @Override
        public boolean requestFocusInWindow() {
            return wall.requestFocusInWindow();
        }

        private JComponent top() {
            JPanel bar = new JPanel(new MigLayout("insets 8 16 8 16, gap 8, fillx", "[]8[]push[][][]"));
            bar.setOpaque(false);
            words.setName("search");
            words.putClientProperty("JTextField.placeholderText", "Search names, notes, observers, kits");
            words.putClientProperty("JTextField.showClearButton", true);
            words.setToolTipText("Shows only pictures with these words  (Ctrl+F)");
            words.getDocument().addDocumentListener(new Typed(typing::restart));
            getInputMap(WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke("ctrl F"), "find");
            getActionMap().put("find", action("Find", words::requestFocusInWindow));
            systems.setName("system");
            systems.setToolTipText("Rotation system of the central meridians (CM) under the pictures");
            systems.addActionListener(e -> chooseSystem());
            JButton add = new JButton("Add pictures …", new LineIcon(16, Drawings::add));
            add.setName("add");
            add.setToolTipText("Files pictures or whole folders; or drop them on the window  (Ctrl+O)");
            add.addActionListener(e -> chooseFiles());
            bar.add(words, "w 300!");
            bar.add(count);
            bar.add(new JLabel("CM in"));
            bar.add(systems);
            bar.add(add);
            sheets.add(filing, "filing");
            sheets.add(outcomes, "outcomes");
            sheets.setVisible(false);
            JPanel both = new JPanel(new BorderLayout());
            both.setOpaque(false);
            both.add(bar, BorderLayout.NORTH);
            both.add(sheets, BorderLayout.CENTER);
            return both;
        }

        private Action addAction() {
            Action action = action("Add pictures …", this::chooseFiles);
            action.putValue(Action.ACCELERATOR_KEY, KeyStroke.getKeyStroke(KeyEvent.VK_O, KeyEvent.CTRL_DOWN_MASK));
            return action;
        }

        private static Action action(String name, Runnable deed) {
            return new AbstractAction(name) {
                private static final long serialVersionUID = 1L;

                @Override
                public void actionPerformed(ActionEvent e) {
                    deed.run();
                }
            };
        }

        private void chooseFiles() {
            JFileChooser chooser = new JFileChooser(context.settings().text("folder", "."));
            chooser.setMultiSelectionEnabled(true);
            chooser.setFileSelectionMode(JFileChooser.FILES_AND_DIRECTORIES);
            chooser.setApproveButtonText("Add");
            JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(this), "Add pictures");
            dialog.setModal(false);
            chooser.addActionListener(e -> {
                if (e.getActionCommand().equals(JFileChooser.APPROVE_SELECTION)) {
                    context.settings().keep("folder", chooser.getCurrentDirectory());
                    ask(Stream.of(chooser.getSelectedFiles()).map(File::toPath).toList());
                }
                dialog.dispose();
            });
            dialog.add(chooser);
            dialog.pack();
            dialog.setLocationRelativeTo(this);
            dialog.setVisible(true);
        }

        private void ask(List<Path> paths) {
            if (!paths.isEmpty()) {
                sheets.setVisible(true);
                ((CardLayout) sheets.getLayout()).show(sheets, "filing");
                filing.ask(paths);
                revalidate();
            }
        }

        private void file(FilingSheet.Order order) {
            sheets.setVisible(false);
            context.background()
                    .run(
                            "Filing",
                            progress -> context.workbench().filing().file(order.paths(), order.facts(), progress),
                            this::showOutcomes);
        }

        private void showOutcomes(List<FilingOutcome> found) {
            outcomes.show(found);
            sheets.setVisible(true);
            ((CardLayout) sheets.getLayout()).show(sheets, "outcomes");
            found.stream()
                    .filter(FilingOutcome.Filed.class::isInstance)
                    .map(o -> ((FilingOutcome.Filed) o).picture().id())
                    .findFirst()
                    .ifPresent(context.selection()::choosePicture);
            context.shelf().refresh();
        }

        private void search() {
            fillSystems();
            String text = words.getText().strip();
            if (text.isEmpty()) {
                show(context.shelf().pictures(), false);
                return;
            }
            PictureSearch all = PictureSearch.all();
            PictureSearch search = new PictureSearch(
                    all.planetId(),
                    all.night(),
                    all.from(),
                    all.to(),
                    all.meridian(),
                    all.observer(),
                    all.kit(),
                    all.filter(),
                    Optional.of(text),
                    all.fitted(),
                    all.marked(),
                    0);
            context.background().quietly(() -> context.archive().pictures(search), found -> {
                if (words.getText().strip().equals(text)) {
                    show(found, true);
                }
            });
        }

        private void show(List<ArchivedPicture> pictures, boolean searched) {
            wall.show(NightGroup.of(pictures), searched);
            Set<Object> nights = pictures.stream().map(ArchivedPicture::night).collect(Collectors.toSet());
            count.setText(
                    pictures.isEmpty()
                            ? ""
                            : pictures.size() + " pictures in " + nights.size()
                                    + (nights.size() == 1 ? " night" : " nights"));
            count.setForeground(context.palette().quietInk());
            showFacts();
        }

        private void fillSystems() {
            String planet = context.planet().id();
            if (planet.equals(systemsOf)) {
                return;
            }
            systemsOf = planet;
            String wish = context.settings()
                    .text(
                            "system." + planet,
                            SystemLabel.usual(context.planet()).id());
            List<RotationSystem> all = context.planet().globe().systems();
            systems.removeAllItems();
            all.forEach(s -> systems.addItem(s.label()));
            all.stream()
                    .filter(s -> s.id().equals(wish))
                    .findFirst()
                    .ifPresent(s -> systems.setSelectedItem(s.label()));
            systems.setVisible(all.size() > 1);
        }

        private void chooseSystem() {
            context.planet().globe().systems().stream()
                    .filter(s -> s.label().equals(systems.getSelectedItem()))
                    .findFirst()
                    .ifPresent(system -> {
                        wall.setSystem(system);
                        if (systems.isShowing()) {
                            context.settings().keep("system." + context.planet().id(), system.id());
                        }
                    });
        }

        private void showFacts() {
            inspector.removeAll();
            context.selection().pictureId().flatMap(context.shelf()::picture).ifPresent(picture -> {
                inspector.add(new FoldSection("Picture", PictureFacts.of(context, picture)), "wmin 0");
                JButton open = new JButton("Measure it");
                open.setToolTipText("Opens it on the measuring desk  (Enter)");
                open.addActionListener(e -> context.openPicture(picture.id()));
                inspector.add(open, "gapleft 12, gapright 12, growx 0");
            });
            inspector.revalidate();
            inspector.repaint();
        }
    }
}
