package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.pages.NotPlainException;
import tautlog.sample.Evidence;

/**
 * Reads a recording, also while it is being written. Each call sees what was committed when it began. One thread.
 *
 * <p>Damage costs its own block only: reading goes on after it, and the call that met it says so.
 */
public final class Recording implements AutoCloseable {
    private final Path file;
    private final View view;
    private final Map<Integer, TickIndex> ticks = new HashMap<>();
    private final Map<Integer, ThinnedTicks> thinnedTicks = new HashMap<>();
    private boolean keepsView;

    private Recording(Path file, View view) {
        this.file = file;
        this.view = view;
    }

    /** @throws RecordingException if the file is no recording, is newer than this program, or is damaged beyond reading */
    public static Recording open(Path file) throws RecordingException {
        boolean hadLog = RecordingFile.hasLog(file);
        return new Recording(file, new View.Sql(file, RecordingFile.openForReading(file), hadLog));
    }

    /**
     * As {@link #open}, for who then reads most of it {@link #inOneView}. A closed recording that is not too large
     * ({@link ClosedFile}) is read into memory at once and told from there, which is faster; who is recording is then held up only as long as
     * that takes.
     */
    public static Recording openToReadAll(Path file) throws RecordingException {
        Optional<byte[]> bytes = ClosedFile.read(file);
        if (bytes.isPresent()) {
            try {
                return new Recording(file, new View.Plain(bytes.get(), PlainRows.of(bytes.get())));
            } catch (NotPlainException e) {
                return open(file); // which knows what to do, or to say
            }
        }
        return open(file);
    }

    /** Reads through a connection that somebody else closes. */
    static Recording over(Path file, Connection connection) {
        return new Recording(file, new View.Lent(new View.Sql(file, connection, true)));
    }

    /** What a reader does with the connection, within one view of the file. */
    private interface Reading<T> {
        T read() throws SQLException, RecordingException;
    }

    private <T> T reading(Reading<T> reading) throws RecordingException {
        try {
            T result = reading.read();
            if (!keepsView) {
                view.letGo();
            }
            return result;
        } catch (SQLException e) {
            throw RecordingFile.explain(file, e);
        }
    }

    /** Several calls of a recording that belong together. */
    public interface Work<T> {
        T done() throws RecordingException;
    }

    /**
     * Does {@code work}, all of whose calls see what was committed when the first of them began. Who is recording in the file is not held
     * up by it, but the log grows until {@code work} is done; a file without a log is not opened for recording meanwhile.
     *
     * @throws IllegalStateException if it is called from within {@code work}
     */
    public <T> T inOneView(Work<T> work) throws RecordingException {
        if (keepsView) {
            throw new IllegalStateException("one view within another");
        }
        keepsView = true;
        try {
            return work.done();
        } finally {
            keepsView = false;
            reading(() -> file); // which lets go of the view
        }
    }

    public Path file() {
        return file;
    }

    public String winch() throws RecordingException {
        return reading(() -> view.rows().winch());
    }

    /** See {@link RecordingId}. */
    public String id() throws RecordingException {
        return reading(() -> view.rows().id());
    }

    /** The last link that stands in the file, for good; 64 hexadecimal characters, empty when none stands there yet. */
    public String sealedLink() throws RecordingException {
        return lastSealedLink().orElse("");
    }

    /** Reads what came since {@code trail} was last brought up to date; it costs what is new, however long the recording is. */
    public void follow(RecordingTrail trail) throws RecordingException {
        reading(() -> {
            trail.update(view.connection());
            return trail;
        });
    }

    /** The findings that whoever stands at {@code mark} knows, in order. Damaged rows are left out. */
    public List<Finding> findingsUpTo(OutingTrail outing, SaidMark mark) throws RecordingException {
        return reading(() -> new SaidReader(view.connection(), outing).findingsUpTo(mark.finding()));
    }

    /**
     * What was said live of an outing behind {@code mark}, in order, and brings its trail up to date. Damaged rows are left out.
     *
     * @param mark never before the one of an earlier call with the same trail
     * @param most so many seconds, and so many findings, 1 or more
     */
    public Said said(RecordingTrail trail, OutingTrail outing, SaidMark mark, int most) throws RecordingException {
        return reading(() -> {
            trail.update(view.connection());
            return new SaidReader(view.connection(), outing).read(mark, most);
        });
    }

    /** How many rows of evidence, seconds and findings were ever written: of two files of one recording the older copy has fewer. */
    public long rows() throws RecordingException {
        return reading(() -> RecordingFile.query(
                view.connection(),
                "SELECT coalesce((SELECT max(seq) FROM evidence), 0) + coalesce((SELECT max(id) FROM seconds), 0)"
                        + " + coalesce((SELECT max(id) FROM finding), 0)"));
    }

