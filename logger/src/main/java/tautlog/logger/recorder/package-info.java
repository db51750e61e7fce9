/**
 * From the reader's events to a recording on the disk.
 *
 * <pre>
 *   live.LiveOuting ──▶ {@link tautlog.logger.recorder.Backlog} ──▶ {@link tautlog.logger.recorder.Recorder} ──▶ tautlog.recording
 *   (reader thread)      60 s at most        (recorder thread)      begin, append, commit
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.recorder.Recorder}, the recorder thread's work. It owns the recording; the backlog's lock
 * is all that it shares with the reader, which never waits for a disk. A commit starts at most half a second after a sample
 * arrives. A disk that refuses is asked again and again: what waits in the backlog is not lost for a minute.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.recorder;
