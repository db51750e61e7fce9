package tautlog.logger.recorder;

import java.util.Optional;

/**
 * How the recording stands, for people.
 *
 * @param file being written, or written last
 * @param lagSeconds age of the oldest event that the disk has not
 * @param trouble what the disk says when it refuses
 * @param refusals how often it refused since the start
 * @param lastLink of the chain, as last committed
 */
public record RecorderState(
        Optional<String> file, double lagSeconds, Optional<String> trouble, long refusals, Optional<String> lastLink) {}
