/**
 * Reads the tables of an SQLite file out of its bytes, where the file is plain: closed, in no journal's debt, nothing odd in it.
 *
 * <pre>
 *   bytes of the whole file ──▶ PlainFile ──▶ Table (name, definition) ──▶ Row: whole numbers, texts, bytes
 *                                   └── anything unusual: NotPlainException; SQLite is to read the file, or to refuse it
 * </pre>
 *
 * <p>Start at {@link tautlog.recording.pages.PlainFile}. Source of all offsets: the SQLite project's page "Database File Format", sections
 * 1.3 (header), 1.6 (b-trees, overflow) and 2.1 (records). Nothing here opens a file, mends one or says why it is bad: it takes what is
 * beyond doubt and leaves the rest to SQLite.
 */
@org.jspecify.annotations.NullMarked
package tautlog.recording.pages;
