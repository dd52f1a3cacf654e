// Where the store lies: the lock beside it, and the file system beneath it.
#include "store.h"
#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/vfs.h>
#include <unistd.h>

int turn_file_open(const char *path)
{
    g_autofree char *name = g_strconcat(path, "-turn", NULL);
    // Read only: whoever may write the store can then take turns, whoever made the file.
    return open(name, O_RDONLY | O_CREAT | O_CLOEXEC, 0666);
}

// Asked again every millisecond, for a lock that waits cannot be given a limit without a signal.
gboolean turn_file_take(int file, int milliseconds)
{
    gint64 until = g_get_monotonic_time() + (gint64)milliseconds * 1000;
    while (flock(file, LOCK_EX | LOCK_NB) != 0) {
        if (errno != EWOULDBLOCK && errno != EINTR)
            return FALSE;
        if (g_get_monotonic_time() >= until)
            return FALSE;
        g_usleep(1000);
    }
    return TRUE;
}

void turn_file_give(int file)
{
    flock(file, LOCK_UN);
}

// Locks of single bytes far behind the end of the file have nothing to do with the turn, and end
// with their process.
static struct flock byte_lock(const char *what, gint64 number)
{
    enum { NAMES = 31, NUMBERS = 32 }; // bits
    guint32 name = g_str_hash(what) & ((1U << NAMES) - 1);
    return (struct flock){.l_type = F_RDLCK,
                          .l_whence = SEEK_SET,
                          .l_start = ((off_t)name << NUMBERS) + (off_t)(guint32)number,
                          .l_len = 1};
}

void turn_file_mark(int file, const char *what, gint64 number)
{
    struct flock lock = byte_lock(what, number);
    fcntl(file, F_SETLK, &lock);
}

gboolean turn_file_is_marked(int file, const char *what, gint64 number)
{
    struct flock lock = byte_lock(what, number);
    lock.l_type = F_WRLCK;
    return fcntl(file, F_GETLK, &lock) == 0 && lock.l_type != F_UNLCK;
}

// Magic numbers of linux/magic.h and the file systems' own sources. There, locks and shared memory
// are not the same for two computers, which a write-ahead log needs.
static const struct {
    unsigned long magic;
    const char *name;
} networks[] = {
    {0x6969, "NFS"},     {0x517b, "SMB"},     {0xff534d42, "CIFS"}, {0xfe534d42, "SMB"},
    {0x5346414f, "AFS"}, {0x6b414653, "AFS"}, {0x73757245, "Coda"}, {0x00c36400, "Ceph"},
    {0x564c, "NCP"},     {0x01021997, "9P"},
};

const char *network_name(unsigned long magic)
{
    for (gsize i = 0; i < G_N_ELEMENTS(networks); i++)
        if (networks[i].magic == (magic & 0xffffffff)) // some systems extend its sign
            return networks[i].name;
    return NULL;
}

const char *network_file_system(const char *path)
{
    struct statfs answer;
    return statfs(path, &answer) == 0 ? network_name((unsigned long)answer.f_type) : NULL;
}

void folder_sync(const char *path)
{
    g_autofree char *folder = g_path_get_dirname(path);
    int file = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (file < 0)
        return;
    fsync(file);
    close(file);
}
