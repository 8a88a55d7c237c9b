/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Optional;
import oblate.sky.MoonFacts;

/**
 * What was seen of a moon or its shadow in one picture.
 *
 * @param shot the picture or look
 * @param moon the moon
 * @param phenomenon what it was about; empty when the state and the nearest foretold event are to say so
 * @param state what was seen
 * @param shadow whether the shadow was looked at
 */
public record StateSaid(Shot shot, MoonFacts moon, Optional<Phenomenon> phenomenon, MoonState state, boolean shadow) {}
