package tautlog.recording;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.detect.Second;

/** Reads what {@link SecondColumns} wrote. Layout: {@code analyzer/RECORDING.md}, "Seconds". */
final class SecondColumnsReader {
    private final ByteReader in;
    private final int n;
    private final long[] index;
    private final long[] firstNumber;
    private final long[] samples;
    private final long[] flags;
    private final long[] which;
    private final long[] least;
    private final long[] range;
    private final long[] sum;
    private final long[] speed;
    private final double[] share;
    private final List<String> hookups = new ArrayList<>();

    private SecondColumnsReader(ByteReader in, int n) {
        this.in = in;
        this.n = n;
        index = new long[n];
        firstNumber = new long[n];
        samples = new long[n];
        flags = new long[n];
        which = new long[n];
        least = new long[n];
        range = new long[n];
        sum = new long[n];
        speed = new long[n];
        share = new double[n];
    }

    /** @throws IndexOutOfBoundsException if the bytes are no such content */
    static List<Second> decode(ByteReader in, int count) {
        // a second takes half a byte at least, one bit in each of four columns
        if (count < 1 || count > 2L * in.left()) {
            throw new IndexOutOfBoundsException(count + " seconds in " + in.left() + " bytes");
        }
        return new SecondColumnsReader(in, count).decode();
    }

    private List<Second> decode() {
        places();
        samples();
        LongColumn.decode(in, flags, n);
        hookups();
        NumberColumn.decode(in, least, n);
        addUp(least);
        NumberColumn.decode(in, range, n);
        addUp(range);
        NumberColumn.decode(in, sum, n);
        List<OptionalDouble> speeds = speeds();
        shares();
        List<Second> seconds = new ArrayList<>(n);
        long[] spreads = new long[n];
        LongColumn.decode(in, spreads, n);
        for (int i = 0; i < n; i++) {
            seconds.add(second(i, speeds.get(i), spreads[i]));
        }
        if (in.left() > 0) {
            throw new IndexOutOfBoundsException(in.left() + " bytes after the last second");
        }
        return seconds;
    }

    private void places() {
        index[0] = in.zigzag();
        firstNumber[0] = in.zigzag();
        LongColumn.decode(in, index, 1, n - 1);
        LongColumn.decode(in, firstNumber, 1, n - 1);
    }

    private void samples() {
        LongColumn.decode(in, samples, n);
        for (long one : samples) {
            if (one < 1 || one > Integer.MAX_VALUE) {
                throw new IndexOutOfBoundsException("a second of " + one + " samples");
            }
        }
    }

    private static void addUp(long[] steps) {
        for (int i = 1; i < steps.length; i++) {
            steps[i] += steps[i - 1];
        }
    }

    private void hookups() {
        int ids = in.count(in.left());
        for (int i = 0; i < ids; i++) {
            hookups.add(in.text());
        }
        LongColumn.decode(in, which, n);
        for (long one : which) {
            if (one < 0 || one >= ids) {
                throw new IndexOutOfBoundsException("hookup " + one + " of " + ids);
            }
        }
    }

    private List<OptionalDouble> speeds() {
        NumberColumn.decode(in, speed, n);
        addUp(speed);
        List<OptionalDouble> speeds = new ArrayList<>(n);
        for (long code : speed) {
            speeds.add(code == SecondColumns.UNKNOWN_SPEED ? OptionalDouble.empty() : OptionalDouble.of(rpm(code)));
        }
        return speeds;
    }

    private double rpm(long code) {
        if (code < SecondColumns.WHOLE_SPEED) {
            throw new IndexOutOfBoundsException("a shaft speed coded as " + code);
        }
        return code == SecondColumns.WHOLE_SPEED ? in.f64() : SecondColumns.rpmOf(code - 1);
    }

    private void shares() {
        List<Optional<ShareForecast>> forecasts = new ArrayList<>();
        for (int i = 0; i < hookups.size(); i++) {
            forecasts.add(forecast());
        }
        int some = 0;
        for (long one : which) {
            some += forecasts.get((int) one).isPresent() ? 1 : 0;
        }
        long[] surprise = new long[some];
        NumberColumn.decode(in, surprise, some);
        int at = 0;
        for (int i = 0; i < n; i++) {
            Optional<ShareForecast> forecast = forecasts.get((int) which[i]);
            long steps = forecast.isPresent() ? surprise[at++] : ShareForecast.WHOLE;
            share[i] = steps == ShareForecast.WHOLE
                    ? in.f64()
                    : forecast.orElseThrow().share((int) (least[i] + range[i]), steps);
        }
    }

    private Optional<ShareForecast> forecast() {
        int head = in.u8();
        if (head > SecondColumns.FORECAST) {
            throw new IndexOutOfBoundsException("a hookup's share is foretold in way " + head);
        }
        return head == SecondColumns.FORECAST ? Optional.of(new ShareForecast(in.f64(), in.f64())) : Optional.empty();
    }

    private Second second(int i, OptionalDouble rpm, long spread) {
        if (i > 0) {
            index[i] += index[i - 1] + 1;
            firstNumber[i] += firstNumber[i - 1] + (int) samples[i - 1];
        }
        int lowest = (int) least[i];
        int highest = (int) (least[i] + range[i]);
        long countSum = sum[i] + SecondColumns.middle(lowest, highest, (int) samples[i]);
        BigInteger squares =
                spread == 0 ? BigInteger.ZERO : SecondCodec.squares(in, spread, countSum, (int) samples[i]);
        return new Second(
                index[i],
                firstNumber[i],
                lowest,
                highest,
                countSum,
                (int) samples[i],
                rpm,
                hookups.get((int) which[i]),
                share[i],
                (int) flags[i],
                squares);
    }
}
