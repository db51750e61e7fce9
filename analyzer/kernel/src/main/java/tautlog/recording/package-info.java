/** The file: block codec, writer, reader, verification. Start at {@link tautlog.recording.RecordingWriter}. */
@org.jspecify.annotations.NullMarked
package tautlog.recording;
