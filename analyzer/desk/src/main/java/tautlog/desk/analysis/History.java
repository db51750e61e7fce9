package tautlog.desk.analysis;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.desk.report.LeftOut;
import tautlog.recording.LostOuting;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroShift;

/**
 * The outings of several recordings as one history in the order of time, each outing once however often it was copied.
 *
 * <p>Two outings are the same when instrument, boot, first sample and first look at the clock are the same; of copies the
 * longest counts, of equals one whose readings were not thinned. Outings without a clock stand where their files do, after those with one.
 */
public final class History implements AutoCloseable {
    private final List<Recording> opened;
    private final List<Member> members;
    private final List<Path> files;
    private final List<String> notes = new ArrayList<>();
    private final List<LeftOut.OfRecording> recordingsLeftOut = new ArrayList<>();
    private final List<LeftOut.OfOuting> outingsLeftOut = new ArrayList<>();

    /** An outing and where it is kept. */
    public record Member(Path file, Recording recording, String winch, Outing outing) {
        /** False when nothing was recorded. */
        boolean hasSamples() {
            return outing.samples() > 0;
        }

        /**
         * From counts to the line's tension under {@code rig}: its cell's place counts for an instrument's own readings, while
         * forces logged elsewhere are taken to be the line's tension already.
         *
         * @param cell the load cell's calibration, the day's or another
         * @throws RecordingException if it does not fit the instrument
         */
        Calibration lineCalibration(CellCalibration cell, Rig rig) throws RecordingException {
            Calibration line = cellCarriesMore() ? LineCalibration.of(cell.response(), rig) : cell.response();
            Optional<String> misfit =
                    LineCalibration.misfit(line, outing.start().instrument(), rig);
            if (misfit.isPresent()) {
                throw new RecordingException(file + ": outing " + (outing.index() + 1) + ": " + misfit.get());
            }
            return line;
        }

        /** Whether the cell's place enters: forces logged elsewhere are the line's tension already. */
        boolean cellCarriesMore() {
            return outing.start().source() != OutingStart.Source.IMPORT;
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

    private History(List<Path> files, List<Recording> opened, List<RecordingException> refused)
            throws RecordingException {
        this.files = List.copyOf(files);
        this.opened = List.copyOf(opened);
        List<RecordingException> unusable = new ArrayList<>(refused);
        Map<Identity, Member> once = new LinkedHashMap<>();
        for (Recording recording : opened) {
            try {
                add(once, recording);
            } catch (RecordingException e) {
                unusable.add(e);
            }
        }
        if (unusable.size() == files.size()) {
            throw allOf(unusable);
        }
        unusable.forEach(this::leaveOut);
        members = once.values().stream()
                .sorted(Comparator.comparingLong(Member::startMicros))
                .toList();
        noteWinches();
    }

    private void add(Map<Identity, Member> once, Recording recording) throws RecordingException {
        Path file = recording.file();
        String winch = recording.winch();
        List<Outing> outings = recording.outings();
        List<LostOuting> lost = recording.lostOutings();
        if (outings.isEmpty()) {
            notes.add(name(file) + " holds no outing that can be read: run tautlog verify on it.");
        }
        for (Outing outing : outings) {
            Member member = new Member(file, recording, winch, outing);
            if (member.hasSamples() || lost.stream().noneMatch(one -> one.index() == outing.index())) {
                add(once, member);
            }
        }
        for (LostOuting outing : lost) {
            outingsLeftOut.add(
                    new LeftOut.OfOuting(file.toString(), outing.index() + 1, outing.reason(), outing.samples()));
        }
    }

    private static RecordingException allOf(List<RecordingException> unusable) {
        if (unusable.size() == 1) {
            return unusable.get(0);
        }
        List<String> messages =
                unusable.stream().map(e -> String.valueOf(e.getMessage())).toList();
        return new RecordingException(String.join("\n", messages), unusable.get(0));
    }

    /** Every message begins with the file. */
    private void leaveOut(RecordingException unusable) {
        String message = String.valueOf(unusable.getMessage());
        for (Path file : files) {
            if (message.startsWith(file + ": ")) {
                String reason = message.substring((file + ": ").length());
                recordingsLeftOut.add(new LeftOut.OfRecording(file.toString(), reason));
                return;
            }
        }
        throw new IllegalStateException("a message without its file: " + message, unusable);
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
        once.put(identity, isBetter(member.outing(), before.outing()) ? member : before);
        notes.add(note(member, before));
    }

    private static boolean isBetter(Outing outing, Outing before) {
        return outing.samples() > before.samples()
                || (outing.samples() == before.samples() && before.thinned() && !outing.thinned());
    }

    private static String note(Member one, Member other) {
        long more = one.outing().samples() - other.outing().samples();
        if (more == 0) {
            return place(one, other) + " is the same as " + lowerFirst(place(other, one)) + ": counted once.";
        }
        Member longer = more > 0 ? one : other;
        Member shorter = more > 0 ? other : one;
        return place(shorter, longer) + " is the beginning of " + lowerFirst(place(longer, shorter))
                + ", copied while it went on: counted once, the longer one was used.";
    }

    /** Names the folder too, where the file's name alone does not tell it from the other. */
    private static String place(Member member, Member other) {
        boolean alike = name(member.file()).equals(name(other.file()));
        return "Outing " + (member.outing().index() + 1) + " of " + (alike ? member.file() : name(member.file()));
    }

    private static String lowerFirst(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
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
