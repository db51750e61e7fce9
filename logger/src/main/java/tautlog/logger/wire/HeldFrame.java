package tautlog.logger.wire;

/** A frame that waits for the HELLO that says to which outing it belongs. Values as in {@link FrameSink}. */
@SuppressWarnings("ArrayRecordComponent") // made once, given on once, never compared
sealed interface HeldFrame {
    int seq();

    long tick();

    /** How many sample intervals after {@link #tick} it was made. */
    default int samples() {
        return 0;
    }

    Verdict offerTo(OpenOuting outing);

    record Tension(int seq, long tick, long number, int flags, int[] counts) implements HeldFrame {
        @Override
        public int samples() {
            return counts.length;
        }

        @Override
        public Verdict offerTo(OpenOuting outing) {
            return outing.tension(tick, number, flags, counts, counts.length);
        }
    }

    record Shaft(int seq, long tick, long pulses, int[] ages) implements HeldFrame {
        @Override
        public Verdict offerTo(OpenOuting outing) {
            return outing.shaft(tick, pulses, ages, ages.length);
        }
    }

    record Health(int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost)
            implements HeldFrame {
        @Override
        public Verdict offerTo(OpenOuting outing) {
            return outing.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
        }
    }

    record Input(int seq, long tick, int selector, int present, int state) implements HeldFrame {
        @Override
        public Verdict offerTo(OpenOuting outing) {
            return outing.input(tick, selector, present, state);
        }
    }

    /** A TENSION frame of a channel other than the line's: only its sequence number is of use. */
    record OtherChannel(int seq, long tick) implements HeldFrame {
        @Override
        public Verdict offerTo(OpenOuting outing) {
            return Verdict.TAKEN;
        }
    }
}
