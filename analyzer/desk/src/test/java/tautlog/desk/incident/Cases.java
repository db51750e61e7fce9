package tautlog.desk.incident;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.fixtures.Desk;

/** Calibrations and runs that several tests of this room need. */
final class Cases {
    /** One count a newton, readings known to 22.28 N: see {@code IntervalReportTest}. */
    private static final String TOML = """
            schema = 1
            calibrated_at = 2026-04-20T08:00:00Z
            b0_counts = 0.0
            b1_counts_per_newton = 1.0
            [fit]
            residual_sd_counts = 10.0
            degrees_of_freedom = 10
            least_load_n = 0.0
            greatest_load_n = %s
            reference_percent = 0.0
            directions = "both"
            [fit.covariance]
            b0_b0 = 0.0
            b0_b1 = 0.0
            b1_b1 = 0.0
            """;

    private Cases() {}

    static CellCalibration known() throws ConfigException {
        return CellCalibration.parse("calibration.toml", TOML.formatted("50000.0"));
    }

    /** The same, proven to 20 kN only. */
    static CellCalibration narrow() throws ConfigException {
        return CellCalibration.parse("calibration.toml", TOML.formatted("20000.0"));
    }

    static JsonObject json(Path recording, String at, Object... more) {
        Object[] arguments = new Object[5 + more.length];
        arguments[0] = "incident";
        arguments[1] = recording;
        arguments[2] = "--at";
        arguments[3] = at;
        arguments[4] = "--json";
        System.arraycopy(more, 0, arguments, 5, more.length);
        return JsonParser.parseString(Desk.run(arguments).out()).getAsJsonObject();
    }
}
