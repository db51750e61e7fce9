package tautlog.logger.pty;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import com.sun.jna.ptr.IntByReference;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;

/**
 * A pseudo-terminal: what is written here is read at {@link #portName()}, and the other way round, byte for byte (raw).
 *
 * <p>Linux only. Not thread-safe, except that {@link #close()} may come from another thread. A reader of the port sees a
 * hang-up when this end is closed; bytes that it has not taken by then may be lost, so call {@link #waitUntilTaken} first.
 */
public final class PseudoTerminal implements Closeable {
    private static final int CHUNK = 4096;
    private static final int POLL_MILLIS = 20;
    private static final int LOOK_MILLIS = 2;
    /**
     * The kernel hands bytes to the port's queue a moment after the write, and only the queue can be asked. Empty this
     * many looks in a row, {@link #LOOK_MILLIS} apart, counts as taken. Chosen: 200 ms is long beside that moment, also on
     * a loaded machine, where 20 ms were not.
     */
    private static final int EMPTY_LOOKS = 100;

    /** When the queue cannot be asked: long beside what a reader needs that is waiting for bytes. Chosen. */
    private static final int BLIND_MILLIS = 1_000;

    private final Libc libc;
    private final int master;
    private final String portName;
    private final Memory outgoing = new Memory(CHUNK);
    private final Memory pollfd = new Memory(8);
    private Path link = Path.of("");
    private volatile boolean closed;

    private PseudoTerminal(Libc libc, int master, String portName) {
        this.libc = libc;
        this.master = master;
        this.portName = portName;
    }

    /**
     * Makes a pseudo-terminal whose port nobody has opened yet.
     *
     * @throws IOException if the system has none, or gives none
     */
    public static PseudoTerminal open() throws IOException {
        if (!Platform.isLinux()) {
            throw new IOException(
                    "a simulated instrument needs a pseudo-terminal, which is made on Linux only; this is "
                            + System.getProperty("os.name")
                            + ". Run it on Linux (a virtual machine or a container will do).");
        }
        Libc libc = Native.load("c", Libc.class);
        int master = libc.posix_openpt(Libc.O_RDWR | Libc.O_NOCTTY | Libc.O_NONBLOCK | Libc.O_CLOEXEC);
        if (master < 0) {
            throw Libc.failed(libc, "posix_openpt");
        }
        try {
            return new PseudoTerminal(libc, master, unlock(libc, master));
        } catch (IOException e) {
            libc.close(master);
            throw e;
        }
    }

    private static String unlock(Libc libc, int master) throws IOException {
        byte[] name = new byte[128];
        if (libc.grantpt(master) != 0) {
            throw Libc.failed(libc, "grantpt");
        }
        if (libc.unlockpt(master) != 0) {
            throw Libc.failed(libc, "unlockpt");
        }
        if (libc.ptsname_r(master, name, new NativeLong(name.length)) != 0) {
            throw Libc.failed(libc, "ptsname_r");
        }
        String port = Native.toString(name, StandardCharsets.US_ASCII);
        // Opened and closed once: raw from the first byte on, and from here on "nobody has it open" can be told.
        int slave = libc.open(port, Libc.O_RDWR | Libc.O_NOCTTY | Libc.O_CLOEXEC);
        if (slave < 0) {
            throw Libc.failed(libc, "open " + port);
        }
        try {
            makeRaw(libc, slave);
        } finally {
            libc.close(slave);
        }
        return port;
    }

    private static void makeRaw(Libc libc, int fd) throws IOException {
        try (Memory termios = new Memory(Libc.TERMIOS_BYTES)) {
            if (libc.tcgetattr(fd, termios) != 0) {
                throw Libc.failed(libc, "tcgetattr");
            }
            libc.cfmakeraw(termios);
            if (libc.tcsetattr(fd, Libc.TCSANOW, termios) != 0) {
                throw Libc.failed(libc, "tcsetattr");
            }
        }
    }

    /** The port for the other side, {@code /dev/pts/N}. */
    public String portName() {
        return portName;
    }

    /**
     * Links the port at {@code path}, so that a configuration can name it; the link goes when this is closed.
     *
     * @throws IOException if something other than a link stands at {@code path}
     */
    public void linkAt(Path path) throws IOException {
        if (Files.exists(path, LinkOption.NOFOLLOW_LINKS) && !Files.isSymbolicLink(path)) {
            throw new IOException(path + " is there already and is no link; choose another path for the port");
        }
        Files.deleteIfExists(path);
        Files.createSymbolicLink(path, Path.of(portName));
        link = path;
    }

    /** True while another program, or another part of this one, has the port open. */
    public boolean hasReader() throws IOException {
        return (poll(Libc.POLLIN, 0) & Libc.POLLHUP) == 0;
    }

