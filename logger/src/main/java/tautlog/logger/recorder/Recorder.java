package tautlog.logger.recorder;

/** Placeholder until the merge of the recording. */
final class Recorder {}
