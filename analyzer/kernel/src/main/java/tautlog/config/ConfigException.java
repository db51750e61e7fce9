package tautlog.config;

import java.util.List;
import java.util.stream.Collectors;

/** A file that cannot be used as it is written; carries all its problems, one after the other in the message. */
public final class ConfigException extends Exception {
    private final transient List<Problem> problems;

    public ConfigException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /** One or more, in the order of their lines. */
    public List<Problem> problems() {
        return problems;
    }
}
