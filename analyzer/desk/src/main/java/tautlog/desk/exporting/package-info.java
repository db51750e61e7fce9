/**
 * Samples and seconds as tables for other programs.
 *
 * <pre>
 *   recording ──▶ {@link tautlog.desk.exporting.Export} ──┬──▶ {@link tautlog.desk.exporting.SampleRows} ──▶ Cells ──┬──▶ {@link tautlog.desk.exporting.CsvTables}
 *                                       └──▶ {@link tautlog.desk.exporting.SecondRows} ──▶ Cells ──┴──▶ .parquet
 *   report ──▶ {@link tautlog.desk.exporting.FindingTable} ──▶ csv
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.exporting.Export}. Samples stream: a season never stands in memory.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.exporting;
