/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's name and version, as reports state them. */
final class Software {

    private Software() {}

    static String nameAndVersion() {
        Properties properties = new Properties();
        try (InputStream in = Software.class.getResourceAsStream("software.properties")) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return "Oblate " + properties.getProperty("version");
    }
}
