package tautlog.sample;

/**
 * What the instrument says of itself; it does not change within an outing. Source: {@code firmware-notes/wire.md}, HELLO.
 *
 * @param id up to 8 ASCII characters
 * @param firmwareMajor 0 to 255
 * @param firmwareMinor 0 to 255
 * @param boot differs at every start of the instrument; unsigned 32 bit
 * @param tickHz the free-running counter's rate, 1,000 to 4,000,000 per second
 * @param rateMillihertz nominal sample rate, 1,000 to 4,000,000 thousandths of a hertz
 * @param fullScale the greatest count of the converter, above 0; from there on, and from {@code -fullScale - 1} down, a
 *     sample is at the end stop
 * @param pulsesPerRevolution of the shaft; 0 when there is no shaft sensor
 */
public record Instrument(
        String id,
        int firmwareMajor,
        int firmwareMinor,
        long boot,
        long tickHz,
        long rateMillihertz,
        int fullScale,
        int pulsesPerRevolution) {
    /** @throws IllegalArgumentException if a number is out of its range */
    public Instrument {
        requireRange("tickHz", tickHz, 1_000, 4_000_000);
        requireRange("rateMillihertz", rateMillihertz, 1_000, 4_000_000);
        requireRange("fullScale", fullScale, 1, Integer.MAX_VALUE);
        requireRange("pulsesPerRevolution", pulsesPerRevolution, 0, 65_535);
    }

    private static void requireRange(String name, long value, long least, long greatest) {
        if (value < least || value > greatest) {
            throw new IllegalArgumentException(name + " must be " + least + " to " + greatest + ", was " + value);
        }
    }

    public SampleRate rate() {
        return new SampleRate(rateMillihertz);
    }

    /** True when {@code counts} is only a bound of the real value, because the converter can go no further. */
    public boolean isAtEndStop(int counts) {
        return counts >= fullScale || counts <= -fullScale - 1;
    }
}
