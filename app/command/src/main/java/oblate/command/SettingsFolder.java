/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where the user's settings are: {@code OBLATE_SETTINGS}, else the desktop's own place for them. */
final class SettingsFolder {
    private final Map<String, String> environment;

    SettingsFolder(Map<String, String> environment) {
        this.environment = environment;
    }

    Path path() {
        String own = environment.get("OBLATE_SETTINGS");
        if (own != null && !own.isBlank()) {
            return Path.of(own);
        }
        String home = System.getProperty("user.home", ".");
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        if (system.contains("win")) {
            return Path.of(environment.getOrDefault("APPDATA", home), "Oblate");
        }
        if (system.contains("mac")) {
            return Path.of(home, "Library", "Application Support", "Oblate");
        }
        String config = environment.get("XDG_CONFIG_HOME");
        return config == null || config.isBlank() ? Path.of(home, ".config", "oblate") : Path.of(config, "oblate");
    }
}
