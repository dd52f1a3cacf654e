// A file system for SQLite that fails, or kills the process, at the n-th call of one sort. Killed
// like a power cut, it takes back first what was written and not yet synced.
#pragma once
#include <glib.h>
#include <signal.h>
#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

typedef enum {
    FAULT_OPEN,
    FAULT_READ,
    FAULT_WRITE,
    FAULT_SYNC,
    FAULT_TRUNCATE,
    FAULT_SHARE
} FaultCall;

typedef enum {
    FAULT_ONCE,      // the n-th call fails
    FAULT_EVER,      // it and all after it fail
    FAULT_KILL,      // the process ends before it
    FAULT_KILL_HALF, // … after half of what was to be written
    FAULT_POWER_CUT, // … and nothing that was not synced stays
    FAULT_WAYS
} FaultWay;

typedef struct {
    FaultCall call;
    FaultWay way;
    int n;      // counts down to the fault; 0: none
    int answer; // what a failing call answers
    gboolean fired;
} Fault;

static Fault fault;

typedef struct {
    sqlite3_int64 offset;
    GBytes *before;
    sqlite3_int64 size; // of the file, before
} Unsynced;

typedef struct {
    sqlite3_file base;
    GPtrArray *unsynced;
    sqlite3_file *real; // behind this structure
} FaultFile;

static GPtrArray *fault_files; // all that are open

static inline sqlite3_file *real_of(sqlite3_file *file)
{
    return ((FaultFile *)file)->real;
}

static inline void unsynced_free(gpointer data)
{
    Unsynced *write = data;
    g_bytes_unref(write->before);
    g_free(write);
}

// What stands there before it is overwritten.
static inline void remember(FaultFile *file, int amount, sqlite3_int64 offset)
{
    Unsynced *write = g_new0(Unsynced, 1);
    char *bytes = g_malloc0((gsize)amount);
    file->real->pMethods->xFileSize(file->real, &write->size);
    file->real->pMethods->xRead(file->real, bytes, amount, offset);
    write->offset = offset;
    write->before = g_bytes_new_take(bytes, (gsize)amount);
    g_ptr_array_add(file->unsynced, write);
}

static inline void take_back(FaultFile *file)
{
    for (guint i = file->unsynced->len; i-- > 0;) {
        const Unsynced *write = file->unsynced->pdata[i];
        gsize length;
        const void *bytes = g_bytes_get_data(write->before, &length);
        file->real->pMethods->xWrite(file->real, bytes, (int)length, write->offset);
        file->real->pMethods->xTruncate(file->real, write->size);
    }
}

// Whether this call is the one to fail; a killing fault does not return.
static inline gboolean fails(FaultCall call)
{
    if (fault.n == 0 || fault.call != call)
        return FALSE;
    if (fault.fired)
        return fault.way == FAULT_EVER;
    if (--fault.n > 0)
        return FALSE;
    fault.n = 1;
    fault.fired = TRUE;
    if (fault.way == FAULT_POWER_CUT)
        for (guint i = 0; i < fault_files->len; i++)
            take_back(fault_files->pdata[i]);
    if (fault.way >= FAULT_KILL && !(fault.way == FAULT_KILL_HALF && call == FAULT_WRITE))
        kill(getpid(), SIGKILL);
    return TRUE;
}

static inline int fault_close(sqlite3_file *file)
{
    FaultFile *self = (FaultFile *)file;
    g_ptr_array_remove(fault_files, self);
    g_ptr_array_unref(self->unsynced);
    return self->real->pMethods->xClose(self->real);
}

static inline int fault_read(sqlite3_file *file, void *into, int amount, sqlite3_int64 offset)
{
    if (fails(FAULT_READ))
        return fault.answer;
    return real_of(file)->pMethods->xRead(real_of(file), into, amount, offset);
}

static inline int fault_write(sqlite3_file *file, const void *from, int amount,
                              sqlite3_int64 offset)
{
    sqlite3_file *real = real_of(file);
    if (fails(FAULT_WRITE)) {
        if (fault.way != FAULT_KILL_HALF)
            return fault.answer;
        real->pMethods->xWrite(real, from, amount / 2, offset);
        kill(getpid(), SIGKILL);
    }
    if (fault.way == FAULT_POWER_CUT)
        remember((FaultFile *)file, amount, offset);
    return real->pMethods->xWrite(real, from, amount, offset);
}

