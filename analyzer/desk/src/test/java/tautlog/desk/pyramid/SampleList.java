package tautlog.desk.pyramid;

import java.util.ArrayList;
import java.util.List;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.sample.Calibration;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;
import tautlog.sample.ZeroShift;

/** All samples of an outing one by one, the slow and obvious way: the replay that reports use, its zeros taken off. */
final class SampleList extends QuietEvidence {
    private final List<Sample> samples = new ArrayList<>();
    private final SampleTicks ticks;
    private final Scale scale;

    record Sample(long number, long micros, double newtons) {}

    private SampleList(Outing outing, Scale scale) {
        ticks = new SampleTicks(outing.start().instrument());
        this.scale = scale;
    }

    static List<Sample> of(Recording recording, Outing outing, Scale scale, Calibration ofTheDay)
            throws RecordingException {
        SampleList list = new SampleList(outing, scale);
        recording.replay(
                outing, ZeroShift.under(scale.now(), ofTheDay, outing.start().instrument(), list));
        return list.samples;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        ticks.frame(number, tick, n);
        if ((flags & FLAG_OPEN_BRIDGE) == 0) {
            for (int k = 0; k < n; k++) {
                samples.add(new Sample(
                        number + k,
                        scale.axis().micros(ticks.tickOf(k)),
                        scale.now().newtons(counts[from + k])));
            }
        }
    }
}
