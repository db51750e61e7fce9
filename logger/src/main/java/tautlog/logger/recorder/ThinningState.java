package tautlog.logger.recorder;

import java.util.Optional;

/**
 * What was thinned since the start, for people.
 *
 * @param outings whose readings were taken out
 * @param bytes given back to the disk
 * @param trouble why a recording could not be thinned when last tried
 */
public record ThinningState(long outings, long bytes, Optional<String> trouble) {
    public static final ThinningState NOTHING = new ThinningState(0, 0, Optional.empty());
}
