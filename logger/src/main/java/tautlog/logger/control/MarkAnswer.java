package tautlog.logger.control;

import java.util.Optional;

/**
 * What became of a mark.
 *
 * @param accepted whether it is in the recording, or will be at the next outing's start
 * @param atNumber the sample number at which it acts; empty when no outing has begun
 * @param words for the person who asked
 */
public record MarkAnswer(boolean accepted, Optional<Long> atNumber, String words) {}