    /** How much was said of an outing behind {@code mark}: seconds by their indices, findings by their rows. */
    public long saidBehind(OutingTrail outing, SaidMark mark) throws RecordingException {
        return reading(() -> new SaidReader(view.connection(), outing).behind(mark));
    }

    /**
     * Which outings there are.
     *
     * @param outings oldest first; while one is being recorded, its figures are those of the last commit
     * @param lost those whose start cannot be read, and those of which rows are missing, because the file was copied without the log
     *     beside it
     */
    public record Contents(List<Outing> outings, List<LostOuting> lost) {
        public Contents {
            outings = List.copyOf(outings);
            lost = List.copyOf(lost);
        }
    }

    /** Both {@link #outings} and {@link #lostOutings}. */
    public Contents contents() throws RecordingException {
        return reading(() -> {
            Outings all = Outings.read(view.rows());
            List<LostOuting> lost = new ArrayList<>(all.lost());
            lost.addAll(view.missing());
            return new Contents(all.list(), lost);
        });
    }

    /** All outings, oldest first. One whose first row is damaged is left out; {@link #lostOutings} names it. */
    public List<Outing> outings() throws RecordingException {
        return reading(() -> Outings.read(view.rows()).list());
    }

    /** The outings that {@link #outings} leaves out, and those of which rows are missing. */
    public List<LostOuting> lostOutings() throws RecordingException {
        return contents().lost();
    }

    /**
     * Makes the calls that the live run made, in their order; blocks are checked (CRC-32C) as they are read. {@link
     * Evidence#end} comes last when the outing is closed. A {@link RunSink} is served run by run. Of a thinned outing
     * ({@link Outing#thinned}) no samples are told, all else is.
     *
     * @return what is damaged and was left out; its samples are a gap to {@code sink}
     */
    public List<Damage> replay(Outing outing, Evidence sink) throws RecordingException {
        return reading(() -> new Replay(view.rows(), outing, sink).run());
    }

    /**
     * What a replay gave.
     *
     * @param damages what is damaged and was left out
     * @param fingerprint as {@link #fingerprint}, of the rows that were told
     */
    public record Replayed(List<Damage> damages, String fingerprint) {
        public Replayed {
            damages = List.copyOf(damages);
        }
    }

    /** As {@link #replay}, with the fingerprint, for which the rows need not be read again. */
    public Replayed replayWithFingerprint(Outing outing, Evidence sink) throws RecordingException {
        return reading(() -> {
            Fingerprint fingerprint = new Fingerprint();
            List<Damage> damages = new Replay(view.rows(), outing, sink, fingerprint::add).run();
            return new Replayed(damages, fingerprint.withOtherRows(view.rows(), outing.index()));
        });
    }

    /**
     * Goes on with a replay of an outing that may still grow, in one view of the file: {@code sealed} is told the rows behind row
     * {@code after}, which are there for good; {@code tail} what follows them and is told again by the next call. What is damaged is left
     * out; {@link #verify} names it.
     *
     * @param after 0, or what an earlier call gave
     * @param tail asked for once all sealed rows are told
     * @return the last row that {@code sealed} was told
     */
    public long follow(Outing outing, long after, Evidence sealed, Supplier<? extends Evidence> tail)
            throws RecordingException {
        return reading(() -> {
            long last = new Replay(view.rows(), outing, sealed).sealedBehind(after);
            new Replay(view.rows(), outing, tail.get()).tail();
            return last;
        });
    }

    /** The spans of samples and shaft frames sealed behind row {@code after}, in order; costs no block. */
    public List<SealedSpan> sealedSpans(Outing outing, long after) throws RecordingException {
        return reading(() -> SealedSpan.read(view.connection(), outing, after));
    }

    /** A part of a replay: what the rows {@code first} to {@code last} hold, as {@link #sealedSpans} gave them. */
    public void replay(Outing outing, long first, long last, Evidence sink) throws RecordingException {
        reading(() -> new Replay(view.rows(), outing, sink).rows(first, last));
    }

    /** What was said live, in the order of committing. Damaged rows are left out; {@link #verify} names them. */
    public List<Finding> findings(Outing outing) throws RecordingException {
        return reading(() -> SpokenRows.findings(view.connection(), outing.index(), damage -> {}));
    }

    /** The one-second summaries made live, in order. Damaged rows are left out; {@link #verify} names them. */
    public List<Second> seconds(Outing outing) throws RecordingException {
        return reading(() -> SpokenRows.seconds(view.connection(), outing.index(), damage -> {}));
    }

