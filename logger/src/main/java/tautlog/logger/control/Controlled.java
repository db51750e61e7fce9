package tautlog.logger.control;

import java.util.Optional;

/** What other commands may ask of the running logger; called by the control thread. */
public interface Controlled {
    Status status();

    /**
     * Says which hookup is on, leaves a note, or both, at the next sample.
     *
     * @param hookup id of a hookup of the rig
     */
    MarkAnswer mark(Optional<String> hookup, Optional<String> note) throws InterruptedException;
}
