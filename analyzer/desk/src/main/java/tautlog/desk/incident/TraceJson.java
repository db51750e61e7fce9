package tautlog.desk.incident;

import java.io.IOException;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import tautlog.desk.plot.Columns;
import tautlog.desk.report.JsonFields;

/** What a trace's columns hold, a list of numbers each, in the order of time; null where nothing is known. */
final class TraceJson {
    private final JsonFields json;
    private final Columns columns;

    TraceJson(JsonFields json, Columns columns) {
        this.json = json;
        this.columns = columns;
    }

    void write() throws IOException {
        json.numbers("least_n", values(columns::hasTension, columns::least));
        json.numbers("greatest_n", values(columns::hasTension, columns::greatest));
        json.numbers("limit_n", values(column -> true, columns::limit));
        json.numbers("least_rpm", values(columns::hasShaft, columns::leastRpm));
        json.numbers("greatest_rpm", values(columns::hasShaft, columns::greatestRpm));
        json.numbers("gap", values(column -> true, column -> columns.isGap(column) ? 1 : 0));
    }

    private double[] values(IntPredicate known, IntToDoubleFunction value) {
        double[] values = new double[columns.width()];
        for (int column = 0; column < values.length; column++) {
            values[column] = known.test(column) ? value.applyAsDouble(column) : Double.NaN;
        }
        return values;
    }
}
