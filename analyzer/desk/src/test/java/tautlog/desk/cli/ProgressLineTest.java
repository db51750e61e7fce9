package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import tautlog.desk.page.Ink;
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.Progress;
import tautlog.desk.progress.Sofar;

class ProgressLineTest {
    private static final String CLEAR = "\r\u001B[K";

    private final StringWriter terminal = new StringWriter();
    private long nanos;
    private final ProgressLine line = new ProgressLine(new PrintWriter(terminal), () -> nanos);

    private String after(double seconds, int done, long size) {
        nanos = (long) (seconds * 1e9);
        terminal.getBuffer().setLength(0);
        line.done(new Sofar("files", done, 100, size, 1_000));
        return terminal.toString();
    }

    @Test
    void saysHowManyAndOnceItIsKnownHowLong() {
        assertEquals(CLEAR + "20 of 100 files", after(1, 20, 100));
        after(2, 21, 110);
        after(3, 22, 130);
        assertEquals(CLEAR + "23 of 100 files, about 60 s left", after(10, 23, 150));
    }

    @Test
    void isNotDrawnMoreOftenThanItCanBeRead() {
        assertEquals("", after(0.2, 1, 10), "work that is over at once shows nothing");
        after(0.3, 2, 20);

        assertEquals("", after(0.5, 3, 30));
        assertEquals(CLEAR + "4 of 100 files", after(0.6, 4, 40));
    }

    @Test
    void isTakenAwayWhenTheWorkIsOver() {
        after(1, 99, 999);

        assertEquals(CLEAR, after(1.1, 100, 1_000));
    }

    @Test
    void isTakenAwayWhenStoppedAndNotDrawnAgain() {
        after(1, 50, 500);
        terminal.getBuffer().setLength(0);

        line.stopped(Kept.READ_SO_FAR);

        assertEquals(CLEAR + Kept.READ_SO_FAR.sentence() + System.lineSeparator(), terminal.toString());
        assertEquals("", after(2, 51, 510), "threads that still read");
    }

    @Test
    void nextWorkBeginsAnew() {
        after(30, 100, 1_000);
        nanos = 31_000_000_000L;

        line.done(new Sofar("outings", 1, 10, 100, 1_000));

        assertEquals(CLEAR + "1 of 10 outings", terminal.toString(), "a second of it is not enough");
    }

    @Test
    void whereNobodyLooksOnOnlyTheStopIsSaid() {
        Progress quiet = ProgressLine.of(Ink.PLAIN, new PrintWriter(terminal));

        quiet.done(new Sofar("files", 1, 2, 0, 0));
        assertFalse(quiet.isWatched());
        assertEquals("", terminal.toString());
        quiet.stopped(Kept.NOTHING);

        assertEquals(Kept.NOTHING.sentence() + System.lineSeparator(), terminal.toString());
    }
}
