package tautlog.recording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import tautlog.detect.Second;

/**
 * Codes a list of seconds, one or more, column by column: a few bytes for each instead of {@link SecondCodec}'s thirty. Layout: {@code
 * analyzer/RECORDING.md}, "Seconds". Read by {@link SecondColumnsReader}.
 */
final class SecondColumns {
    static final int UNKNOWN_SPEED = 0;
    /** The speed stands whole behind the column. */
    static final int WHOLE_SPEED = -1;

    static final int NO_FORECAST = 0;
    static final int FORECAST = 1;
    /** In tenths of a revolution per minute; chosen: faster than any shaft, and every tenth up to it is another double. */
    private static final long FASTEST = 1L << 40;

    private final List<Second> seconds;
    private final int n;
    private final ByteWriter out;
    private final long[] column;

    private SecondColumns(List<Second> seconds, ByteWriter out) {
        this.seconds = seconds;
        this.n = seconds.size();
        this.out = out;
        this.column = new long[n];
    }

    static void encode(List<Second> seconds, ByteWriter out) {
        new SecondColumns(seconds, out).encode();
    }

    private void encode() {
        places();
        fill(Second::samples);
        LongColumn.encode(column, n, out);
        fill(second -> second.flags() & 0xFFFF_FFFFL);
        LongColumn.encode(column, n, out);
        Map<String, List<Second>> hookups = hookups();
        steps(Second::least);
        steps(second -> (long) second.greatest() - second.least());
        fill(second -> second.countSum() - middle(second.least(), second.greatest(), second.samples()));
        NumberColumn.encode(column, n, out);
        speeds();
        shares(hookups);
        squares();
    }

    /** Where each second stands: index and first number. */
    private void places() {
        out.zigzag(seconds.get(0).index());
        out.zigzag(seconds.get(0).firstNumber());
        for (int i = 1; i < n; i++) {
            column[i - 1] = seconds.get(i).index() - seconds.get(i - 1).index() - 1;
        }
        LongColumn.encode(column, n - 1, out);
        for (int i = 1; i < n; i++) {
            Second before = seconds.get(i - 1);
            column[i - 1] = seconds.get(i).firstNumber() - before.firstNumber() - before.samples();
        }
        LongColumn.encode(column, n - 1, out);
    }

    private void fill(ToLongFunction<Second> value) {
        for (int i = 0; i < n; i++) {
            column[i] = value.applyAsLong(seconds.get(i));
        }
    }

    /** A column of differences. */
    private void steps(ToLongFunction<Second> value) {
        long before = 0;
        for (int i = 0; i < n; i++) {
            long now = value.applyAsLong(seconds.get(i));
            column[i] = now - before;
            before = now;
        }
        NumberColumn.encode(column, n, out);
    }

    /** What the sum would be if the counts lay evenly between both; rounded down, wraps. */
    static long middle(int least, int greatest, int samples) {
        return (((long) least + greatest) * samples) >> 1;
    }

    /** The seconds of each hookup, in the order in which they come. */
    private Map<String, List<Second>> hookups() {
        Map<String, List<Second>> hookups = new LinkedHashMap<>();
        for (Second second : seconds) {
            hookups.computeIfAbsent(second.hookup(), id -> new ArrayList<>()).add(second);
        }
        List<String> ids = List.copyOf(hookups.keySet());
        out.varint(ids.size());
        ids.forEach(out::text);
        fill(second -> ids.indexOf(second.hookup()));
        LongColumn.encode(column, n, out);
        return hookups;
    }

    private void speeds() {
        steps(SecondColumns::speed);
        for (Second second : seconds) {
            if (speed(second) == WHOLE_SPEED) {
                out.f64(second.shaftRpm().orElseThrow());
            }
        }
    }

    /** Tenths of a revolution per minute + 1, where they give the speed bit for bit. */
    private static long speed(Second second) {
        if (second.shaftRpm().isEmpty()) {
            return UNKNOWN_SPEED;
        }
        double rpm = second.shaftRpm().orElseThrow();
        long tenths = Math.round(rpm * 10);
        boolean exact = tenths >= 0
                && tenths <= FASTEST
                && Double.doubleToRawLongBits(rpmOf(tenths)) == Double.doubleToRawLongBits(rpm);
        return exact ? tenths + 1 : WHOLE_SPEED;
    }

    static double rpmOf(long tenths) {
        return tenths / 10.0;
    }

    private void shares(Map<String, List<Second>> hookups) {
        Map<String, Optional<ShareForecast>> forecasts = new LinkedHashMap<>();
        hookups.forEach((id, of) -> forecasts.put(id, forecast(of)));
        int some = 0;
        List<Second> whole = new ArrayList<>();
        for (Second second : seconds) {
            Optional<ShareForecast> forecast = forecasts.getOrDefault(second.hookup(), Optional.empty());
            long surprise = forecast.map(by -> by.surprise(second)).orElse(ShareForecast.WHOLE);
            if (forecast.isPresent()) {
                column[some++] = surprise;
            }
            if (surprise == ShareForecast.WHOLE) {
                whole.add(second);
            }
        }
        NumberColumn.encode(column, some, out);
        whole.forEach(second -> out.f64(second.share()));
    }

    private Optional<ShareForecast> forecast(List<Second> ofOneHookup) {
        Optional<ShareForecast> forecast = ShareForecast.of(ofOneHookup);
        out.u8(forecast.isPresent() ? FORECAST : NO_FORECAST);
        forecast.ifPresent(by -> {
            out.f64(by.zeroCounts());
            out.f64(by.sharePerCount());
        });
        return forecast;
    }

    private void squares() {
        byte[][] spreads = new byte[n][];
        for (int i = 0; i < n; i++) {
            Second second = seconds.get(i);
            spreads[i] = second.countSquares().signum() == 0 ? new byte[0] : SecondCodec.spread(second);
            column[i] = spreads[i].length;
        }
        LongColumn.encode(column, n, out);
        for (byte[] spread : spreads) {
            out.raw(spread, 0, spread.length);
        }
    }
}
