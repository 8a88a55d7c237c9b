/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/** Which moment of the capture a stated time is. {@code UNSTATED} when the source does not say. */
public enum TimeMeaning {
    START,
    MIDDLE,
    END,
    UNSTATED
}
