/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

/** What hides a part of an event from the Earth, or makes it special; each as words. */
public enum EventNote {
    /** Eclipse: begins while the moon is behind the planet. */
    BEGINS_BEHIND_PLANET("begins behind the planet"),
    /** Eclipse: ends while the moon is behind the planet. */
    ENDS_BEHIND_PLANET("ends behind the planet"),
    /** Event that is behind the planet from first to last. */
    WHOLLY_BEHIND_PLANET("wholly behind the planet"),
    /** Occultation: the moon is in the planet's shadow when it goes. */
    BEGINS_IN_SHADOW("goes unseen, in the planet's shadow"),
    /** Occultation: the moon is in the planet's shadow when it comes back. */
    ENDS_IN_SHADOW("comes back unseen, in the planet's shadow"),
    /** Event of a moon that is in the planet's shadow from first to last. */
    WHOLLY_IN_SHADOW("wholly unseen, in the planet's shadow"),
    /** Shadow transit: comes onto the globe on the side turned away from the Earth. */
    BEGINS_ON_FAR_SIDE("comes on beyond the limb"),
    /** Shadow transit: leaves the globe on the side turned away from the Earth. */
    ENDS_ON_FAR_SIDE("leaves beyond the limb"),
    /** Shadow transit: the axis stays on the side turned away from the Earth. */
    WHOLLY_ON_FAR_SIDE("stays beyond the limb"),
    /** Transit: comes on over the unlit limb. */
    BEGINS_ON_UNLIT_LIMB("comes on over the unlit limb"),
    /** Transit: leaves over the unlit limb. */
    ENDS_ON_UNLIT_LIMB("leaves over the unlit limb"),
    /** Occultation: goes behind the unlit limb. */
    GOES_AT_UNLIT_LIMB("goes off the lit edge"),
    /** Occultation: comes back behind the unlit limb. */
    RETURNS_AT_UNLIT_LIMB("comes back off the lit edge"),
    /** The moon's disc is never wholly inside the outline. */
    PARTIAL("partial"),
    /** Only the half-shadow touches. */
    PENUMBRA_ONLY("half-shadow only"),
    /** So near a graze that the error of the orbit may make or unmake it. */
    DOUBTFUL("so near a graze that it may or may not happen"),
    /** Mutual event: the back moon leaves the planet's shadow meanwhile. */
    BACK_COMES_OUT_OF_SHADOW("begins unseen, in the planet's shadow"),
    /** Mutual event: the back moon goes into the planet's shadow meanwhile. */
    BACK_GOES_INTO_SHADOW("ends unseen, in the planet's shadow"),
    /** Mutual occultation by a moon that is itself in the planet's shadow. */
    FRONT_IN_SHADOW("by a moon in the planet's shadow"),
    /** Mutual event before the planet's disc. */
    BEFORE_PLANET("before the planet's disc");

    private final String words;

    EventNote(String words) {
        this.words = words;
    }

    /** As a person reads it. */
    public String words() {
        return words;
    }
}
