/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.awt.event.ActionEvent;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.ImageIcon;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.KeyStroke;
import javax.swing.ListSelectionModel;
import net.miginfocom.swing.MigLayout;
import oblate.archive.FitSummary;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import oblate.workbench.PanelContext;
import oblate.workbench.pictures.Thumbnails;
import oblate.workbench.words.Texts;

/** The list of what wants a look, worked through one after the other: number keys and buttons mend it, the next one comes up. */
final class TodoView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(TodoView.class);
    private static final int ROW_PX = 44;
    private final transient PanelContext context;
    private final transient BiFunction<Todo, TodoList, List<Remedy>> remediesOf;
    private final transient Consumer<Todo> whenLookedAt;
    private final transient Consumer<Integer> whenCounted;
    private final DefaultListModel<Todo> model = new DefaultListModel<>();
    private final JList<Todo> list = new JList<>(model);
    private final JLabel summary = new JLabel(" ");
    private final JLabel heading = new JLabel(" ");
    private final JLabel image = new JLabel();
    private final transient Thumbnails thumbnails;
    private final JTextArea sentence = new JTextArea();
    private final JPanel buttons = new JPanel(new MigLayout("insets 0, gap 8, wrap 1"));
    private final JPanel detail = new JPanel(new MigLayout("insets 0 24 16 24, gap 12, wrap 1, fillx", "[grow,fill]"));
    private final transient Set<Todo> later = new HashSet<>();
    private transient List<Remedy> remedies = List.of();
    private transient TodoList found = new TodoList(List.of(), java.util.Map.of());
    private boolean filling;
    private boolean read;

    /**
     * @param remediesOf ways to mend a thing
     * @param whenLookedAt told of the thing looked at
     * @param whenCounted told how many things there are
     */
    TodoView(
            PanelContext context,
            BiFunction<Todo, TodoList, List<Remedy>> remediesOf,
            Consumer<Todo> whenLookedAt,
            Consumer<Integer> whenCounted) {
        super(new BorderLayout());
        this.context = context;
        this.remediesOf = remediesOf;
        this.whenLookedAt = whenLookedAt;
        this.whenCounted = whenCounted;
        setOpaque(false);
        setFocusable(true);
        summary.setName("todo.summary");
        summary.setBorder(BorderFactory.createEmptyBorder(4, 16, 12, 16));
        list.setName("todo.list");
        list.setFixedCellHeight(ROW_PX);
        list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        list.setCellRenderer(new TodoRow(context::palette));
        list.addListSelectionListener(e -> {
            if (!e.getValueIsAdjusting() && !filling) {
                showChosen();
            }
        });
        JScrollPane scroll = new JScrollPane(list);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setName("todo.scroll");
        detail.setOpaque(false);
        heading.putClientProperty("FlatLaf.styleClass", "h3");
        sentence.setName("todo.sentence");
        sentence.setEditable(false);
        sentence.setFocusable(false);
        sentence.setOpaque(false);
        sentence.setLineWrap(true);
        sentence.setWrapStyleWord(true);
        sentence.setBorder(null);
        sentence.setMargin(new java.awt.Insets(0, 0, 0, 0));
        buttons.setOpaque(false);
        image.setName("todo.image");
        thumbnails = new Thumbnails(context, this::showImage);
        detail.add(image, "h 208!, hidemode 3");
        detail.add(heading, "wmin 0");
        detail.add(sentence, "wmin 0");
        detail.add(buttons, "growx 0");
        add(summary, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        JPanel right = new JPanel(new BorderLayout());
        right.setOpaque(false);
        right.setPreferredSize(new java.awt.Dimension(400, 100));
        right.add(detail, BorderLayout.NORTH);
        add(right, BorderLayout.EAST);
        for (int i = 1; i <= 9; i++) {
            int number = i;
            key(Integer.toString(i), () -> mend(number - 1));
        }
        key("ENTER", () -> mend(0));
        key("N", this::postpone);
    }

    private void key(String stroke, Runnable deed) {
        list.getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(stroke), stroke);
        list.getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    @Override
    public boolean requestFocusInWindow() {
        return model.isEmpty() ? super.requestFocusInWindow() : list.requestFocusInWindow();
    }

    /** The view has come up: what is first is what is looked at. */
    void lookAtFirst() {
        Todo todo = list.getSelectedValue();
        if (todo != null) {
            whenLookedAt.accept(todo);
        }
    }

    /** Finds anew what wants a look, in the background; stays at the same place of the list. */
    void refresh() {
        var pictures = context.shelf().pictures();
        var fits = new java.util.HashMap<Long, FitSummary>();
        pictures.forEach(p -> context.shelf().fit(p.id()).ifPresent(f -> fits.put(p.id(), f)));
        boolean shelfRead = context.shelf().isRead();
        context.background()
                .quietly(
                        () -> {
                            List<StoredMark> marks = context.archive().marks(MarkSearch.all());
                            return TodoList.of(
                                    pictures,
                                    id -> Optional.ofNullable(fits.get(id)),
                                    marks,
                                    context.archive()::timeClaims);
                        },
                        fresh -> show(fresh, shelfRead));
    }

    private void show(TodoList fresh, boolean shelfRead) {
        found = fresh;
        read = shelfRead;
        int row = Math.max(0, list.getSelectedIndex());
        Optional<Todo> before = Optional.ofNullable(list.getSelectedValue());
        filling = true;
        later.retainAll(found.todos());
        List<Todo> ordered = new ArrayList<>(found.todos());
        ordered.removeAll(later);
        ordered.addAll(found.todos().stream().filter(later::contains).toList());
        model.clear();
        model.addAll(ordered);
        int same = before.map(ordered::indexOf).orElse(-1);
        if (!ordered.isEmpty()) {
            list.setSelectedIndex(same >= 0 ? same : Math.min(row, ordered.size() - 1));
        }
        filling = false;
        boolean none = context.shelf().pictures().isEmpty();
        summary.setText(read ? none ? TEXTS.text("none.yet") : found.summary() : TEXTS.text("reading"));
        colour();
        whenCounted.accept(ordered.size());
        showChosen();
    }

    /** Takes on the colours of another theme, pictures too. */
    void lookChanged() {
        colour();
        showImage();
    }

    private void colour() {
        summary.setForeground(context.palette().quietInk());
        sentence.setForeground(context.palette().ink());
    }

    private void showChosen() {
        Todo todo = list.getSelectedValue();
        detail.setVisible(todo != null);
        list.setVisible(!model.isEmpty());
        buttons.removeAll();
        remedies = todo == null ? List.of() : remediesOf.apply(todo, found);
        if (todo != null) {
            heading.setText(todo.title());
            showImage();
            sentence.setText(todo.sentence());
            for (int i = 0; i < remedies.size(); i++) {
                buttons.add(button(remedies.get(i), i + 1), "growx");
            }
            JButton skip = new JButton(TEXTS.text("todo.later"));
            skip.setName("todo.later");
            skip.setToolTipText(TEXTS.text("todo.later.tip"));
            skip.addActionListener(e -> postpone());
            buttons.add(skip, "gaptop 8");
            if (isShowing()) {
                whenLookedAt.accept(todo);
            }
            list.ensureIndexIsVisible(list.getSelectedIndex());
        }
        detail.revalidate();
        detail.repaint();
    }

    private void showImage() {
        Optional<BufferedImage> small = Optional.ofNullable(list.getSelectedValue())
                .flatMap(todo -> context.shelf().picture(todo.first()))
                .flatMap(thumbnails::of);
        image.setIcon(small.map(ImageIcon::new).orElse(null));
    }

    private JButton button(Remedy remedy, int number) {
        JButton button = new JButton(number + "   " + remedy.label());
        button.setName("remedy." + number);
        button.setHorizontalAlignment(JButton.LEFT);
        button.setToolTipText(
                TEXTS.text(number == 1 ? "remedy.tip.first" : "remedy.tip", remedy.hint(), Integer.toString(number)));
        button.addActionListener(e -> remedy.deed().run());
        return button;
    }

    private void mend(int index) {
        if (index < remedies.size()) {
            remedies.get(index).deed().run();
        }
    }

    private void postpone() {
        Todo todo = list.getSelectedValue();
        if (todo != null) {
            later.remove(todo);
            later.add(todo);
            int row = list.getSelectedIndex();
            filling = true;
            model.removeElementAt(row);
            model.addElement(todo);
            list.setSelectedIndex(Math.min(row, model.size() - 1));
            filling = false;
            showChosen();
        }
    }
}
