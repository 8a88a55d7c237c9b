/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import oblate.archive.StoredMark;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/**
 * Gives the archive what a hand did to marks. What it does not take while its picture still lies on the desk goes back into the hand; on a picture that was left
 * it waits, and is offered again as soon as the archive takes something. On the event thread only.
 */
final class MarkKeeper {
    private static final Texts TEXTS = Texts.of(MarkKeeper.class);
    private final PanelContext context;
    private final Desk desk;
    private final MarkDesk marks;
    private final WaitingMarks waiting = new WaitingMarks();

    MarkKeeper(PanelContext context, Desk desk, MarkDesk marks) {
        this.context = context;
        this.desk = desk;
        this.marks = marks;
    }

    /** Keeps something, and tells what came of it if its picture still lies on the desk. */
    void keep(InHand what, MarkDesk.Answer whileThere) {
        MarkDesk.Answer answer = new MarkDesk.Answer() {
            @Override
            public void done(StoredMark mark) {
                desk.changedShelf();
                if (desk.isOn(what.pictureId())) {
                    whileThere.done(mark);
                }
                waiting.takeAll().forEach(w -> keep(w.what(), new Late(w.what())));
            }

            @Override
            public void failed(String why) {
                if (desk.isOn(what.pictureId())) {
                    whileThere.failed(why);
                } else {
                    letWait(what, why);
                }
            }
        };
        if (what.isFresh()) {
            marks.add(what.mark(), answer);
        } else if (what.name().isPresent()) {
            marks.name(what.old().orElseThrow(), what.mark(), what.name().get(), answer);
        } else {
            marks.move(what.old().orElseThrow(), what.mark(), answer);
        }
    }

    /** Takes a mark out of use. */
    void withdraw(StoredMark mark, Runnable whenDone) {
        marks.withdraw(mark, new MarkDesk.Answer() {
            @Override
            public void done(StoredMark gone) {
                desk.changedShelf();
                if (desk.isOn(mark.mark().pictureId())) {
                    whenDone.run();
                }
            }

            @Override
            public void failed(String why) {
                context.say(TEXTS.text("mark.not.withdrawn", why));
            }
        });
    }

    /** Leaves something on its picture, and says so. */
    void letWait(InHand what, String why) {
        waiting.put(what, why);
        String name = context.shelf()
                .picture(what.pictureId())
                .map(p -> p.originalName())
                .orElse("");
        context.say(TEXTS.text("mark.waits", name, why));
    }

    /** What waits on a picture; it waits no longer. */
    Optional<WaitingMarks.Waiting> take(long pictureId) {
        return waiting.take(pictureId);
    }

    /** What comes of something that waited while its picture is on the desk. */
    private final class Late implements MarkDesk.Answer {
        private final InHand what;

        Late(InHand what) {
            this.what = what;
        }

        @Override
        public void done(StoredMark mark) {
            desk.readAgain(desk::tellContent);
        }

        @Override
        public void failed(String why) {
            letWait(what, why);
        }
    }
}
