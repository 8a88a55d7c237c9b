/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.List;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** The few places where the two kinds of catalog speak differently. */
enum Dialect {
    SQLITE(
            "oblate/catalog/sqlite",
            "p.id in (select rowid from picture_words where picture_words match :words)",
            """
            select picture_id, system_id, cm_deg from picture_meridian
            where picture_id in (select value from json_each('[' || :ids || ']'))
            """,
            """
            select picture_id, kind, sentence from picture_sentence
            where picture_id in (select value from json_each('[' || :ids || ']')) order by picture_id, kind, ordinal
            """,
            """
            select mark_id, system_id, lon_deg from mark_longitude
            where mark_id in (select value from json_each('[' || :ids || ']'))
            """),
    POSTGRESQL("oblate/catalog/postgresql", "p.words_index @@ to_tsquery('simple', :words)", """
            select picture_id, system_id, cm_deg from picture_meridian
            where picture_id = any (cast(string_to_array(:ids, ',') as bigint[]))
            """, """
            select picture_id, kind, sentence from picture_sentence
            where picture_id = any (cast(string_to_array(:ids, ',') as bigint[])) order by picture_id, kind, ordinal
            """, """
            select mark_id, system_id, lon_deg from mark_longitude
            where mark_id = any (cast(string_to_array(:ids, ',') as bigint[]))
            """);

    /** Any number, the same for all who write into one group catalog. */
    private static final long GROUP_LOCK = 0x6f626c617465L;

    private final String migrations;
    private final String wordsCondition;
    private final String meridiansOf;
    private final String sentencesOf;
    private final String longitudesOf;

    Dialect(String migrations, String wordsCondition, String meridiansOf, String sentencesOf, String longitudesOf) {
        this.migrations = migrations;
        this.wordsCondition = wordsCondition;
        this.meridiansOf = meridiansOf;
        this.sentencesOf = sentencesOf;
        this.longitudesOf = longitudesOf;
    }

    /** Folder of the numbered migrations on the class path. */
    String migrations() {
        return migrations;
    }

    /** Condition that picture {@code p} has all of {@code :words}. */
    String wordsCondition() {
        return wordsCondition;
    }

    /** Central meridians of the pictures in {@code :ids}, numbers parted by commas. */
    String meridiansOf() {
        return meridiansOf;
    }

    /** Sentences about the pictures in {@code :ids}. */
    String sentencesOf() {
        return sentencesOf;
    }

    /** Longitudes of the marks in {@code :ids}. */
    String longitudesOf() {
        return longitudesOf;
    }

    /** The value of {@code :words} that finds pictures in which every word, or one beginning with it, stands. */
    String wordsQuery(List<String> words) {
        return switch (this) {
            case SQLITE -> words.stream().map(w -> "\"" + w + "\"*").collect(Collectors.joining(" "));
            case POSTGRESQL -> words.stream().map(w -> w + ":*").collect(Collectors.joining(" & "));
        };
    }

    /** Called first in every writing transaction, so that two of them never overlap. SQLite does it by itself. */
    void beginWrite(Handle handle) {
        if (this == POSTGRESQL) {
            handle.createQuery("select 1 from (select pg_advisory_xact_lock(:lock)) as held")
                    .bind("lock", GROUP_LOCK)
                    .mapTo(Integer.class)
                    .one();
        }
    }
}
