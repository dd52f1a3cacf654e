#include <standbook/book/aside.h>

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
    char *path;
    int file; // locked; -1: there is none
} Slip;

struct Aside {
    char *stem; // of the files' paths
    Slip own;
    GArray *taken; // Slip: what others left, until something is kept here in their stead
    char *kept;    // what stands in the own one
};

// The lock goes with the process. A file that was removed meanwhile is nobody's any more.
static gboolean lock(int file)
{
    struct stat state;
    return flock(file, LOCK_EX | LOCK_NB) == 0 && fstat(file, &state) == 0 && state.st_nlink > 0;
}

static void slip_remove(Slip *slip)
{
    if (slip->file >= 0) {
        g_unlink(slip->path);
        close(slip->file);
    }
    g_free(slip->path);
    *slip = (Slip){.file = -1};
}

static char *read_all(int file)
{
    enum { MOST = 1 << 20 }; // bytes: no program leaves more
    g_autoptr(GString) text = g_string_new(NULL);
    char part[4096];
    ssize_t got = 0;
    while (text->len < MOST && (got = read(file, part, sizeof part)) > 0)
        g_string_append_len(text, part, got);
    return g_strdup(text->str);
}

// Takes over what stands in that file, if its program has ended.
static void take_over(Aside *aside, const char *path, GPtrArray *left)
{
    Slip slip = {g_strdup(path), open(path, O_RDWR | O_CLOEXEC | O_NOFOLLOW)};
    if (slip.file < 0 || !lock(slip.file)) {
        if (slip.file >= 0)
            close(slip.file);
        g_free(slip.path);
        return;
    }
    char *text = read_all(slip.file);
    if (*text)
        g_ptr_array_add(left, text);
    else
        g_free(text);
    g_array_append_val(aside->taken, slip);
}

Aside *aside_open(const char *store, GPtrArray **left)
{
    Aside *aside = g_new0(Aside, 1);
    g_autofree char *real = realpath(store, NULL);
    g_autofree char *stem = g_strconcat(real ? real : store, "-typed-", NULL);
    g_autofree char *folder = g_path_get_dirname(stem), *name = g_path_get_basename(stem);
    g_autoptr(GDir) files = access(folder, W_OK) == 0 ? g_dir_open(folder, 0, NULL) : NULL;
    aside->stem = g_steal_pointer(&stem);
    aside->own.file = -1;
    aside->kept = g_strdup("");
    aside->taken = g_array_new(FALSE, FALSE, sizeof(Slip));
    *left = g_ptr_array_new_with_free_func(g_free);
    for (const char *each = files ? g_dir_read_name(files) : NULL; each;
         each = g_dir_read_name(files)) {
        g_autofree char *path = g_build_filename(folder, each, NULL);
        if (g_str_has_prefix(each, name))
            take_over(aside, path, *left);
    }
    return aside;
}

// Between its making and its lock another program may take the file for one that was left. Before
// the first build there may be no folder for the store yet.
static void begin_own(Aside *aside)
{
    enum { TRIES = 3 };
    g_autofree char *folder = g_path_get_dirname(aside->stem);
    g_mkdir_with_parents(folder, 0700);
    for (guint i = 0; i < TRIES && aside->own.file < 0; i++) {
        char *path = g_strconcat(aside->stem, "XXXXXX", NULL);
        int file = g_mkstemp_full(path, O_RDWR | O_CLOEXEC, 0600);
        if (file >= 0 && lock(file)) {
            aside->own = (Slip){path, file};
            return;
        }
        if (file >= 0)
            close(file);
        g_free(path);
    }
}

static gboolean write_own(Aside *aside, const char *text)
{
    size_t length = strlen(text);
    begin_own(aside);
    return aside->own.file >= 0 && pwrite(aside->own.file, text, length, 0) == (ssize_t)length &&
           ftruncate(aside->own.file, (off_t)length) == 0;
}

void aside_keep(Aside *aside, const char *text)
{
    if (strcmp(text, aside->kept) != 0) {
        if (!*text)
            slip_remove(&aside->own);
        else if (!write_own(aside, text))
            return;
        g_free(aside->kept);
        aside->kept = g_strdup(text);
    }
    for (guint i = 0; i < aside->taken->len; i++)
        slip_remove(&g_array_index(aside->taken, Slip, i));
    g_array_set_size(aside->taken, 0);
}

void aside_close(Aside *aside)
{
    if (!aside)
        return;
    for (guint i = 0; i < aside->taken->len; i++) {
        Slip *slip = &g_array_index(aside->taken, Slip, i);
        close(slip->file);
        g_free(slip->path);
    }
    if (aside->own.file >= 0)
        close(aside->own.file);
    g_free(aside->own.path);
    g_array_unref(aside->taken);
    g_free(aside->stem);
    g_free(aside->kept);
    g_free(aside);
}
