package tautlog.recording;

/** A place in a span: how much of each kind comes before it. */
record SpanMark(int samples, int shafts, int events, int seconds) {
    static final SpanMark START = new SpanMark(0, 0, 0, 0);

    static SpanMark endOf(Span span) {
        return new SpanMark(span.samples.frames, span.shaft.frames, span.events.size(), span.seconds.size());
    }

    /** What comes after this place in {@code span}. */
    Span rest(Span span) {
        return between(this, endOf(span), span);
    }

    /** What comes before this place in {@code span}. */
    Span upTo(Span span) {
        return between(START, this, span);
    }

    private static Span between(SpanMark from, SpanMark to, Span span) {
        Span part = new Span(span.outing, span.index);
        FrameTable frames = span.samples;
        for (int i = from.samples; i < to.samples; i++) {
            part.samples.add(
                    frames.number[i], frames.tick[i], frames.flags[i], frames.counts, frames.from[i], frames.length(i));
        }
        ShaftTable shafts = span.shaft;
        for (int i = from.shafts; i < to.shafts; i++) {
            part.shaft.add(
                    shafts.tick[i],
                    shafts.pulses[i],
                    shafts.samplesBefore[i],
                    shafts.pulseTick,
                    shafts.from[i],
                    shafts.length(i));
        }
        part.events.addAll(span.events.subList(from.events, to.events));
        part.seconds.addAll(span.seconds.subList(from.seconds, to.seconds));
        return part;
    }
}
