package tautlog.logger.instrument.modbus;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import tautlog.logger.instrument.ReadingFault;
import tautlog.logger.instrument.modbus.RegisterQuestion.Answer;

/** The question that is out, between the poller, which asks and waits, and the reader, which hears. Safe for threads. */
final class Exchange {
    private enum State {
        /** Nothing is asked: what comes is nobody's answer. */
        QUIET,
        ASKED,
        ANSWERED
    }

    private final RegisterQuestion question;
    private State state = State.QUIET;
    private boolean wasHeard;
    private boolean wasGood;

    Exchange(RegisterQuestion question) {
        this.question = question;
    }

    /** A question goes out; what comes from now on is its answer. */
    synchronized void ask() {
        question.begin();
        state = State.ASKED;
        wasGood = false;
    }

    /** Bytes came. Gives an answer when it is whole, or the fault that nobody had asked; the reader. */
    synchronized Optional<Answer> heard(byte[] bytes, int n) {
        if (state != State.ASKED) {
            boolean isFirst = !wasHeard;
            wasHeard = true;
            return isFirst ? Optional.of(Answer.fault(ReadingFault.UNASKED)) : Optional.empty();
        }
        Optional<Answer> answer = question.take(bytes, n);
        answer.ifPresent(whole -> {
            state = State.ANSWERED;
            wasHeard = false;
            wasGood = whole.fault().isEmpty() || whole.fault().get() == ReadingFault.EXCEPTION;
            notifyAll();
        });
        return answer;
    }

    /** What the poller learns of a question. */
    enum Outcome {
        /** A whole answer came; the line is at rest. */
        ANSWERED,
        /** Something came that was no good answer: more of it may follow. */
        SPOILT,
        TIME_UP
    }

    /** Waits for the answer; the poller. */
    synchronized Outcome await(long nanos) throws InterruptedException {
        long end = System.nanoTime() + nanos;
        long left = nanos;
        while (state == State.ASKED && left > 0) {
            TimeUnit.NANOSECONDS.timedWait(this, left);
            left = end - System.nanoTime();
        }
        boolean answered = state == State.ANSWERED;
        state = State.QUIET;
        wasHeard = false;
        if (!answered) {
            return Outcome.TIME_UP;
        }
        return wasGood ? Outcome.ANSWERED : Outcome.SPOILT;
    }

    /** True once when something was heard since the last call, while nothing was asked. */
    synchronized boolean takeHeard() {
        boolean was = wasHeard;
        wasHeard = false;
        return was;
    }
}
