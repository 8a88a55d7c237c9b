/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import oblate.base.ProblemException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.statement.SqlStatements;
import org.jdbi.v3.core.statement.TemplateEngine;

/** An open catalog: every call is one transaction, done or not done; a database's complaint comes out as a sentence. Safe for many threads. */
final class Catalog implements AutoCloseable {
    private final Dialect dialect;
    private final String name;
    private final boolean readOnly;
    private final Optional<Path> file;
    private volatile boolean opened;
    private final ConnectionPool readers;
    private final ConnectionPool writers;
    private Jdbi reading;
    private Jdbi writing;

    private Catalog(
            Dialect dialect,
            String name,
            boolean readOnly,
            Optional<Path> file,
            ConnectionPool.Opener read,
            ConnectionPool.Opener write) {
        this.file = file;
        this.dialect = dialect;
        this.name = name;
        this.readOnly = readOnly;
        this.readers = new ConnectionPool(read);
        this.writers = new ConnectionPool(write);
    }

    private static Jdbi through(ConnectionPool pool) {
        Jdbi made = Jdbi.create(pool);
        // Statements are constant texts with named parameters; nothing is ever filled into them.
        made.getConfig(SqlStatements.class)
                .setTemplateEngine(TemplateEngine.NOP)
                .setSqlParser(new NamedParameters());
        return made;
    }

    /** Made when first something is read: making it takes longer than reading. */
    private synchronized Jdbi reading() {
        if (reading == null) {
            reading = through(readers);
        }
        return reading;
    }

    /** Made when first something is written. */
    private synchronized Jdbi writing() {
        if (writing == null) {
            writing = through(writers);
        }
        return writing;
    }

    static Catalog sqlite(SqliteFile file) {
        return new Catalog(
                Dialect.SQLITE,
                file.file().toString(),
                file.readOnly(),
                Optional.of(file.file()),
                file::openForReading,
                file::openForWriting);
    }

    static Catalog group(GroupCatalog group) {
        return new Catalog(
                Dialect.POSTGRESQL,
                group.shownName(),
                false,
                Optional.empty(),
                group::openForReading,
                group::openForWriting);
    }

    Dialect dialect() {
        return dialect;
    }

    /** File or address, as shown to people. */
    String name() {
        return name;
    }

    boolean isReadOnly() {
        return readOnly;
    }

    /** It has been opened: from now on its file is there, or the archive was moved away. */
    void markOpened() {
        opened = true;
    }

    /**
     * Sees to it that nothing is written into a new, empty catalog where an archive was that has been moved meanwhile.
     *
     * @throws ProblemException with {@link ArchiveProblem#ARCHIVE_GONE}
     */
    void requireThere() {
        if (opened && file.filter(f -> !Files.isRegularFile(f)).isPresent()) {
            throw new ProblemException(
                    ArchiveProblem.ARCHIVE_GONE, file.get().toAbsolutePath().getParent());
        }
    }

    <T> T read(Function<Handle, T> work) {
        requireThere();
        try {
            return reading().inTransaction(work::apply);
        } catch (JdbiException e) {
            throw CatalogTrouble.of(dialect, name, e).orElseThrow(() -> e);
        }
    }

    <T> T write(Function<Handle, T> work) {
        if (readOnly) {
            throw new ProblemException(ArchiveProblem.CANNOT_WRITE, name, "the folder is read-only");
        }
        requireThere();
        try {
            return writing().inTransaction(handle -> {
                dialect.beginWrite(handle);
                return work.apply(handle);
            });
        } catch (JdbiException e) {
            throw CatalogTrouble.of(dialect, name, e).orElseThrow(() -> e);
        }
    }

    /** For statements that may not stand in a transaction. */
    void outsideTransaction(Consumer<Handle> work) {
        requireThere();
        try {
            writing().useHandle(work::accept);
        } catch (JdbiException e) {
            throw CatalogTrouble.of(dialect, name, e).orElseThrow(() -> e);
        }
    }

    @Override
    public void close() {
        try {
            readers.close();
            writers.close();
        } catch (SQLException e) {
            throw CatalogTrouble.of(dialect, name, e)
                    .orElseGet(() -> new ProblemException(e, ArchiveProblem.CANNOT_WRITE, name, e.getMessage()));
        }
    }
}
