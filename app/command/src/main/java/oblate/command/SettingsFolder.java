/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/**
 * Where the user's settings are: {@code OBLATE_SETTINGS}, else the desktop's own place for them; and where things are kept that may be deleted at any
 * time.
 */
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

    /** The folder for what may be deleted at any time; the start script keeps its classes there too. */
    Path cache() {
        String own = environment.get("OBLATE_SETTINGS");
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        if ((own != null && !own.isBlank()) || system.contains("win") || system.contains("mac")) {
            return path().resolve("cache");
        }
        String cache = environment.get("XDG_CACHE_HOME");
        return cache == null || cache.isBlank()
                ? Path.of(System.getProperty("user.home", "."), ".cache", "oblate")
                : Path.of(cache, "oblate");
    }
}
