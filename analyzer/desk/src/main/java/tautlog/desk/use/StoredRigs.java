package tautlog.desk.use;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tautlog.config.ConfigException;
import tautlog.rig.Rig;

/** The rigs stored with outings, each text read once: a season has thousands of outings and a few rigs. Safe for several threads. */
final class StoredRigs {
    private final Map<String, Rig> byText = new ConcurrentHashMap<>();

    /**
     * The rig that {@code toml} describes.
     *
     * @param file that it is stored in, for the refusal
     * @throws ConfigException if this program cannot read it
     */
    Rig of(Path file, String toml) throws ConfigException {
        Rig known = byText.get(toml);
        if (known == null) {
            known = Rig.parse("rig in " + file, toml);
            byText.put(toml, known);
        }
        return known;
    }
}
