/**
 * Reads the TOML files that people write, and tells all that is wrong with one at once.
 *
 * <pre>
 *   text ──▶ ConfigTable.parse ──▶ table.required(key, Reading.force()) … ──▶ typed values
 *                  │                        │
 *                  └────────▶ Problems ◀────┘  finish() adds the unknown keys
 *                                │
 *                                └──▶ ConfigException: every problem with file, line, key, found, allowed
 * </pre>
 *
 * <p>Start at {@link tautlog.config.ConfigTable}. A file's own room ({@code tautlog.rig}, the logger's configuration) asks
 * for its keys and builds its records; here is only what all such files share. Nothing here opens a file.
 */
@org.jspecify.annotations.NullMarked
package tautlog.config;
