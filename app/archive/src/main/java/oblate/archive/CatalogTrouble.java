/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.SQLException;
import java.util.Optional;
import oblate.base.ProblemException;

/** Tells what a database's complaint means for a person. */
final class CatalogTrouble {
    private static final int SQLITE_PERM = 3;
    private static final int SQLITE_BUSY = 5;
    private static final int SQLITE_LOCKED = 6;
    private static final int SQLITE_READONLY = 8;
    private static final int SQLITE_IOERR = 10;
    private static final int SQLITE_CORRUPT = 11;
    private static final int SQLITE_FULL = 13;
    private static final int SQLITE_CANTOPEN = 14;
    private static final int SQLITE_CONSTRAINT = 19;
    private static final int SQLITE_NOTADB = 26;

    private CatalogTrouble() {}

    /** The problem behind an exception, or empty when it is none a person can mend. */
    static Optional<ProblemException> of(Dialect dialect, String name, Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof ProblemException problem) {
                return Optional.of(problem);
            }
            if (t instanceof SQLException sql) {
                return kind(dialect, sql).map(k -> new ProblemException(thrown, k, name, reason(dialect, sql)));
            }
        }
        return Optional.empty();
    }

    private static Optional<ArchiveProblem> kind(Dialect dialect, SQLException sql) {
        return dialect == Dialect.SQLITE ? sqliteKind(sql.getErrorCode() & 0xff) : postgresKind(sql.getSQLState());
    }

    private static Optional<ArchiveProblem> sqliteKind(int code) {
        return switch (code) {
            case SQLITE_BUSY, SQLITE_LOCKED -> Optional.of(ArchiveProblem.BUSY);
            case SQLITE_CORRUPT, SQLITE_NOTADB -> Optional.of(ArchiveProblem.BROKEN_CATALOG);
            case SQLITE_PERM, SQLITE_READONLY, SQLITE_IOERR, SQLITE_FULL, SQLITE_CANTOPEN ->
                Optional.of(ArchiveProblem.CANNOT_WRITE);
            case SQLITE_CONSTRAINT -> Optional.of(ArchiveProblem.AGAINST_RULES);
            default -> Optional.empty();
        };
    }

    private static Optional<ArchiveProblem> postgresKind(String state) {
        if (state == null) {
            return Optional.empty();
        }
        if (state.startsWith("08") || state.startsWith("28") || state.startsWith("57P") || state.startsWith("3D")) {
            return Optional.of(ArchiveProblem.GROUP_UNREACHABLE);
        }
        if (state.startsWith("53") || state.equals("25006") || state.equals("42501")) {
            return Optional.of(ArchiveProblem.CANNOT_WRITE);
        }
        if (state.startsWith("23")) {
            return Optional.of(ArchiveProblem.AGAINST_RULES);
        }
        return state.equals("40001") || state.equals("40P01") || state.equals("55P03")
                ? Optional.of(ArchiveProblem.BUSY)
                : Optional.empty();
    }

    /** What the database says, without its code; of a full disk, which it calls a full database, just that. */
    private static String reason(Dialect dialect, SQLException sql) {
        if (dialect == Dialect.SQLITE && (sql.getErrorCode() & 0xff) == SQLITE_FULL) {
            return "the disk is full";
        }
        return oneLine(sql).replaceFirst("^\\[SQLITE_\\w+\\]\\s*", "");
    }

    private static String oneLine(SQLException sql) {
        String message = String.valueOf(sql.getMessage());
        return message.lines().findFirst().orElse("").strip();
    }
}
