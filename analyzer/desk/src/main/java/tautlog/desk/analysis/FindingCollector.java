package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.desk.report.Report;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Keeps the findings of one outing, and meters the shaft in the time asked for. */
final class FindingCollector implements FindingSink {
    private final List<Finding> findings = new ArrayList<>();

    FindingCollector(Instrument instrument, Rig rig, Calibration calibration, Ticks ticks) {}

    /** Which ticks belong to the time asked for. */
    interface Ticks {
        boolean include(long tick);
    }

    List<Finding> findings() {
        return findings;
    }

    Report.Hours hours(List<Finding> included) {
        return new Report.Hours(
                OptionalDouble.empty(),
                0,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                true,
                List.of(0.0, 0.0, 0.0, 0.0, 0.0));
    }

    @Override
    public void finding(Finding finding) {
        findings.add(finding);
    }

    @Override
    public void second(Second second) {}

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    @Override
    public void shaftReading(long tick, double rpm) {}
}
