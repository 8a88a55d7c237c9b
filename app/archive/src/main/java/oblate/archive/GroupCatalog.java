/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Objects;
import java.util.Properties;

/**
 * Where a group of observers keeps its shared catalog: a PostgreSQL database of its own. Pictures stay in a folder all of them reach.
 *
 * @param jdbcUrl e.g. {@code jdbc:postgresql://host/database}
 * @param user role of the database
 * @param password its password; never shown or stored
 */
public record GroupCatalog(String jdbcUrl, String user, String password) {

    /** Checks that nothing is missing. */
    public GroupCatalog {
        Objects.requireNonNull(jdbcUrl);
        Objects.requireNonNull(user);
        Objects.requireNonNull(password);
    }

    /** The address without the parameters, which may hold secrets. */
    String shownName() {
        int parameters = jdbcUrl.indexOf('?');
        return parameters < 0 ? jdbcUrl : jdbcUrl.substring(0, parameters);
    }

    Connection openForReading() throws SQLException {
        Connection connection = openForWriting();
        // One state of the catalog per transaction, as with SQLite.
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        return connection;
    }

    Connection openForWriting() throws SQLException {
        Properties properties = new Properties();
        properties.setProperty("user", user);
        properties.setProperty("password", password);
        properties.setProperty("ApplicationName", "oblate");
        return DriverManager.getConnection(jdbcUrl, properties);
    }

    @Override
    public String toString() {
        return "GroupCatalog[" + shownName() + "]";
    }
}
