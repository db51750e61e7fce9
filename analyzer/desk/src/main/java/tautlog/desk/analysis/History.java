package tautlog.desk.analysis;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroShift;

/**
 * The outings of several recordings as one history in the order of time, each outing once however often it was copied.
 *
 * <p>Two outings are the same when instrument, boot, first sample and first look at the clock are the same; of copies the
 * longest counts. Outings without a clock stand where their files do, after those with one.
 */
public final class History implements AutoCloseable {
    private final List<Recording> opened;
    private final List<Member> members;
    private final List<Path> files;
    private final List<String> notes = new ArrayList<>();

    /** An outing and where it is kept. */
    public record Member(Path file, Recording recording, String winch, Outing outing) {
        /** False when nothing was recorded. */
        boolean hasSamples() {
            return outing.samples() > 0;
        }

        /**
         * Takes a zero that moved off the counts in front of {@code next}, which reads them with {@code calibration}, the day's
         * or another, of the cell or of the line.
         */
        public Evidence lessZero(Calibration calibration, Evidence next) {
            return ZeroShift.under(
                    calibration,
                    outing.start().calibration().response(),
                    outing.start().instrument(),
                    next);
        }

        private long startMicros() {
            return OutingTimes.clock(outing).utcMicros(outing.firstTick()).orElse(Long.MAX_VALUE);
        }
    }

    /** What makes an outing the same as another. */
    private record Identity(String instrument, long boot, long firstNumber, long firstTick, long firstFixMicros) {
        static Identity of(Outing outing) {
            Instrument instrument = outing.start().instrument();
            long fix = outing.clockFixes().isEmpty()
                    ? Long.MIN_VALUE
                    : outing.clockFixes().get(0).utcMicros();
            return new Identity(instrument.id(), instrument.boot(), outing.firstNumber(), outing.firstTick(), fix);
        }
    }

    private History(List<Path> files, List<Recording> opened) throws RecordingException {
        this.files = List.copyOf(files);
        this.opened = List.copyOf(opened);
        Map<Identity, Member> once = new LinkedHashMap<>();
        for (Recording recording : opened) {
            Path file = recording.file();
            List<Outing> outings = recording.outings();
            if (outings.isEmpty()) {
                notes.add(name(file) + " holds no outing that can be read: run tautlog verify on it.");
            }
            for (Outing outing : outings) {
                add(once, new Member(file, recording, recording.winch(), outing));
            }
        }
        members = once.values().stream()
                .sorted(Comparator.comparingLong(Member::startMicros))
                .toList();
        noteWinches();
    }

    private void add(Map<Identity, Member> once, Member member) {
        if (!member.hasSamples()) {
            notes.add("Outing " + (member.outing().index() + 1) + " of " + name(member.file()) + " holds no readings.");
            return;
        }
        Identity identity = Identity.of(member.outing());
        Member before = once.get(identity);
        if (before == null) {
            once.put(identity, member);
            return;
        }
        boolean longer = member.outing().samples() > before.outing().samples();
        once.put(identity, longer ? member : before);
        notes.add("Outing " + (member.outing().index() + 1) + " of " + name(member.file()) + " is the same as outing "
                + (before.outing().index() + 1) + " of " + name(before.file()) + ": counted once.");
    }

    private void noteWinches() {
        List<String> winches = members.stream().map(Member::winch).distinct().toList();
        if (winches.size() > 1) {
            notes.add("Recordings of " + winches.size() + " winches are added up here: " + String.join(", ", winches)
                    + ".");
        }
    }

    static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    /**
     * Opens the recordings.
     *
     * @param filesAndFolders one or more
     * @throws RecordingException if one is not there or cannot be read
     */
    public static History open(List<Path> filesAndFolders) throws IOException {
        List<Path> files = RecordingFiles.in(filesAndFolders);
        List<Recording> opened = new ArrayList<>();
        try {
            for (Path file : files) {
                opened.add(Recording.open(file));
            }
            return new History(files, opened);
        } catch (RecordingException e) {
            for (Recording recording : opened) {
                recording.close();
            }
            throw e;
        }
    }

    /** Outings in the order of time, each once. */
    public List<Member> members() {
        return members;
    }

    /** The files, as given. */
    public List<Path> files() {
        return files;
    }

    /** What a reader must know of how outings were put together, one sentence each. */
    public List<String> notes() {
        return List.copyOf(notes);
    }

    @Override
    public void close() throws RecordingException {
        for (Recording recording : opened) {
            recording.close();
        }
    }
}
