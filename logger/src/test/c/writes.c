/*
 * A layer between a program and its files, loaded before the C library: all that changes the files of one folder is also
 * written down, in order and with its time, so that a test can make the folder as a power cut would have left it; and the
 * disk can be made slow or faulty while the program runs.
 *
 *   TAUTLOG_WRITES_OF   the folder, absolute, without a slash at its end
 *   TAUTLOG_WRITES_TO   the journal, made when it is not there, appended to
 *   TAUTLOG_DISK        a file that need not be there; what it says while it is there:
 *                       "stall N"   each flush takes N milliseconds longer
 *                       "errno N"   each change of the folder fails with this number of <errno.h>
 *
 * A record of the journal, little-endian: u8 what, i64 CLOCK_MONOTONIC ns when it was done, i64 where (offset or size), u32 length of
 * the name, u32 length of the bytes, the name, the bytes. Linux, 64 bits.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <time.h>
#include <unistd.h>

enum { CREATED = 1, WROTE = 2, CUT_TO = 3, FLUSHED = 4, FOLDER_FLUSHED = 5, RENAMED = 6, REMOVED = 7 };
enum { FILES = 4096 };

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static char *names[FILES];
static struct stat known[FILES];

static void full(int fd, const void *from, size_t n) {
    const char *at = from;
    while (n > 0) {
        long done = syscall(SYS_write, fd, at, n);
        if (done < 0 && errno == EINTR) continue;
        if (done <= 0) {
            static const char words[] = "the journal of writes cannot be written\n";
            syscall(SYS_write, 2, words, sizeof words - 1);
            _exit(99);
        }
        at += done;
        n -= (size_t) done;
    }
}

static void note(uint8_t what, int64_t where, const char *name, const void *bytes, size_t length) {
    static int journal = -1;
    if (journal < 0) {
        journal = (int) syscall(SYS_openat, AT_FDCWD, getenv("TAUTLOG_WRITES_TO"),
                O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0644);
    }
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    int64_t nanos = (int64_t) now.tv_sec * 1000000000 + now.tv_nsec;
    uint32_t named = (uint32_t) strlen(name), n = (uint32_t) length;
    char head[25];
    head[0] = (char) what;
    memcpy(head + 1, &nanos, 8);
    memcpy(head + 9, &where, 8);
    memcpy(head + 17, &named, 4);
    memcpy(head + 21, &n, 4);
    full(journal, head, sizeof head);
    full(journal, name, named);
    full(journal, bytes, length);
}

static int is_watched(const char *path) {
    const char *folder = getenv("TAUTLOG_WRITES_OF");
    size_t n = folder == NULL ? 0 : strlen(folder);
    return n > 0 && path != NULL && strncmp(path, folder, n) == 0 && (path[n] == '/' || path[n] == 0);
}

/* What TAUTLOG_DISK says now: the number behind the word, or 0. */
static int disk_says(const char *word) {
    const char *path = getenv("TAUTLOG_DISK");
    int fd = path == NULL ? -1 : (int) syscall(SYS_openat, AT_FDCWD, path, O_RDONLY | O_CLOEXEC, 0);
    if (fd < 0) return 0;
    char words[32] = {0};
    long n = syscall(SYS_read, fd, words, sizeof words - 1);
    syscall(SYS_close, fd);
    size_t length = strlen(word);
    return n > 0 && strncmp(words, word, length) == 0 ? atoi(words + length) : 0;
}

static int refuses(void) {
    int error = disk_says("errno ");
    if (error != 0) errno = error;
    return error != 0;
}

/* Not every close passes here: a number may stand for another file by now. */
static const char *name_of(int fd) {
    struct stat now;
    if (fd < 0 || fd >= FILES || names[fd] == NULL || syscall(SYS_fstat, fd, &now) != 0) return NULL;
    return now.st_ino == known[fd].st_ino && now.st_dev == known[fd].st_dev ? names[fd] : NULL;
}

static void name(int fd, const char *path) {
    if (fd >= 0 && fd < FILES) {
        free(names[fd]);
        names[fd] = path == NULL ? NULL : strdup(path);
        if (path != NULL) syscall(SYS_fstat, fd, &known[fd]);
    }
}

static int opened(const char *path, int flags, int mode) {
    if (!is_watched(path)) return (int) syscall(SYS_openat, AT_FDCWD, path, flags, mode);
    if (flags & (O_CREAT | O_TRUNC | O_WRONLY | O_RDWR) && refuses()) return -1;
    pthread_mutex_lock(&lock);
    int was_there = syscall(SYS_faccessat, AT_FDCWD, path, F_OK) == 0;
    int fd = (int) syscall(SYS_openat, AT_FDCWD, path, flags, mode);
    int error = errno;
    if (fd >= 0) {
        name(fd, path);
        if (!was_there) note(CREATED, 0, path, "", 0);
        else if (flags & O_TRUNC) note(CUT_TO, 0, path, "", 0);
    }
    pthread_mutex_unlock(&lock);
    errno = error;
    return fd;
}

