package tautlog.desk.analysis;

import java.util.List;
import tautlog.desk.report.Derivation;
import tautlog.desk.report.Moment;
import tautlog.detect.Finding;
import tautlog.recording.RecordingException;

/** What the derivation asks of one outing; reads the recording again only when a shock needs the sample before it. */
final class OutingPlaces implements Derivation.Places {
    private final Study study;
    private final CountLookup counts;

    OutingPlaces(Study study) throws RecordingException {
        this.study = study;
        List<Long> numbers = study.findings().stream()
                .filter(Finding.Shock.class::isInstance)
                .map(Finding::startNumber)
                .toList();
        counts = new CountLookup(numbers);
        if (!numbers.isEmpty()) {
            study.member()
                    .recording()
                    .replay(study.member().outing(), study.member().lessZero(study.calibration(), counts));
        }
    }

    @Override
    public Moment atNumber(long number) throws RecordingException {
        return study.times().ofNumber(number);
    }

    @Override
    public Moment atTick(long tick) {
        return study.times().ofTick(tick);
    }

    @Override
    public int countAt(long number) {
        return counts.countAt(number);
    }

    @Override
    public String hookupAt(long number) {
        return study.hookups().at(number).hookup().id();
    }

    @Override
    public boolean isAssumed(long number) {
        return study.hookups().at(number).assumed();
    }
}
