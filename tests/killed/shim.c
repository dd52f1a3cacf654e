// Put before the C library (LD_PRELOAD): counts what a process does to the files of a store, and
// kills it at the n-th call, so that no handler and no destructor of its own runs.
//   KILL_STORE  files whose path begins with it count
//   KILL_CALL   write (with truncate), sync or remove; anything else: nothing is killed
//   KILL_AT     which call, from 1
//   KILL_HALF   set: half of that write is still done
//   KILL_COUNTS a file that gets the number of calls of each sort when the process ends by itself
#define _GNU_SOURCE
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

enum { CALL_WRITE, CALL_SYNC, CALL_REMOVE, CALL_SORTS };

static const char *const names[CALL_SORTS] = {"write", "sync", "remove"};
static long counts[CALL_SORTS];

static int is_of_store(const char *path)
{
    const char *store = getenv("KILL_STORE");
    return store && strncmp(path, store, strlen(store)) == 0;
}

static int file_is_of_store(int file)
{
    char link[64], path[4096];
    snprintf(link, sizeof link, "/proc/self/fd/%d", file);
    long length = syscall(SYS_readlinkat, AT_FDCWD, link, path, sizeof path - 1);
    if (length < 0)
        return 0;
    path[length] = '\0';
    return is_of_store(path);
}

// Whether this call is the one to be killed at.
static int is_due(int sort)
{
    const char *call = getenv("KILL_CALL"), *at = getenv("KILL_AT");
    return ++counts[sort] == (at ? atol(at) : 0) && call && strcmp(call, names[sort]) == 0;
}

static void end_here(void)
{
    syscall(SYS_kill, getpid(), SIGKILL);
}

ssize_t write(int file, const void *bytes, size_t count)
{
    if (file_is_of_store(file) && is_due(CALL_WRITE)) {
        if (getenv("KILL_HALF"))
            syscall(SYS_write, file, bytes, count / 2);
        end_here();
    }
    return syscall(SYS_write, file, bytes, count);
}

ssize_t pwrite64(int file, const void *bytes, size_t count, off_t offset)
{
    if (file_is_of_store(file) && is_due(CALL_WRITE)) {
        if (getenv("KILL_HALF"))
            syscall(SYS_pwrite64, file, bytes, count / 2, offset);
        end_here();
    }
    return syscall(SYS_pwrite64, file, bytes, count, offset);
}

ssize_t pwrite(int file, const void *bytes, size_t count, off_t offset)
{
    return pwrite64(file, bytes, count, offset);
}

int ftruncate64(int file, off_t length)
{
    if (file_is_of_store(file) && is_due(CALL_WRITE))
        end_here();
    return (int)syscall(SYS_ftruncate, file, length);
}

int ftruncate(int file, off_t length)
{
    return ftruncate64(file, length);
}

int fsync(int file)
{
    if (file_is_of_store(file) && is_due(CALL_SYNC))
        end_here();
    return (int)syscall(SYS_fsync, file);
}

int fdatasync(int file)
{
    if (file_is_of_store(file) && is_due(CALL_SYNC))
        end_here();
    return (int)syscall(SYS_fdatasync, file);
}

int unlink(const char *path)
{
    if (is_of_store(path) && is_due(CALL_REMOVE))
        end_here();
    return (int)syscall(SYS_unlinkat, AT_FDCWD, path, 0);
}

__attribute__((destructor)) static void report(void)
{
    const char *path = getenv("KILL_COUNTS");
    FILE *file = path ? fopen(path, "w") : NULL;
    if (!file)
        return;
    for (int i = 0; i < CALL_SORTS; i++)
        fprintf(file, "%s %ld\n", names[i], counts[i]);
    fclose(file);
}
