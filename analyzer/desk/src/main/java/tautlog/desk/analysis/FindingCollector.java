package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.Report;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.usage.Hours;

/** Keeps the findings and seconds of one outing, and meters the shaft in the time asked for. */
final class FindingCollector implements FindingSink {
    private final List<Finding> findings = new ArrayList<>();
    private final List<Second> seconds = new ArrayList<>();
    private final Hours meters;
    private final Ticks ticks;
    private boolean hasShaftReading;
    private boolean included;

    FindingCollector(Instrument instrument, Rig rig, Calibration calibration, Ticks ticks) {
        this.meters = new Hours(instrument, rig, calibration);
        this.ticks = ticks;
    }

    /** Which ticks belong to the time asked for. */
    interface Ticks {
        boolean include(long tick);
    }

    List<Finding> findings() {
        return findings;
    }

    /** What was found so far, as the logger would have said it. */
    LiveSpeech speech() {
        return new LiveSpeech(findings, seconds);
    }

    /**
     * The meters.
     *
     * @param counted those findings that belong to the time asked for; metered here, once
     */
    Report.Hours hours(List<Finding> counted) {
        counted.forEach(meters::finding);
        OptionalDouble joint = hasShaftReading ? meters.jointHours() : OptionalDouble.empty();
        return new Report.Hours(
                known(meters.shaftHours()),
                meters.pullHours(),
                known(meters.winchingHours()),
                known(meters.heldHours()),
                joint,
                joint.isEmpty() || meters.jointHoursAreAtMost(),
                IntStream.range(0, JsonReport.BAND_KEYS.size())
                        .mapToObj(meters::bandHours)
                        .toList());
    }

    /** Unknown without a single reading: a sensor that never spoke does not say that the shaft stood. */
    private OptionalDouble known(double hours) {
        return hasShaftReading ? OptionalDouble.of(hours) : OptionalDouble.empty();
    }

    /** The meters of an outing of which only the shaft can be read again: what the joint bore is not known. */
    Report.Hours hoursWithoutReadings(List<Finding> said) {
        Report.Hours hours = hours(said);
        return new Report.Hours(
                hours.shaftHours(),
                hours.pullHours(),
                hours.winchingHours(),
                hours.heldHours(),
                OptionalDouble.empty(),
                true,
                hours.bandHours());
    }

    @Override
    public void finding(Finding finding) {
        findings.add(finding);
    }

    @Override
    public void second(Second second) {
        seconds.add(second);
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    @Override
    public void shaftReading(long tick, double rpm) {
        hasShaftReading = true;
        included = ticks.include(tick);
        if (included) {
            meters.shaftReading(tick, rpm);
        }
    }

    @Override
    public void shaftInterval(long length, double rpm, int samples, GreatestCount greatest, Known clutch) {
        if (included) {
            meters.shaftInterval(length, rpm, samples, greatest, clutch);
        }
    }
}
