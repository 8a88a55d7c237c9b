/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.sky.GroundView;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.EventKind;
import oblate.workbench.words.Texts;

/** Something that moons do, with what the site makes of it: a {@link MoonEvent} with the planet, a {@link MoonMeeting} with each other. */
sealed interface Happening permits MoonEvent, MoonMeeting {
    /**
     * A moment of it.
     *
     * @param key of its name in the texts
     * @param contact when, with its error
     */
    record Touch(String key, Contact contact) {}

    /** What moves before or behind what. */
    EventKind kind();

    /** What happens, in a word or two: "Transit", "Eclipse by Io". */
    String what();

    /** The moon it happens to. */
    String moonName();

    /** Ids of the moons that take part. */
    Set<String> moonIds();

    /** First touch; the middle where there is none. */
    UtcTime from();

    /** Least distance. */
    UtcTime mid();

    /** Last touch; the middle where there is none. */
    UtcTime to();

    /** Standard error of a contact (s). */
    Optional<Double> sigmaS();

    /** Planet and Sun over the site at the first touch; none without a site. */
    Optional<GroundView> begin();

    /** The same at the last touch. */
    Optional<GroundView> end();

    /** Why nothing of it can be seen; none when something can. */
    Optional<Hindrance> hindrance();

    /** The moment that shows it best. */
    UtcTime shown();

    /** Whether the Earth would see its beginning, were the planet up. */
    boolean isBeginSeen();

    /** The same for its end. */
    boolean isEndSeen();

    /** Its moments in order of time. */
    List<Touch> touches();

    /** What is hidden or special, and why it cannot be seen, in words; empty when there is nothing to say. */
    String words();

    /** One sentence: who does what, and what is special about it. */
    default String sentence() {
        String lower = what().substring(0, 1).toLowerCase(java.util.Locale.ROOT) + what().substring(1);
        return words().isEmpty()
                ? Texts.of(Happening.class).text("said", moonName(), lower)
                : Texts.of(Happening.class).text("said.notes", moonName(), lower, words());
    }
}
