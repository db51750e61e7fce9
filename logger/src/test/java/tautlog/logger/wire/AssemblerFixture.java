package tautlog.logger.wire;

import org.junit.jupiter.api.BeforeEach;
import tautlog.sample.Instrument;

/** An assembler, what it told, and short words for the frames that it is given. */
abstract class AssemblerFixture {
    /** 1 MHz counter, 500 Hz: 2,000 ticks a sample. */
    static final Instrument BOOT_7 = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6);

    static final Instrument BOOT_8 = new Instrument("TL-0001", 1, 0, 8, 1_000_000, 500_000, 8_388_607, 6);
    static final long WRAP = 1L << 32;
    static final long SECOND = 1_000_000_000L;

    final ToldText told = new ToldText();
    final OutingAssembler assembler = new OutingAssembler(told);
    long nanos = 77 * SECOND;
    int seq;

    @BeforeEach
    void arrive() {
        after(0);
    }

    void after(double seconds) {
        nanos += Math.round(seconds * SECOND);
        assembler.arriving(nanos);
    }

    int nextSeq() {
        return seq++ & 0xff;
    }

    void hello(Instrument instrument, long tick) {
        assembler.hello(nextSeq(), instrument, tick % WRAP);
    }

    void tension(long number, long tick, int... counts) {
        assembler.tension(nextSeq(), tick % WRAP, number % WRAP, 0, counts, counts.length);
    }

    void input(long tick, int selector, int present, int state) {
        assembler.input(nextSeq(), tick, selector, present, state);
    }
}
