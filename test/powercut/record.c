/*
 * Records what a program does to the files of one folder: writes with their bytes, truncations, syncs, names made and removed.
 * Loaded with LD_PRELOAD. EBBLINE_RECORD_FOLDER says which folder, EBBLINE_RECORD_LOG where the record goes.
 * Entry: op (1 byte), length of the name (2), offset (8), length of the data (4), name, data; numbers in the machine's order.
 * Ops: W write, T truncate to offset, S sync, C made or emptied, U removed, M name moved to the name in the data.
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
#include <unistd.h>

#define MOST_FDS 4096
#define LONGEST_NAME 256

static char names[MOST_FDS][LONGEST_NAME];
static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static const char *folder;
static int log_fd = -1;

/* Both the program and its threads may come here before the constructor has run. */
static int is_recording(void) {
  static int state = 0;
  if (state == 0) {
    const char *log = getenv("EBBLINE_RECORD_LOG");
    folder = getenv("EBBLINE_RECORD_FOLDER");
    state = -1;
    if (log && folder) {
      log_fd = (int)syscall(SYS_openat, AT_FDCWD, log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
      if (log_fd >= 0) state = 1;
    }
  }
  return state == 1;
}

/* The part of the path after the folder, or NULL. */
static const char *name_of_path(const char *path) {
  size_t length;
  if (!path || !is_recording()) return NULL;
  length = strlen(folder);
  if (strncmp(path, folder, length) != 0 || path[length] != '/') return NULL;
  return strlen(path + length + 1) < LONGEST_NAME ? path + length + 1 : NULL;
}

static const char *name_of_fd(int fd) {
  return fd >= 0 && fd < MOST_FDS && names[fd][0] ? names[fd] : NULL;
}

static void record(char op, const char *name, uint64_t offset, const void *data, uint32_t length) {
  char head[15];
  uint16_t name_length = (uint16_t)strlen(name);
  struct iovec parts[3];
  head[0] = op;
  memcpy(head + 1, &name_length, 2);
  memcpy(head + 3, &offset, 8);
  memcpy(head + 11, &length, 4);
  parts[0].iov_base = head;
  parts[0].iov_len = sizeof head;
  parts[1].iov_base = (void *)name;
  parts[1].iov_len = name_length;
  parts[2].iov_base = (void *)data;
  parts[2].iov_len = length;
  if (syscall(SYS_writev, log_fd, parts, 3) != (long)(sizeof head + name_length + length)) abort();
}

#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))

static int opened(int fd, const char *path, int flags, int was_there) {
  const char *name = name_of_path(path);
  if (fd < 0 || fd >= MOST_FDS) return fd;
  pthread_mutex_lock(&lock);
  names[fd][0] = 0;
  if (name) {
    strcpy(names[fd], name);
    if (((flags & O_CREAT) && !was_there) || (flags & O_TRUNC)) record('C', name, 0, NULL, 0);
  }
  pthread_mutex_unlock(&lock);
  return fd;
}

static int was_there(const char *path) {
  struct stat info;
  return syscall(SYS_newfstatat, AT_FDCWD, path, &info, 0) == 0;
}

#define OPEN(function)                                            \
  int function(const char *path, int flags, ...) {                \
    va_list rest;                                                 \
    mode_t mode;                                                  \
    int before = was_there(path);                                 \
    va_start(rest, flags);                                        \
    mode = flags & O_CREAT ? (mode_t)va_arg(rest, int) : 0;       \
    va_end(rest);                                                 \
    return opened(REAL(function)(path, flags, mode), path, flags, before); \
  }
OPEN(open)
OPEN(open64)

#define OPENAT(function)                                          \
  int function(int at, const char *path, int flags, ...) {        \
    va_list rest;                                                 \
    mode_t mode;                                                  \
    int before = was_there(path);                                 \
    va_start(rest, flags);                                        \
    mode = flags & O_CREAT ? (mode_t)va_arg(rest, int) : 0;       \
    va_end(rest);                                                 \
    return opened(REAL(function)(at, path, flags, mode), path, flags, before); \
  }
OPENAT(openat)
OPENAT(openat64)

int close(int fd) {
  if (is_recording() && name_of_fd(fd)) {
    pthread_mutex_lock(&lock);
    names[fd][0] = 0;
    pthread_mutex_unlock(&lock);
  }
  return REAL(close)(fd);
}

static uint64_t place_of(int fd) {
  struct stat info;
  if ((fcntl(fd, F_GETFL) & O_APPEND) && fstat(fd, &info) == 0) return (uint64_t)info.st_size;
  return (uint64_t)lseek(fd, 0, SEEK_CUR);
}

ssize_t write(int fd, const void *data, size_t length) {
  ssize_t done;
  uint64_t place;
  if (!is_recording() || !name_of_fd(fd)) return REAL(write)(fd, data, length);
  pthread_mutex_lock(&lock);
  place = place_of(fd);
  done = REAL(write)(fd, data, length);
  if (done > 0) record('W', names[fd], place, data, (uint32_t)done);
  pthread_mutex_unlock(&lock);
  return done;
}

#define PWRITE(function, offset_type)                                             \
  ssize_t function(int fd, const void *data, size_t length, offset_type place) {  \
    ssize_t done;                                                                 \
    if (!is_recording() || !name_of_fd(fd)) return REAL(function)(fd, data, length, place); \
    pthread_mutex_lock(&lock);                                                    \
    done = REAL(function)(fd, data, length, place);                               \
    if (done > 0) record('W', names[fd], (uint64_t)place, data, (uint32_t)done);  \
    pthread_mutex_unlock(&lock);                                                  \
    return done;                                                                  \
  }
PWRITE(pwrite, off_t)
PWRITE(pwrite64, off64_t)

#define TRUNCATE(function, offset_type)                         \
  int function(int fd, offset_type length) {                    \
    int done;                                                   \
    if (!is_recording() || !name_of_fd(fd)) return REAL(function)(fd, length); \
    pthread_mutex_lock(&lock);                                  \
    done = REAL(function)(fd, length);                          \
    if (done == 0) record('T', names[fd], (uint64_t)length, NULL, 0); \
    pthread_mutex_unlock(&lock);                                \
    return done;                                                \
  }
TRUNCATE(ftruncate, off_t)
TRUNCATE(ftruncate64, off64_t)

#define SYNC(function)                                          \
  int function(int fd) {                                        \
    int done;                                                   \
    if (!is_recording() || !name_of_fd(fd)) return REAL(function)(fd); \
    pthread_mutex_lock(&lock);                                  \
    done = REAL(function)(fd);                                  \
    if (done == 0) record('S', names[fd], 0, NULL, 0);          \
    pthread_mutex_unlock(&lock);                                \
    return done;                                                \
  }
SYNC(fsync)
SYNC(fdatasync)

int unlink(const char *path) {
  const char *name = name_of_path(path);
  int done;
  if (!name) return REAL(unlink)(path);
  pthread_mutex_lock(&lock);
  done = REAL(unlink)(path);
  if (done == 0) record('U', name, 0, NULL, 0);
  pthread_mutex_unlock(&lock);
  return done;
}

int rename(const char *from, const char *to) {
  const char *old_name = name_of_path(from);
  const char *new_name = name_of_path(to);
  int done;
  if (!old_name || !new_name) return REAL(rename)(from, to);
  pthread_mutex_lock(&lock);
  done = REAL(rename)(from, to);
  if (done == 0) record('M', old_name, 0, new_name, (uint32_t)strlen(new_name));
  pthread_mutex_unlock(&lock);
  return done;
}

/* What this does not follow must not happen unseen: a write to a recorded file by another road ends the program. */
#define REFUSE(condition, what)                                             \
  if (condition) {                                                          \
    static const char text[] = "record.c does not follow " what "\n";       \
    syscall(SYS_write, 2, text, sizeof text - 1);                           \
    abort();                                                                \
  }

ssize_t writev(int fd, const struct iovec *parts, int count) {
  REFUSE(is_recording() && name_of_fd(fd), "writev")
  return REAL(writev)(fd, parts, count);
}

ssize_t pwritev(int fd, const struct iovec *parts, int count, off_t place) {
  REFUSE(is_recording() && name_of_fd(fd), "pwritev")
  return REAL(pwritev)(fd, parts, count, place);
}

ssize_t pwritev64(int fd, const struct iovec *parts, int count, off64_t place) {
  REFUSE(is_recording() && name_of_fd(fd), "pwritev64")
  return REAL(pwritev64)(fd, parts, count, place);
}
