package tautlog.detect;

import tautlog.recording.CodedTrace;
import tautlog.rig.Rig;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** Gives frames and runs to all detectors, nobody asking for seconds. */
final class ChainFeed implements CodedTrace.Reader {
    final BenchSink sink = new BenchSink(false);
    private final Detection detection;
    private final Shaft turning;
    private final BenchShaft shaft = new BenchShaft();

    /** What is told of the shaft. */
    enum Shaft {
        SILENT,
        TURNING
    }

    ChainFeed(Shaft turning) {
        this(DetectorFeed.INSTRUMENT, DetectorFeed.RIG, turning);
    }

    ChainFeed(Instrument instrument, Rig rig, Shaft turning) {
        detection = new Detection(instrument, rig, DetectorFeed.CALIBRATION, sink);
        this.turning = turning;
    }

    @Override
    public void frame(long number, long tick, int flags, int n) {
        if (turning == Shaft.TURNING) {
            shaft.tellBefore(number, detection::shaft);
        }
        detection.frame(number, tick, flags, n);
    }

    @Override
    public boolean passage(Passage passage) {
        int frames = passage.frames();
        if (turning == Shaft.TURNING && frames > 0) {
            shaft.tellBefore(passage.frameNumber(frames - 1), detection::shaft);
        }
        return detection.passage(passage);
    }

    @Override
    public void run(long number, StoredCounts counts) {
        detection.run(number, counts);
    }

    void copyBack(int back, int n, int[] to) {
        detection.copyBack(back, n, to);
    }

    void end() {
        detection.end();
    }

    long told() {
        return sink.told;
    }
}
