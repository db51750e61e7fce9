/**
 * The file: block codec, writer, reader, verification. What the bytes mean: {@code analyzer/RECORDING.md}.
 *
 * <pre>
 *   calls of {@link tautlog.sample.Evidence}
 *        │                                   file (SQLite)
 *        ▼           every half second     ┌──────────────┐
 *   OutingJournal ───────────────────────▶ │ tail         │
 *     (spans)     ──── when full ────────▶ │ evidence     │ ──▶ Replay ──▶ calls of Evidence, or runs and passages
 *                    blocks and links      │ seconds      │                ({@link tautlog.recording.RunSink})
 *                                          │ finding      │ ──▶ Verifier ──▶ {@link tautlog.recording.Verification}
 *                                          └──────────────┘
 * </pre>
 *
 * <p>Who reads most of a recording ({@link tautlog.recording.Recording#openToReadAll}) gets a closed one out of its bytes: {@code
 * ClosedFile} ──▶ {@code PlainRows}, over {@link tautlog.recording.pages}; any other, and any in doubt, through SQLite ({@code SqlRows}).
 *
 * <p>A closed file is written again, beside itself, by {@link tautlog.recording.Thinner} (on the board, with fewer readings) and {@link
 * tautlog.recording.Packer} (at the desk, smaller and whole).
 *
 * <p>Start at {@link tautlog.recording.RecordingWriter} and {@link tautlog.recording.Recording}. Nothing here reads a clock
 * or a port, and nothing decides what a sample means. SQLite is known to this package only.
 */
@org.jspecify.annotations.NullMarked
package tautlog.recording;
