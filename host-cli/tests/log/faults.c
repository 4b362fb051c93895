/* Lets one call of the system on a file below a folder fail, or all from one on: for LD_PRELOAD.
 *
 * TENTER_FAULT_UNDER  the folder
 * TENTER_FAULT_AT     which call, from 1 on; 0 for none
 * TENTER_FAULT_ERROR  the error's number
 * TENTER_FAULT_HOW    once, on (from there on all), or short (half is written, and all fails from there on)
 * TENTER_FAULT_COUNT  a file into which the number of calls is written at the end
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

static long at, count;
static int error_number;
static const char *under, *how;

__attribute__((constructor)) static void begin(void) {
    const char *text = getenv("TENTER_FAULT_AT");
    at = text ? atol(text) : 0;
    text = getenv("TENTER_FAULT_ERROR");
    error_number = text ? atoi(text) : EIO;
    how = getenv("TENTER_FAULT_HOW");
    under = getenv("TENTER_FAULT_UNDER");
}

__attribute__((destructor)) static void end(void) {
    const char *file = getenv("TENTER_FAULT_COUNT");
    FILE *out = file ? fopen(file, "w") : NULL;
    if (out) {
        fprintf(out, "%ld", count);
        fclose(out);
    }
}

static int is_below(const char *path) {
    return under && path && strncmp(path, under, strlen(under)) == 0;
}

static int is_open_below(int fd) {
    char name[64], path[PATH_MAX];
    snprintf(name, sizeof name, "/proc/self/fd/%d", fd);
    ssize_t length = readlink(name, path, sizeof path - 1);
    if (length < 0) return 0;
    path[length] = 0;
    return is_below(path);
}

/* 0 where it goes well, 1 where it fails, 2 where it does half of it. */
static int fate(void) {
    long now = __atomic_add_fetch(&count, 1, __ATOMIC_SEQ_CST);
    int is_short = how && strcmp(how, "short") == 0, on = how && strcmp(how, "once") != 0;
    if (at == 0 || now < at || (now > at && !on)) return 0;
    if (now == at && is_short) return 2;
    errno = error_number;
    return 1;
}

#define REAL(name) __typeof__(&name) real = (__typeof__(&name))dlsym(RTLD_NEXT, #name)
#define ON_A_FILE(result, name, parameters, arguments)                                                                  \
    result name parameters {                                                                                            \
        REAL(name);                                                                                                     \
        if (is_open_below(fd) && fate() == 1) return -1;                                                                \
        return real arguments;                                                                                          \
    }
#define WRITES(name, parameters, whole, half)                                                                           \
    ssize_t name parameters {                                                                                           \
        REAL(name);                                                                                                     \
        int what = is_open_below(fd) ? fate() : 0;                                                                      \
        if (what == 1) return -1;                                                                                       \
        return what == 2 && size > 1 ? real half : real whole;                                                          \
    }

WRITES(write, (int fd, const void *bytes, size_t size), (fd, bytes, size), (fd, bytes, size / 2))
WRITES(pwrite, (int fd, const void *bytes, size_t size, off_t from), (fd, bytes, size, from), (fd, bytes, size / 2, from))
WRITES(pwrite64, (int fd, const void *bytes, size_t size, off64_t from), (fd, bytes, size, from), (fd, bytes, size / 2, from))
ON_A_FILE(ssize_t, read, (int fd, void *bytes, size_t size), (fd, bytes, size))
ON_A_FILE(ssize_t, pread, (int fd, void *bytes, size_t size, off_t from), (fd, bytes, size, from))
ON_A_FILE(ssize_t, pread64, (int fd, void *bytes, size_t size, off64_t from), (fd, bytes, size, from))
ON_A_FILE(int, fsync, (int fd), (fd))
ON_A_FILE(int, fdatasync, (int fd), (fd))
ON_A_FILE(int, ftruncate, (int fd, off_t size), (fd, size))
ON_A_FILE(int, ftruncate64, (int fd, off64_t size), (fd, size))
ON_A_FILE(int, fchmod, (int fd, mode_t mode), (fd, mode))

int rename(const char *from, const char *to) {
    REAL(rename);
    if ((is_below(from) || is_below(to)) && fate() == 1) return -1;
    return real(from, to);
}

int unlink(const char *path) {
    REAL(unlink);
    if (is_below(path) && fate() == 1) return -1;
    return real(path);
}

int mkdir(const char *path, mode_t mode) {
    REAL(mkdir);
    if (is_below(path) && fate() == 1) return -1;
    return real(path, mode);
}

#define OPENS(name)                                                                                                     \
    int name(const char *path, int flags, ...) {                                                                        \
        REAL(name);                                                                                                     \
        va_list more;                                                                                                   \
        va_start(more, flags);                                                                                          \
        mode_t mode = (flags & (O_CREAT | O_TMPFILE)) ? va_arg(more, mode_t) : 0;                                       \
        va_end(more);                                                                                                   \
        if (is_below(path) && fate() == 1) return -1;                                                                   \
        return real(path, flags, mode);                                                                                 \
    }
OPENS(open)
OPENS(open64)
