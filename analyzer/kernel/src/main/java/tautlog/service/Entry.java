package tautlog.service;

import java.time.Instant;
import java.util.Optional;

/**
 * One line of the ledger: what somebody did, saw or worked.
 *
 * @param id told apart from every other entry of every laptop
 * @param at when it was so
 * @param written when the line was written; that of a line without it is {@code at}
 * @param by who did it
 * @param winch whose it is; empty where the ledger speaks of one winch only
 * @param replaces the id of an earlier entry that this one corrects
 */
public record Entry(
        String id,
        Instant at,
        Instant written,
        Optional<String> by,
        Optional<String> winch,
        Optional<String> note,
        Optional<String> replaces,
        Act act) {
    /** Whether it says who answers for it. */
    public boolean isNamed() {
        return by.filter(name -> !name.isBlank()).isPresent();
    }

    /** Whether it puts gear into service, new or after an inspection; only with the name of who answers for that. */
    public boolean putsIntoService() {
        return isNamed() && act instanceof Act.OnGear on && on.putsIntoService();
    }
}
