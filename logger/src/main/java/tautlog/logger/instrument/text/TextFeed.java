package tautlog.logger.instrument.text;

import java.util.Locale;
import java.util.regex.Matcher;
import tautlog.logger.config.TextForm;
import tautlog.logger.config.TextForm.Checksum;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.instrument.ReadingFault;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.wire.LineCounts;
import tautlog.quantity.ForceUnit;

/** Readings from lines of text. Whether a reading is stable is not asked: every shock is in motion. */
public final class TextFeed implements InstrumentFeed {
    private static final String[] GROUPS = {"unit", "overload", "underload", "net", "checksum"};
    private static final int UNIT = 0;
    private static final int OVERLOAD = 1;
    private static final int UNDERLOAD = 2;
    private static final int NET = 3;
    private static final int CHECKSUM = 4;
    private static final int ABSENT = -1;

    private final TextForm form;
    private final String unit;
    private final NumberText number;
    private final ReadingOuting outing;
    private final LineFinder lines;
    private final LineFinder.Sink sink = new Lines();
    private final Matcher matcher;
    private final boolean[] hasGroup = new boolean[GROUPS.length];
    private long nowNanos;

    public TextFeed(TextForm form, ForceUnit unit, int decimals, ReadingOuting outing) {
        this.form = form;
        this.unit = unit.symbol().toLowerCase(Locale.ROOT);
        this.outing = outing;
        number = new NumberText(decimals);
        lines = new LineFinder(form.lineEnd());
        matcher = form.pattern().matcher("");
        for (int i = 0; i < GROUPS.length; i++) {
            hasGroup[i] = form.has(GROUPS[i]);
        }
    }

    @Override
    public void opened(InstrumentLine line) {
        lines.reset();
    }

    @Override
    public void bytes(long nanos, byte[] bytes, int n) {
        nowNanos = nanos;
        outing.arriving(nanos);
        lines.feed(bytes, n, sink);
    }

    private final class Lines implements LineFinder.Sink {
        @Override
        public void line(LineText text) {
            TextFeed.this.line(text);
        }

        @Override
        public void tooLong() {
            outing.rejected(ReadingFault.TOO_LONG);
        }
    }

    private void line(LineText text) {
        if (form.length().isPresent() && form.length().get() != text.length()) {
            outing.rejected(ReadingFault.WRONG_LENGTH);
        } else if (!matches(text)) {
            outing.rejected(ReadingFault.UNKNOWN_LINE);
        } else if (!isSummed(text)) {
            outing.rejected(ReadingFault.BAD_CHECKSUM);
        } else if (!isUnit(text)) {
            outing.rejected(ReadingFault.WRONG_UNIT);
        } else if (start(NET) != ABSENT) {
            outing.rejected(ReadingFault.NET_READING);
        } else if (start(OVERLOAD) != ABSENT) {
            outing.overload(nowNanos);
        } else if (start(UNDERLOAD) != ABSENT) {
            outing.underload(nowNanos);
        } else if (matcher.start("value") == ABSENT
                || !number.read(text, matcher.start("value"), matcher.end("value"))) {
            outing.rejected(ReadingFault.BAD_NUMBER);
        } else {
            outing.reading(nowNanos, number.counts());
        }
    }

    private boolean matches(LineText text) {
        try {
            return text.isClean() && matcher.reset(text.looking()).matches();
        } catch (LineText.Exhausted | StackOverflowError endless) {
            return false;
        }
    }

    private int start(int group) {
        return hasGroup[group] ? matcher.start(GROUPS[group]) : ABSENT;
    }

    private boolean isUnit(LineText text) {
        int from = start(UNIT);
        if (from == ABSENT) {
            // a line whose pattern knows a unit must show it; only a word for "beyond the scale" may come without
            return !hasGroup[UNIT] || start(OVERLOAD) != ABSENT || start(UNDERLOAD) != ABSENT;
        }
        if (matcher.end(GROUPS[UNIT]) - from != unit.length()) {
            return false;
        }
        for (int i = 0; i < unit.length(); i++) {
            if (Character.toLowerCase(text.at(from + i)) != unit.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    private boolean isSummed(LineText text) {
        int from = start(CHECKSUM);
        if (from == ABSENT) {
            return !hasGroup[CHECKSUM];
        }
        if (matcher.end(GROUPS[CHECKSUM]) - from != 2) {
            return false;
        }
        int sum = 0;
        for (int i = 0; i < from; i++) {
            sum = form.checksum() == Checksum.XOR ? sum ^ text.at(i) : sum + text.at(i);
        }
        int told = (Character.digit(text.at(from), 16) << 4) | Character.digit(text.at(from + 1), 16);
        return told == (sum & 0xff);
    }

    @Override
    public void gone() {
        lines.reset();
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
