/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Locale;
import javax.sql.DataSource;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * Opens connections to one SQLite catalog: write-ahead log, full synchronous, foreign keys on.
 *
 * @param file the catalog
 * @param readOnly nothing may be written, not even beside it
 * @param patience how long to wait for another program's lock
 */
record SqliteFile(Path file, boolean readOnly, Duration patience) {

    /** For reading: sees one state of the catalog per transaction, waits for nobody. */
    Connection openForReading() throws SQLException {
        return open(SQLiteConfig.TransactionMode.DEFERRED);
    }

    /** For writing: a transaction takes the lock at its start, so that it cannot fail half-way for another writer's sake. */
    Connection openForWriting() throws SQLException {
        return open(SQLiteConfig.TransactionMode.IMMEDIATE);
    }

    /** For the migration engine. */
    DataSource dataSource() {
        SQLiteDataSource source = new SQLiteDataSource(config(SQLiteConfig.TransactionMode.IMMEDIATE));
        source.setUrl(url());
        return source;
    }

    private Connection open(SQLiteConfig.TransactionMode mode) throws SQLException {
        // Not by way of the list of drivers, which looks through all jars and starts every driver it finds.
        return JDBC.createConnection(url(), config(mode).toProperties());
    }

    private SQLiteConfig config(SQLiteConfig.TransactionMode mode) {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout((int) patience.toMillis());
        config.enforceForeignKeys(true);
        config.setTransactionMode(mode);
        if (readOnly) {
            config.setReadOnly(true);
        } else {
            config.setJournalMode(SQLiteConfig.JournalMode.WAL);
            config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        }
        return config;
    }

    private String url() {
        return "jdbc:sqlite:"
                + (readOnly ? immutableUri() : file.toAbsolutePath().toString());
    }

    /** SQLite's address for a file nobody can write to: then it needs no lock and makes no files beside it. */
    private String immutableUri() {
        String path = file.toAbsolutePath().toUri().getRawPath();
        return String.format(Locale.ROOT, "file:%s?immutable=1", path);
    }
}
