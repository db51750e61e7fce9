/**
 * What people wrote to findings and times: {@code notes.jsonl} beside the recordings.
 *
 * <pre>
 *   the evening view ◀─▶ {@link tautlog.desk.notes.NoteBook} ──▶ disk
 *   notes.jsonl ──▶ {@link tautlog.desk.notes.NoteLines} ──▶ {@link tautlog.desk.notes.Note} ──▶ the evening view, an incident
 * </pre>
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.notes;
