/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.statement.Query;

/**
 * The conditions of a search: constant texts joined by {@code and}, and the values of their named parameters. No value ever becomes part of a
 * text.
 */
final class Condition {
    private final List<String> texts = new ArrayList<>();
    private final Map<String, Object> values = new LinkedHashMap<>();

    /** A condition without a value. */
    Condition and(String constantText) {
        texts.add(constantText);
        return this;
    }

    /** A condition with one value. */
    Condition and(String constantText, String parameter, Object value) {
        texts.add(constantText);
        values.put(parameter, value);
        return this;
    }

    /** A value of one more parameter of the last condition. */
    Condition with(String parameter, Object value) {
        values.put(parameter, value);
        return this;
    }

    /** The whole statement. */
    String sql(String head, String tail) {
        String where = texts.isEmpty() ? "" : " where " + String.join(" and ", texts);
        return head + where + tail;
    }

    Query bind(Query query) {
        values.forEach(query::bind);
        return query;
    }
}
