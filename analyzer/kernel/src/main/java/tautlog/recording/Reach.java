package tautlog.recording;

/** From where to where a span reaches; what is not there is 0. An index for readers, checked by {@code verify}. */
record Reach(long firstNumber, long lastNumber, long firstTick, long lastTick) {
    static Reach of(Span span) {
        FrameTable samples = span.samples;
        ShaftTable shaft = span.shaft;
        if (samples.frames > 0) {
            return new Reach(
                    samples.number[0], samples.nextNumber() - 1, samples.tick[0], samples.tick[samples.frames - 1]);
        }
        if (shaft.frames > 0) {
            return new Reach(0, 0, shaft.tick[0], shaft.tick[shaft.frames - 1]);
        }
        return new Reach(0, 0, 0, 0);
    }
}
