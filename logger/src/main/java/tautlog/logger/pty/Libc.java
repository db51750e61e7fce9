package tautlog.logger.pty;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import java.io.IOException;

/** The calls of the C library that a pseudo-terminal takes, and the numbers of Linux that go with them. */
interface Libc extends Library {
    // <fcntl.h>, <poll.h>, <sys/ioctl.h>, <errno.h> of Linux on x86-64 and on ARM, 32 and 64 bit (asm-generic)
    int O_RDWR = 0x2;
    int O_NOCTTY = 0x100;
    int O_NONBLOCK = 0x800;
    int O_CLOEXEC = 0x80000;
    short POLLIN = 0x1;
    short POLLOUT = 0x4;
    short POLLHUP = 0x10;
    int FIONREAD = 0x541B;
    int TCSANOW = 0;
    int EINTR = 4;
    int EIO = 5;
    int EAGAIN = 11;

    /** Room enough for a {@code struct termios} (60 bytes with glibc). */
    int TERMIOS_BYTES = 256;

    int posix_openpt(int flags);

    int grantpt(int fd);

    int unlockpt(int fd);

    int ptsname_r(int fd, byte[] name, NativeLong size);

    int open(String path, int flags);

    int close(int fd);

    NativeLong read(int fd, byte[] into, NativeLong size);

    NativeLong write(int fd, Pointer from, NativeLong size);

    int ioctl(int fd, NativeLong request, IntByReference value);

    int tcgetattr(int fd, Memory termios);

    void cfmakeraw(Memory termios);

    int tcsetattr(int fd, int when, Memory termios);

    int poll(Memory pollfd, NativeLong count, int timeoutMillis);

    String strerror(int errno);

    /** The last call on this thread failed: says which and why. */
    static IOException failed(Libc libc, String call) {
        int errno = Native.getLastError();
        return new IOException(call + ": " + libc.strerror(errno) + " (errno " + errno + ")");
    }
}
