package tautlog.desk.analysis;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tautlog.calibration.CellCalibration;
import tautlog.desk.report.LeftOut;
import tautlog.recording.LostOuting;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.ZeroShift;

/**
 * The outings of several recordings as one history in the order of time, each outing once however often it was copied.
 *
 * <p>What makes two outings the same, and which of them counts, says {@link Copies}. Outings without a clock stand where their files do, after those with one.
 */
public final class History implements AutoCloseable {
    private final List<Recording> opened;
    private final List<Member> members;
    private final List<Path> files;
    private final List<String> notes = new ArrayList<>();
    private final List<LeftOut.OfRecording> recordingsLeftOut = new ArrayList<>();
    private final List<LeftOut.OfOuting> outingsLeftOut = new ArrayList<>();

    /**
     * An outing and where it is kept.
     *
     * @param recordingId of the recording, which stays when its file is renamed
     */
    public record Member(Path file, Recording recording, String winch, String recordingId, Outing outing)
            implements Copies.Candidate {
        @Override
        public int index() {
            return outing.index();
        }

        @Override
        public long samples() {
            return outing.samples();
        }

        @Override
        public boolean thinned() {
            return outing.thinned();
        }

        @Override
        public Copies.Identity identity() {
            return Copies.Identity.of(recordingId, outing);
        }

        /** False when nothing was recorded. */
        public boolean hasSamples() {
            return outing.samples() > 0;
        }

        /**
         * From counts to the line's tension under {@code rig}: its cell's place counts for an instrument's own readings, while
         * forces logged elsewhere are taken to be the line's tension already.
         *
         * @param cell the load cell's calibration, the day's or another
         * @throws RecordingException if it does not fit the instrument
         */
        public Calibration lineCalibration(CellCalibration cell, Rig rig) throws RecordingException {
            return OutingReading.line(file, outing, cell, rig);
        }

        /** Whether the cell's place enters: forces logged elsewhere are the line's tension already. */
        boolean cellCarriesMore() {
            return OutingReading.cellCarriesMore(outing);
        }

        /**
         * Takes a zero that moved off the counts in front of {@code next}, which reads them with {@code calibration}, the day's
         * or another, of the cell or of the line.
         */
        public ZeroShift lessZero(Calibration calibration, Evidence next) {
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

    private History(List<Path> files, List<Recording> opened, List<RecordingException> refused)
            throws RecordingException {
        this.files = List.copyOf(files);
        this.opened = List.copyOf(opened);
        List<RecordingException> unusable = new ArrayList<>(refused);
        Copies<Member> once = new Copies<>(notes::add);
        for (Recording recording : opened) {
            try {
                add(once, recording);
            } catch (RecordingException e) {
                unusable.add(e);
            }
        }
        if (unusable.size() == files.size()) {
            throw Refusals.all(unusable);
        }
        unusable.forEach(this::leaveOut);
        members = once.kept().stream()
                .sorted(Comparator.comparingLong(Member::startMicros))
                .toList();
        noteWinches();
    }

    private void add(Copies<Member> once, Recording recording) throws RecordingException {
        Path file = recording.file();
        String winch = recording.winch();
        String id = recording.id();
        List<Outing> outings = recording.outings();
        List<LostOuting> lost = recording.lostOutings();
        if (outings.isEmpty()) {
            notes.add(HistoryNotes.noOuting(file));
        }
        for (Outing outing : outings) {
            Member member = new Member(file, recording, winch, id, outing);
            if (member.hasSamples() || lost.stream().noneMatch(one -> one.index() == outing.index())) {
                add(once, member);
            }
        }
        for (LostOuting outing : lost) {
            outingsLeftOut.add(Refusals.lost(file, outing));
        }
    }

    /** Every message begins with the file. */
    private void leaveOut(RecordingException unusable) {
        String message = String.valueOf(unusable.getMessage());
        for (Path file : files) {
            if (message.startsWith(file + ": ")) {
                recordingsLeftOut.add(Refusals.recording(file, unusable));
                return;
            }
        }
        throw new IllegalStateException("a message without its file: " + message, unusable);
    }

    private void add(Copies<Member> once, Member member) {
        if (!member.hasSamples()) {
            notes.add(HistoryNotes.noReadings(member.file(), member.outing().index()));
            return;
        }
        once.add(member);
    }

    private void noteWinches() {
        List<String> winches = members.stream().map(Member::winch).distinct().toList();
        HistoryNotes.winches(winches).ifPresent(notes::add);
    }

    static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    /**
     * Opens the recordings; those that cannot be read are left out and named.
     *
     * @param filesAndFolders one or more
     * @throws RecordingException if one is not there, or none can be read
     */
    public static History open(List<Path> filesAndFolders) throws IOException {
        List<Path> files = GivenRecordings.in(filesAndFolders);
        List<Recording> opened = new ArrayList<>();
        List<RecordingException> refused = new ArrayList<>();
        for (Path file : files) {
            try {
                opened.add(Recording.open(file));
            } catch (RecordingException e) {
                refused.add(e);
            }
        }
        try {
            return new History(files, opened, refused);
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

    /** What of {@link #files} could not be read. */
    public LeftOut leftOut() {
        return new LeftOut(recordingsLeftOut, outingsLeftOut);
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
