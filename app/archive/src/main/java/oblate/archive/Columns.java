/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.OptionalDouble;

/** Columns that may be null, and numbers that may be none (kept as null, since one of the databases has no NaN). */
final class Columns {
    private Columns() {}

    static Optional<String> text(ResultSet rs, String column) throws SQLException {
        return Optional.ofNullable(rs.getString(column));
    }

    static OptionalDouble number(ResultSet rs, String column) throws SQLException {
        double value = rs.getDouble(column);
        return rs.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    static double numberOrNaN(ResultSet rs, String column) throws SQLException {
        return number(rs, column).orElse(Double.NaN);
    }

    static Optional<Long> id(ResultSet rs, String column) throws SQLException {
        long value = rs.getLong(column);
        return rs.wasNull() ? Optional.empty() : Optional.of(value);
    }

    static Optional<Boolean> flag(ResultSet rs, String column) throws SQLException {
        int value = rs.getInt(column);
        return rs.wasNull() ? Optional.empty() : Optional.of(value != 0);
    }

    /** The value to bind for a number that may be NaN. */
    static Double orNull(double value) {
        return Double.isNaN(value) ? null : value;
    }

    /** The value to bind for a flag. */
    static int flag(boolean value) {
        return value ? 1 : 0;
    }
}
