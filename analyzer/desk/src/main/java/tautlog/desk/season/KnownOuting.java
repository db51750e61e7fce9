package tautlog.desk.season;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import tautlog.desk.analysis.History;
import tautlog.recording.Outing;
import tautlog.sample.OutingClock;

/**
 * An outing of the folder.
 *
 * @param recordingId of the recording that it is read from
 * @param outing as it stood at the last look
 */
public record KnownOuting(Path file, String recordingId, String winch, Outing outing) {
    static KnownOuting of(History.Member member, String recordingId) {
        return new KnownOuting(member.file(), recordingId, member.winch(), member.outing());
    }

    /** A name for addresses. */
    public String id() {
        return recordingId + "." + outing.index();
    }

    public boolean hasClock() {
        return !outing.clockFixes().isEmpty();
    }

    public OutingClock clock() {
        return OutingClock.of(outing.clockFixes(), outing.start().instrument().tickHz());
    }

    /** The day on which it began. */
    public DayKey day(ZoneId zone) {
        Optional<LocalDate> date =
                clock().instant(outing.firstTick()).map(at -> at.atZone(zone).toLocalDate());
        return new DayKey(winch, date);
    }

    /** When its first frame began; empty without a clock. */
    public Optional<Instant> start() {
        return clock().instant(outing.firstTick());
    }

    /** When its last frame began. */
    public Optional<Instant> end() {
        return clock().instant(outing.lastTick());
    }

    KnownOuting with(Outing now) {
        return new KnownOuting(file, recordingId, winch, now);
    }

    /** Whether {@code member} is this outing. */
    boolean is(History.Member member) {
        return member.file().equals(file) && member.outing().index() == outing.index();
    }
}
