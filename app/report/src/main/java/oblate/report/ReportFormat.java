package oblate.report;

import java.io.IOException;
import java.io.Writer;
import oblate.base.Plugin;

/** Extension point: a way to write a table. Stateless. */
public interface ReportFormat extends Plugin {

    /** File name ending without a dot, e.g. "csv". */
    String suffix();

    /** Writes a table. */
    void write(ReportTable table, Writer out) throws IOException;
}