static inline int fault_truncate(sqlite3_file *file, sqlite3_int64 size)
{
    if (fails(FAULT_TRUNCATE))
        return fault.answer;
    return real_of(file)->pMethods->xTruncate(real_of(file), size);
}

static inline int fault_sync(sqlite3_file *file, int flags)
{
    if (fails(FAULT_SYNC))
        return fault.answer;
    g_ptr_array_set_size(((FaultFile *)file)->unsynced, 0);
    return real_of(file)->pMethods->xSync(real_of(file), flags);
}

static inline int fault_size(sqlite3_file *file, sqlite3_int64 *size)
{
    return real_of(file)->pMethods->xFileSize(real_of(file), size);
}

static inline int fault_lock(sqlite3_file *file, int lock)
{
    return real_of(file)->pMethods->xLock(real_of(file), lock);
}

static inline int fault_unlock(sqlite3_file *file, int lock)
{
    return real_of(file)->pMethods->xUnlock(real_of(file), lock);
}

static inline int fault_reserved(sqlite3_file *file, int *answer)
{
    return real_of(file)->pMethods->xCheckReservedLock(real_of(file), answer);
}

static inline int fault_control(sqlite3_file *file, int op, void *argument)
{
    return real_of(file)->pMethods->xFileControl(real_of(file), op, argument);
}

static inline int fault_sector(sqlite3_file *file)
{
    return real_of(file)->pMethods->xSectorSize(real_of(file));
}

static inline int fault_device(sqlite3_file *file)
{
    return real_of(file)->pMethods->xDeviceCharacteristics(real_of(file));
}

static inline int fault_share_map(sqlite3_file *file, int page, int size, int extend,
                                  void volatile **at)
{
    if (fails(FAULT_SHARE))
        return fault.answer;
    return real_of(file)->pMethods->xShmMap(real_of(file), page, size, extend, at);
}

static inline int fault_share_lock(sqlite3_file *file, int offset, int n, int flags)
{
    return real_of(file)->pMethods->xShmLock(real_of(file), offset, n, flags);
}

static inline void fault_share_barrier(sqlite3_file *file)
{
    real_of(file)->pMethods->xShmBarrier(real_of(file));
}

static inline int fault_share_unmap(sqlite3_file *file, int and_remove)
{
    return real_of(file)->pMethods->xShmUnmap(real_of(file), and_remove);
}

static const sqlite3_io_methods fault_methods = {
    .iVersion = 2,
    .xClose = fault_close,
    .xRead = fault_read,
    .xWrite = fault_write,
    .xTruncate = fault_truncate,
    .xSync = fault_sync,
    .xFileSize = fault_size,
    .xLock = fault_lock,
    .xUnlock = fault_unlock,
    .xCheckReservedLock = fault_reserved,
    .xFileControl = fault_control,
    .xSectorSize = fault_sector,
    .xDeviceCharacteristics = fault_device,
    .xShmMap = fault_share_map,
    .xShmLock = fault_share_lock,
    .xShmBarrier = fault_share_barrier,
    .xShmUnmap = fault_share_unmap,
};

static inline int fault_open(sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags,
                             int *out)
{
    sqlite3_vfs *real = vfs->pAppData;
    FaultFile *self = (FaultFile *)file;
    self->base.pMethods = NULL;
    if (fails(FAULT_OPEN))
        return fault.answer;
    self->real = (sqlite3_file *)(self + 1);
    int answer = real->xOpen(real, name, self->real, flags, out);
    if (!self->real->pMethods)
        return answer;
    self->base.pMethods = &fault_methods;
    self->unsynced = g_ptr_array_new_with_free_func(unsynced_free);
    g_ptr_array_add(fault_files, self);
    return answer;
}

// From now on SQLite goes through this file system.
static inline void fault_vfs_register(void)
{
    static sqlite3_vfs vfs;
    sqlite3_vfs *real = sqlite3_vfs_find(NULL);
    vfs = *real;
    vfs.zName = "fault";
    vfs.pAppData = real;
    vfs.pNext = NULL;
    vfs.szOsFile = (int)sizeof(FaultFile) + real->szOsFile;
    vfs.xOpen = fault_open;
    fault_files = g_ptr_array_new();
    sqlite3_vfs_register(&vfs, 1);
}