#define MODE                                              \
    int mode = 0;                                         \
    if (flags & (O_CREAT | O_TMPFILE)) {                  \
        va_list more;                                     \
        va_start(more, flags);                            \
        mode = va_arg(more, int);                         \
        va_end(more);                                     \
    }

int open(const char *path, int flags, ...) { MODE return opened(path, flags, mode); }
int open64(const char *path, int flags, ...) { MODE return opened(path, flags | O_LARGEFILE, mode); }
int creat(const char *path, mode_t mode) { return opened(path, O_CREAT | O_WRONLY | O_TRUNC, (int) mode); }
int openat(int at, const char *path, int flags, ...) {
    MODE
    if (at == AT_FDCWD || path[0] == '/') return opened(path, flags, mode);
    return (int) syscall(SYS_openat, at, path, flags, mode);
}

int close(int fd) {
    pthread_mutex_lock(&lock);
    name(fd, NULL);
    int done = (int) syscall(SYS_close, fd);
    pthread_mutex_unlock(&lock);
    return done;
}

static ssize_t wrote(int fd, const void *bytes, size_t n, int64_t where) {
    if (name_of(fd) != NULL && refuses()) return -1;
    pthread_mutex_lock(&lock);
    const char *path = name_of(fd);
    int64_t at = where;
    if (path != NULL && where < 0) {
        struct stat file;
        int flags = fcntl(fd, F_GETFL);
        at = flags & O_APPEND && fstat(fd, &file) == 0 ? file.st_size : lseek(fd, 0, SEEK_CUR);
    }
    ssize_t done = where < 0 ? syscall(SYS_write, fd, bytes, n) : syscall(SYS_pwrite64, fd, bytes, n, where);
    int error = errno;
    if (path != NULL && done > 0) note(WROTE, at, path, bytes, (size_t) done);
    pthread_mutex_unlock(&lock);
    errno = error;
    return done;
}

ssize_t write(int fd, const void *bytes, size_t n) {
    return name_of(fd) == NULL ? syscall(SYS_write, fd, bytes, n) : wrote(fd, bytes, n, -1);
}
ssize_t pwrite(int fd, const void *bytes, size_t n, off_t where) { return wrote(fd, bytes, n, where); }
ssize_t pwrite64(int fd, const void *bytes, size_t n, off64_t where) { return wrote(fd, bytes, n, where); }

/* Of several pieces the first is written, which the caller must expect. */
ssize_t writev(int fd, const struct iovec *pieces, int n) {
    return name_of(fd) == NULL || n == 0 ? syscall(SYS_writev, fd, pieces, n)
                                         : wrote(fd, pieces[0].iov_base, pieces[0].iov_len, -1);
}

static int cut_to(int fd, int64_t size) {
    if (name_of(fd) != NULL && refuses()) return -1;
    pthread_mutex_lock(&lock);
    int done = (int) syscall(SYS_ftruncate, fd, size);
    int error = errno;
    if (name_of(fd) != NULL && done == 0) note(CUT_TO, size, name_of(fd), "", 0);
    pthread_mutex_unlock(&lock);
    errno = error;
    return done;
}

int ftruncate(int fd, off_t size) { return cut_to(fd, size); }
int ftruncate64(int fd, off64_t size) { return cut_to(fd, size); }

/* Under the lock: what is written meanwhile would pass for flushed. */
static int flushed(int fd, long call) {
    int stall = name_of(fd) == NULL ? 0 : disk_says("stall ");
    if (stall > 0) usleep((useconds_t) stall * 1000);
    if (name_of(fd) != NULL && refuses()) return -1;
    pthread_mutex_lock(&lock);
    int done = (int) syscall(call, fd);
    int error = errno;
    const char *path = name_of(fd);
    if (path != NULL && done == 0) {
        note(strcmp(path, getenv("TAUTLOG_WRITES_OF")) == 0 ? FOLDER_FLUSHED : FLUSHED, 0, path, "", 0);
    }
    pthread_mutex_unlock(&lock);
    errno = error;
    return done;
}

int fsync(int fd) { return flushed(fd, SYS_fsync); }
int fdatasync(int fd) { return flushed(fd, SYS_fdatasync); }

static int renamed(const char *from, const char *to) {
    if (is_watched(from) && refuses()) return -1;
    pthread_mutex_lock(&lock);
    int done = (int) syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
    int error = errno;
    if (done == 0 && is_watched(from)) {
        for (int fd = 0; fd < FILES; fd++) {
            if (names[fd] != NULL && strcmp(names[fd], from) == 0) name(fd, to);
        }
        note(RENAMED, 0, from, to, strlen(to));
    }
    pthread_mutex_unlock(&lock);
    errno = error;
    return done;
}

int rename(const char *from, const char *to) { return renamed(from, to); }

int unlink(const char *path) {
    if (is_watched(path) && refuses()) return -1;
    pthread_mutex_lock(&lock);
    int done = (int) syscall(SYS_unlinkat, AT_FDCWD, path, 0);
    int error = errno;
    if (done == 0 && is_watched(path)) note(REMOVED, 0, path, "", 0);
    pthread_mutex_unlock(&lock);
    errno = error;
    return done;
}
