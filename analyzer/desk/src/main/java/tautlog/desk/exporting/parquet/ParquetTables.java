package tautlog.desk.exporting.parquet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.column.ParquetProperties.WriterVersion;
import org.apache.parquet.conf.ParquetConfiguration;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.hadoop.ParquetFileWriter;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.io.LocalOutputFile;
import tautlog.desk.exporting.Cells;
import tautlog.desk.exporting.Column;
import tautlog.desk.exporting.Tables;

/**
 * A Parquet file: typed columns, pages compressed with zstd, words and limits as dictionaries, whole numbers as differences.
 * A cell of which nothing is known is null.
 */
public final class ParquetTables implements Tables {
    /** Chosen: so much of a table stands in memory, about a million samples; the rest is in the file already. */
    private static final long ROW_GROUP_BYTES = 16L << 20;

    private final Path file;

    /** @param file is replaced when it is there */
    public ParquetTables(Path file) {
        this.file = file;
    }

    @Override
    public Cells begin(List<Column> columns) throws IOException {
        Builder builder = new Builder(file, columns)
                .withConf(new PlainParquetConfiguration())
                .withCodecFactory(new ZstdCodec())
                .withCompressionCodec(CompressionCodecName.ZSTD)
                .withWriteMode(ParquetFileWriter.Mode.OVERWRITE)
                .withWriterVersion(WriterVersion.PARQUET_2_0)
                .withRowGroupSize(ROW_GROUP_BYTES);
        for (Column column : columns) {
            builder.withDictionaryEncoding(column.name(), isRepeated(column.type()));
        }
        return new ParquetCells(builder.build(), columns);
    }

    /** Numbers of samples, ticks and times hardly come twice: they are written as differences. */
    private static boolean isRepeated(Column.Type type) {
        return type != Column.Type.LONG && type != Column.Type.TIME;
    }

    private static final class Builder extends ParquetWriter.Builder<Row, Builder> {
        private final List<Column> columns;

        Builder(Path file, List<Column> columns) {
            super(new LocalOutputFile(file));
            this.columns = columns;
        }

        @Override
        protected Builder self() {
            return this;
        }

        @Override
        @SuppressWarnings("deprecation") // abstract in the library; a plain configuration never comes here
        protected WriteSupport<Row> getWriteSupport(Configuration conf) {
            return new RowWriteSupport(columns);
        }

        @Override
        protected WriteSupport<Row> getWriteSupport(ParquetConfiguration conf) {
            return new RowWriteSupport(columns);
        }
    }
}
