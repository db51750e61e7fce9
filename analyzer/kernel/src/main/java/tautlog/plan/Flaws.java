package tautlog.plan;

import java.util.ArrayList;
import java.util.List;
import tautlog.quantity.QuantityException;

/** Collects what is wrong with the texts of a plan. Not thread-safe. */
public final class Flaws {
    private final List<Flaw> found = new ArrayList<>();

    public void add(String key, String foundThere, String allowed) {
        found.add(new Flaw(key, foundThere, allowed));
    }

    /** @param part which part of the text it is: {@code length} */
    void add(String key, String part, QuantityException wrong) {
        add(key, part + ": " + wrong.found(), wrong.allowed());
    }

    /** @throws PlanException with all flaws so far, if there is one */
    public void throwIfAny() throws PlanException {
        if (!found.isEmpty()) {
            throw new PlanException(found);
        }
    }
}
