package tautlog.logger.instrument.modbus;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import tautlog.logger.config.ModbusForm;
import tautlog.logger.config.ReadingScale;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.instrument.ReadingFault;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.modbus.Poller.Pace;
import tautlog.logger.instrument.modbus.RegisterQuestion.Answer;
import tautlog.logger.instrument.modbus.RegisterValue.Meaning;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.wire.LineCounts;

/** Readings from a Modbus RTU transmitter. No answer is no reading: never the last value again. */
public final class ModbusFeed implements InstrumentFeed {
    /** Modbus over Serial Line V1.02: characters of 11 bits, 3.5 of them between frames, above 19,200 baud 1.75 ms. */
    private static final int FASTEST_COUNTED_BAUD = 19_200;

    private static final long FIXED_GAP_NANOS = 1_750_000;

    private final RegisterQuestion question;
    private final Exchange exchange;
    private final RegisterValue value;
    private final ReadingOuting outing;
    private final int fullScaleCounts;
    private final Pace pace;
    private final Trust trust = new Trust();
    private final ModbusForm form;
    private volatile Optional<Integer> unprovenBytes = Optional.empty();
    private @Nullable Poller poller;

    /** @param baud of the line: how long a silence between frames is */
    public ModbusFeed(ModbusForm form, ReadingScale scale, int baud, ReadingOuting outing) {
        this.form = form;
        this.outing = outing;
        question = new RegisterQuestion(form);
        exchange = new Exchange(question);
        value = new RegisterValue(form, scale.decimals());
        fullScaleCounts = scale.fullScaleCounts();
        pace = new Pace(
                TimeUnit.SECONDS.toNanos(1_000) / scale.rateMillihertz(),
                gapNanos(baud),
                TimeUnit.MILLISECONDS.toNanos(form.timeoutMillis()));
    }

    static long gapNanos(int baud) {
        return baud > FASTEST_COUNTED_BAUD ? FIXED_GAP_NANOS : 38_500_000_000L / baud;
    }

    @Override
    public void opened(InstrumentLine line) {
        Poller next = new Poller(line, question.request(), exchange, outing, pace);
        poller = next;
        next.start();
    }

    @Override
    public void bytes(long nowNanos, byte[] bytes, int n) {
        outing.arriving(nowNanos);
        if (n > 0) {
            exchange.heard(bytes, n).ifPresent(answer -> take(nowNanos, answer));
        }
    }

    /** An answer came, or something instead of one. */
    void take(long nowNanos, Answer answer) {
        if (answer.fault().isPresent()) {
            outing.rejected(answer.fault().get());
            return;
        }
        if (!form.isOrderKnown()) {
            unprovenBytes = Optional.of(answer.bytes());
            outing.rejected(ReadingFault.UNPROVEN);
            return;
        }
        take(nowNanos, answer.bytes());
    }

    private void take(long nowNanos, int bytes) {
        Meaning meaning = value.read(bytes);
        if (meaning == Meaning.NOT_FINITE) {
            absurd(ReadingFault.NOT_FINITE);
        } else if (meaning == Meaning.ABSURD || (meaning == Meaning.NUMBER && isBeyondScale(value.counts()))) {
            absurd(ReadingFault.OUT_OF_RANGE);
        } else if (!trust.afterPossible(value.telling(bytes))) {
            outing.rejected(ReadingFault.UNPROVEN);
        } else if (meaning == Meaning.OVERLOAD) {
            outing.overload(nowNanos);
        } else {
            outing.reading(nowNanos, value.counts());
        }
    }

    private boolean isBeyondScale(long counts) {
        return Math.abs(counts) > fullScaleCounts;
    }

    private void absurd(ReadingFault fault) {
        trust.afterAbsurd();
        outing.rejected(fault);
    }

    @Override
    public void gone() {
        Poller before = poller;
        if (before != null) {
            before.stop();
            poller = null;
        }
    }

    @Override
    public Optional<String> unproven() {
        return unprovenBytes.map(bytes ->
                "order of words UNPROVEN, no reading is taken; with a known load on, write under [instrument] what"
                        + " the device's own display shows: word_order_proof = { reading = …, bytes = \"%s\" }"
                                .formatted(form.type().hex(bytes)));
    }

    @Override
    public LineCounts counts() {
        return outing.counts();
    }

    @Override
    public void end() {
        outing.end();
    }
}
