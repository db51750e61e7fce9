package tautlog.plan;

import java.util.List;
import java.util.stream.Collectors;

/** What a plan was asked cannot be understood; carries everything that is wrong, one after the other in the message. */
public final class PlanException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Flaw> flaws;

    PlanException(List<Flaw> flaws) {
        super(flaws.stream().map(Flaw::toString).collect(Collectors.joining("\n")));
        this.flaws = List.copyOf(flaws);
    }

    /** One or more. */
    public List<Flaw> flaws() {
        return flaws;
    }
}