    /**
     * Waits until someone opens the port.
     *
     * @return false if nobody did within {@code longest}
     */
    public boolean waitForReader(Duration longest) throws IOException, InterruptedException {
        long until = System.nanoTime() + longest.toNanos();
        while (!hasReader()) {
            if (System.nanoTime() - until >= 0) {
                return false;
            }
            Thread.sleep(LOOK_MILLIS);
        }
        return true;
    }

    /** Sends all of {@code bytes}; see {@link #write(byte[], int, int)}. */
    public void write(byte[] bytes) throws IOException, InterruptedException {
        write(bytes, 0, bytes.length);
    }

    /**
     * Sends {@code n} bytes, waiting while the other side is slow to take them.
     *
     * <p>While nobody has the port open the bytes are dropped, as a wire does that leads nowhere.
     *
     * @return false if some were dropped
     */
    public boolean write(byte[] bytes, int from, int n) throws IOException, InterruptedException {
        int done = 0;
        while (done < n) {
            if (!hasReader()) {
                return false;
            }
            int size = Math.min(CHUNK, n - done);
            outgoing.write(0, bytes, from + done, size);
            int sent = libc.write(master, outgoing, new NativeLong(size)).intValue();
            if (sent > 0) {
                done += sent;
            } else if (sent == 0 || isPassing(Native.getLastError())) {
                poll(Libc.POLLOUT, POLL_MILLIS);
            } else {
                throw Libc.failed(libc, "write");
            }
            if (Thread.interrupted()) {
                throw new InterruptedException("interrupted while writing to " + portName);
            }
        }
        return true;
    }

    /**
     * Reads what the other side has sent; never waits.
     *
     * @return how many bytes, 0 when there are none or nobody has the port open
     */
    public int read(byte[] into) throws IOException {
        requireOpen();
        int n = libc.read(master, into, new NativeLong(into.length)).intValue();
        if (n >= 0) {
            return n;
        }
        int errno = Native.getLastError();
        if (isPassing(errno) || errno == Libc.EIO) { // EIO: nobody has the port open
            return 0;
        }
        throw Libc.failed(libc, "read");
    }

    /**
     * Waits until the port's reader has taken every byte written so far.
     *
     * <p>If the reader keeps others from opening the port and this program is not privileged, nobody can tell; then a
     * second is waited, which is long enough for a reader that reads.
     *
     * @return false if it has not within {@code longest}, or closed the port before
     */
    public boolean waitUntilTaken(Duration longest) throws IOException, InterruptedException {
        if (!hasReader()) {
            return false;
        }
        int slave = libc.open(portName, Libc.O_RDWR | Libc.O_NOCTTY | Libc.O_CLOEXEC);
        if (slave < 0 && Native.getLastError() == Libc.EBUSY) {
            return waitBlindly(); // the reader has the port for itself (TIOCEXCL): its queue cannot be asked
        }
        if (slave < 0) {
            throw Libc.failed(libc, "open " + portName);
        }
        try {
            return waitUntilEmpty(slave, System.nanoTime() + longest.toNanos());
        } finally {
            libc.close(slave);
        }
    }

    private boolean waitBlindly() throws IOException, InterruptedException {
        Thread.sleep(BLIND_MILLIS);
        return hasReader();
    }

    private boolean waitUntilEmpty(int slave, long untilNanos) throws IOException, InterruptedException {
        IntByReference unread = new IntByReference();
        int empty = 0;
        while (empty < EMPTY_LOOKS) {
            if (libc.ioctl(slave, new NativeLong(Libc.FIONREAD), unread) != 0) {
                throw Libc.failed(libc, "ioctl FIONREAD");
            }
            empty = unread.getValue() == 0 ? empty + 1 : 0;
            if (empty == 0 && System.nanoTime() - untilNanos >= 0) {
                return false;
            }
            Thread.sleep(LOOK_MILLIS);
        }
        return true;
    }

    private short poll(short events, int timeoutMillis) throws IOException {
        requireOpen();
        pollfd.setInt(0, master);
        pollfd.setShort(4, events);
        pollfd.setShort(6, (short) 0);
        if (libc.poll(pollfd, new NativeLong(1), timeoutMillis) < 0 && !isPassing(Native.getLastError())) {
            throw Libc.failed(libc, "poll");
        }
        return pollfd.getShort(6);
    }

    private void requireOpen() throws IOException {
        if (closed) { // the number of the descriptor may be another file's by now
            throw new IOException(portName + " was closed on this side");
        }
    }

    private static boolean isPassing(int errno) {
        return errno == Libc.EAGAIN || errno == Libc.EINTR;
    }

    /** Hangs up: the port's reader gets an end of file or an error. Removes the link. A second call does nothing. */
    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        libc.close(master);
        removeLink();
    }

    private void removeLink() {
        try {
            if (Files.isSymbolicLink(link) && Files.readSymbolicLink(link).equals(Path.of(portName))) {
                Files.delete(link);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("could not remove the link " + link, e);
        }
    }
}
