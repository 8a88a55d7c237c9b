/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench;

import java.util.Random;
import oblate.sky.UtcTime;

/** Instants to look at, made once and walked round and round. */
final class Dates {
    private static final int COUNT = 1 << 14;

    /** 1960-01-02 and 2059-12-30, days from 1970-01-01. */
    private static final int FIRST_DAY = -3651;

    private static final int LAST_DAY = 32870;

    private final UtcTime[] times;
    private int next;

    private Dates(UtcTime[] times) {
        this.times = times;
    }

    /** Anywhere in the hundred years of the ephemeris. */
    static Dates random() {
        Random random = new Random(20260101);
        UtcTime[] times = new UtcTime[COUNT];
        for (int i = 0; i < COUNT; i++) {
            times[i] = new UtcTime(FIRST_DAY + random.nextInt(LAST_DAY - FIRST_DAY), random.nextDouble() * 86400);
        }
        return new Dates(times);
    }

    /** Every ten minutes from 2026-01-01 on, as for a season. */
    static Dates inOrder() {
        UtcTime[] times = new UtcTime[COUNT];
        for (int i = 0; i < COUNT; i++) {
            times[i] = new UtcTime(20454 + i / 144, i % 144 * 600.0);
        }
        return new Dates(times);
    }

    /** By the name a benchmark's parameter has: "random" or "ordered". */
    static Dates named(String name) {
        return switch (name) {
            case "random" -> random();
            case "ordered" -> inOrder();
            default -> throw new IllegalArgumentException(name);
        };
    }

    UtcTime next() {
        UtcTime time = times[next];
        next = (next + 1) & (COUNT - 1);
        return time;
    }
}
