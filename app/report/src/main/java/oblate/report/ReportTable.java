package oblate.report;

import java.util.List;
import java.util.Map;

/**
 * A finished table.
 *
 * @param title one line
 * @param facts what holds for all rows, in order: observer, site, kit, method, systems, latitude kind, ephemeris, software
 * @param columns columns
 * @param rows one list per row with one value per column: Double, Long, String, java.time.Instant, Boolean, or null for none
 */
public record ReportTable(String title, Map<String, String> facts, List<Column> columns, List<List<Object>> rows) {}
