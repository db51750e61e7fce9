package tautlog.desk.exporting.parquet;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.conf.ParquetConfiguration;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.RecordConsumer;
import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.TimeUnit;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Type;
import org.apache.parquet.schema.Types;
import tautlog.desk.exporting.Column;

/** Says what the columns are and hands the known cells of a row on; every column may hold null. */
final class RowWriteSupport extends WriteSupport<Row> {
    private final List<Column> columns;
    private final Column.Type[] types;
    private Optional<RecordConsumer> consumer = Optional.empty();

    RowWriteSupport(List<Column> columns) {
        this.columns = columns;
        types = columns.stream().map(Column::type).toArray(Column.Type[]::new);
    }

    @Override
    @SuppressWarnings("deprecation") // abstract in the library; a plain configuration never comes here
    public WriteContext init(Configuration configuration) {
        return context();
    }

    @Override
    public WriteContext init(ParquetConfiguration configuration) {
        return context();
    }

    private WriteContext context() {
        return new WriteContext(
                new MessageType(
                        "tautlog", columns.stream().map(RowWriteSupport::field).toList()),
                Map.of());
    }

    private static Type field(Column column) {
        return switch (column.type()) {
            case INT -> Types.optional(PrimitiveTypeName.INT32).named(column.name());
            case LONG -> Types.optional(PrimitiveTypeName.INT64).named(column.name());
            case NUMBER -> Types.optional(PrimitiveTypeName.DOUBLE).named(column.name());
            case TIME ->
                Types.optional(PrimitiveTypeName.INT64)
                        .as(LogicalTypeAnnotation.timestampType(true, TimeUnit.MICROS))
                        .named(column.name());
            case WORD ->
                Types.optional(PrimitiveTypeName.BINARY)
                        .as(LogicalTypeAnnotation.stringType())
                        .named(column.name());
            case FLAG -> Types.optional(PrimitiveTypeName.BOOLEAN).named(column.name());
        };
    }

    @Override
    public void prepareForWrite(RecordConsumer to) {
        consumer = Optional.of(to);
    }

    @Override
    public void write(Row row) {
        RecordConsumer out = consumer.orElseThrow();
        out.startMessage();
        for (int i = 0; i < types.length; i++) {
            if (row.isKnown[i]) {
                String name = columns.get(i).name();
                out.startField(name, i);
                cell(row, i, out);
                out.endField(name, i);
            }
        }
        out.endMessage();
    }

    private void cell(Row row, int i, RecordConsumer out) {
        switch (types[i]) {
            case INT -> out.addInteger(Math.toIntExact(row.wholes[i]));
            case LONG, TIME -> out.addLong(row.wholes[i]);
            case NUMBER -> out.addDouble(row.numbers[i]);
            case WORD -> out.addBinary(Binary.fromString(row.words[i]));
            case FLAG -> out.addBoolean(row.wholes[i] != 0);
        }
    }
}
