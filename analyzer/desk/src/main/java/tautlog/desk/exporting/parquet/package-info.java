/**
 * Exported tables as Parquet files.
 *
 * <pre>
 *   Cells ──▶ ParquetCells ──▶ RowWriteSupport ──▶ the Parquet library ──▶ ZstdCodec ──▶ a file
 *             (one row,         (its types)         (pages, row groups)
 *              used again)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.exporting.parquet.ParquetTables}. Only this room knows the Parquet library and the
 * compressor. The library has names of Hadoop in its signatures, which the compiler must see; no class of Hadoop is loaded or
 * shipped, as long as configuration, file and codec are those used here.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.exporting.parquet;
