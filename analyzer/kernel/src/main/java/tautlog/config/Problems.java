package tautlog.config;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong with one file. Not thread-safe. */
public final class Problems {
    private final String file;
    private final List<Problem> found = new ArrayList<>();

    /** @param file the name that messages show */
    public Problems(String file) {
        this.file = file;
    }

    public void add(int line, String key, String foundThere, String allowed) {
        found.add(new Problem(file, line, key, foundThere, allowed));
    }

    public int count() {
        return found.size();
    }

    /** @throws ConfigException with all problems so far, in the order of their lines, if there is one */
    public void throwIfAny() throws ConfigException {
        if (!found.isEmpty()) {
            throw new ConfigException(found.stream()
                    .sorted(Comparator.comparingInt(Problem::line))
                    .distinct()
                    .toList());
        }
    }
}