    /**
     * The tick at which sample {@code number} was taken: exact; of a thinned outing worked out between the first ticks of its
     * blocks, within what the ticks of its frames scattered.
     *
     * @throws IllegalArgumentException if no readable block holds, or held, that sample
     */
    public long tickOf(Outing outing, long number) throws RecordingException {
        return reading(() -> {
            if (outing.thinned()) {
                return thinnedTickOf(outing, number);
            }
            TickIndex index = ticks.get(outing.index());
            if (index == null || !index.reaches(number)) {
                index = TickIndex.read(view.connection(), outing);
                ticks.put(outing.index(), index);
            }
            return index.tickOf(number);
        });
    }

    private long thinnedTickOf(Outing outing, long number) throws SQLException {
        ThinnedTicks known = thinnedTicks.get(outing.index());
        if (known == null) {
            known = ThinnedTicks.read(
                    view.connection(), outing.index(), outing.start().instrument());
            thinnedTicks.put(outing.index(), known);
        }
        return known.tickOf(number);
    }

    /** The link that the chain ends with, tail rows as if sealed now; 64 hexadecimal characters. See {@link OutingWriter}. */
    public String lastLink() throws RecordingException {
        return reading(() -> Verifier.lastLink(view.connection()));
    }

    /** The link of the first sealed row; it tells this recording from every other. Empty when no outing began. */
    public Optional<String> firstLink() throws RecordingException {
        return reading(() -> link("SELECT link FROM evidence ORDER BY seq LIMIT 1"));
    }

    /**
     * The link of the row sealed last, which stays for good: {@link #lastLink}, as long as nothing more is recorded, and less than
     * one span behind it while recording. Empty when no outing began.
     */
    public Optional<String> lastSealedLink() throws RecordingException {
        return reading(() -> link("SELECT link FROM evidence ORDER BY seq DESC LIMIT 1"));
    }

    private Optional<String> link(String select) throws SQLException {
        try (PreparedStatement statement = view.connection().prepareStatement(select);
                ResultSet rows = statement.executeQuery()) {
            return rows.next() ? Optional.of(Chain.hex(EvidenceRow.bytes(rows, 1))) : Optional.empty();
        }
    }

    /**
     * Whether the chain of this recording goes through {@code link}. Only with {@link #verify} does that say that nothing before it
     * was changed.
     *
     * @param link 64 hexadecimal characters
     */
    public boolean goesThrough(String link) throws RecordingException {
        return reading(() -> {
            try (PreparedStatement select =
                    view.connection().prepareStatement("SELECT 1 FROM evidence WHERE link = ?")) {
                select.setBytes(1, HexFormat.of().parseHex(link));
                try (ResultSet rows = select.executeQuery()) {
                    return rows.next() || Verifier.lastLink(view.connection()).equals(link);
                }
            }
        });
    }

    /**
     * What tells an outing from any other and from what it was before it grew, was thinned or was damaged: its last link and a checksum
     * of its rows as they lie there. Reads all of them.
     */
    public String fingerprint(Outing outing) throws RecordingException {
        return reading(() -> Fingerprint.of(view.rows(), outing.index()));
    }

    /** How many bytes the samples of an outing take. */
    long sampleBytes(Outing outing) throws RecordingException {
        return reading(() -> RecordingFile.query(
                view.connection(),
                "SELECT coalesce(sum(length(block)), 0) FROM evidence WHERE kind = 2 AND outing = " + outing.index()));
    }

    /** Whether it was packed and nothing was recorded in it since. */
    boolean isPacked() throws RecordingException {
        return reading(() -> RecordingFile.pragma(view.connection(), "user_version") >= RecordingFile.PACKED_VERSION
                && RecordingFile.pragma(view.connection(), "page_size") == RecordingFile.PACKED_PAGE_SIZE
                && RecordingFile.query(
                                view.connection(),
                                "SELECT count(*) FROM evidence WHERE kind = 2 AND substr(block, 6, 1) IN (x'01', x'06')")
                        == 0);
    }

    /** Whether a log may stand beside the file: it was not closed in order, or a reader was at work. */
    boolean isInLogMode() throws RecordingException {
        return reading(() -> {
            try (PreparedStatement select = view.connection().prepareStatement("PRAGMA journal_mode");
                    ResultSet rows = select.executeQuery()) {
                return rows.next() && "wal".equals(rows.getString(1));
            }
        });
    }

    /** Checks every byte that matters: checksums, chain, index, SQLite's own structure. Reads the whole file. */
    public Verification verify() throws RecordingException {
        return reading(() -> new Verifier(view.connection()).run(view.missing()));
    }

    @Override
    public void close() throws RecordingException {
        try {
            view.close();
        } catch (SQLException e) {
            throw RecordingFile.explain(file, e);
        }
    }
}
