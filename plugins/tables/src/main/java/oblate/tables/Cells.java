/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import java.time.Instant;
import oblate.report.Column;
import oblate.report.ReportTable;

/** How single values are written. */
final class Cells {

    private Cells() {}

    /** Numbers with the column's decimals and an ASCII minus, times in ISO 8601 with Z, yes and no; nothing for none. */
    static String plain(Object value, Column column) {
        if (value == null) {
            return "";
        }
        if (value instanceof Double number) {
            return ReportTable.digits(number, column.decimals());
        }
        if (value instanceof Boolean yes) {
            return yes ? "yes" : "no";
        }
        return value instanceof Instant time ? time.toString() : String.valueOf(value);
    }
}
