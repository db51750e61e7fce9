package tautlog.detect;

import tautlog.sample.Passage;

/** Takes frames as they are announced, before their samples: finds gaps and open bridges, notes which tick each had and where its samples go. */
final class FrameArrivals {
    private final Thresholds thresholds;
    private final CountRing ring;
    private final Frames frames;
    private final GapDetector gaps;
    private final OpenBridgeDetector openBridges;
    private final SecondsMaker seconds;
    private final Detector[] detectors;
    private boolean anyPresent;
    private long lastPresent;
    private long number;
    private long tick;
    private int length;
    private boolean isPresent;

    /** @param detectors are told of the gaps between present samples */
    FrameArrivals(
            Thresholds thresholds,
            CountRing ring,
            Frames frames,
            SecondsMaker seconds,
            FindingSink sink,
            Detector[] detectors) {
        this.thresholds = thresholds;
        this.ring = ring;
        this.frames = frames;
        this.seconds = seconds;
        this.detectors = detectors;
        gaps = new GapDetector(thresholds, sink);
        openBridges = new OpenBridgeDetector(sink);
    }

    /**
     * The next frame.
     *
     * @param present whether its samples mean something
     */
    void frame(long first, long firstTick, boolean present, int n) {
        number = first;
        tick = firstTick;
        length = n;
        isPresent = present;
        gaps.frame(first, n);
        if (present) {
            openBridges.close();
            beginPresent();
        } else {
            openBridges.flagged(first, n);
            seconds.openBridge(first, n);
            frames.absent(first, firstTick, n);
        }
    }

    private void beginPresent() {
        if (!anyPresent) {
            anyPresent = true;
            ring.beginStretch(number);
        } else if (number > lastPresent + 1) {
            boolean isLong = number - lastPresent - 1 > thresholds.bridge;
            Gap gap = new Gap(lastPresent + 1, number - 1, isLong);
            for (Detector detector : detectors) {
                detector.gap(gap);
            }
            ring.beginStretch(number);
        }
        frames.present(number, tick, length, ring.placeOf(number));
        lastPresent = number + length - 1;
    }

    /** Whether {@link #passage} can take the frames of this one: they go on where the one before ended, and begin in order. */
    boolean goesOn(Passage passage) {
        if (!anyPresent || passage.frames() == 0) {
            return anyPresent;
        }
        boolean goesOn = frames.rise() && passage.frameNumber(0) == lastPresent + 1 && passage.frameTick(0) >= tick;
        for (int i = 1; goesOn && i < passage.frames(); i++) {
            goesOn = passage.frameTick(i) >= passage.frameTick(i - 1);
        }
        return goesOn;
    }

    /**
     * All frames of a passage at once.
     *
     * @return whether its samples surely follow each other so closely that one lies between any two shaft readings
     */
    boolean passage(Passage passage) {
        int last = passage.frames() - 1;
        if (last < 0) {
            return frames.latestIsClose();
        }
        long first = passage.frameNumber(0);
        number = passage.frameNumber(last);
        tick = passage.frameTick(last);
        length = passage.frameLength(last);
        isPresent = true;
        lastPresent = number + length - 1;
        gaps.frame(first, (int) (lastPresent - first + 1));
        openBridges.close();
        return frames.present(passage, ring.placeOf(first));
    }

    /** The outing is over. */
    void end() {
        openBridges.close();
    }

    /** Number of the last sample of the latest frame whose samples mean something. */
    long lastPresent() {
        return lastPresent;
    }

    /** Number of the first sample of the latest frame. */
    long number() {
        return number;
    }

    /** Tick of the first sample of the latest frame. */
    long tick() {
        return tick;
    }

    /** How many samples the latest frame has. */
    int length() {
        return length;
    }

    /** Whether the samples of the latest frame mean something. */
    boolean isPresent() {
        return isPresent;
    }
}
