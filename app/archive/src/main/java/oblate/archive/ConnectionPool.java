/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jdbi.v3.core.ConnectionFactory;

/** Keeps a few connections open for reuse. Safe for many threads. */
final class ConnectionPool implements ConnectionFactory, AutoCloseable {
    private static final int MOST_IDLE = 4;
    private static final int VALID_TIMEOUT_S = 3;
    private static final long TRUSTED_IDLE_NANOS = 30_000_000_000L;

    private final Opener opener;
    private final Deque<Idle> idle = new ArrayDeque<>();
    private boolean closed;

    ConnectionPool(Opener opener) {
        this.opener = opener;
    }

    @Override
    public Connection openConnection() throws SQLException {
        Idle kept = takeIdle();
        while (kept != null) {
            if (System.nanoTime() - kept.sinceNanos() < TRUSTED_IDLE_NANOS
                    || kept.connection().isValid(VALID_TIMEOUT_S)) {
                return kept.connection();
            }
            kept.connection().close();
            kept = takeIdle();
        }
        return opener.open();
    }

    private synchronized Idle takeIdle() {
        return idle.pollLast();
    }

    @Override
    public void closeConnection(Connection connection) throws SQLException {
        synchronized (this) {
            if (!closed && idle.size() < MOST_IDLE && !connection.isClosed() && connection.getAutoCommit()) {
                idle.addLast(new Idle(connection, System.nanoTime()));
                return;
            }
        }
        connection.close();
    }

    @Override
    public synchronized void close() throws SQLException {
        closed = true;
        SQLException first = null;
        while (!idle.isEmpty()) {
            try {
                idle.pollLast().connection().close();
            } catch (SQLException e) {
                first = first == null ? e : first;
            }
        }
        if (first != null) {
            throw first;
        }
    }

    /** Opens one more connection. */
    @FunctionalInterface
    interface Opener {
        Connection open() throws SQLException;
    }

    private record Idle(Connection connection, long sinceNanos) {}
}
