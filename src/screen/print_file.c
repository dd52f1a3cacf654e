#include "print_file.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

enum { MOST = 999 }; // texts of one name

static gboolean is_same(const char *file, const char *text)
{
    g_autofree char *there = NULL;
    gsize length;
    return g_file_get_contents(file, &there, &length, NULL) && length == strlen(text) &&
           memcmp(there, text, length) == 0;
}

static void set_error(GError **error, const char *file, int number)
{
    g_set_error(error, G_FILE_ERROR, (gint)g_file_error_from_errno(number),
                "%s cannot be written: %s", file, g_strerror(number));
}

// What was begun and cannot be ended is taken away again: half a sheet is none.
static gboolean write_all(FILE *out, const char *file, const char *text, GError **error)
{
    gboolean whole = fputs(text, out) != EOF && fflush(out) == 0;
    int number = errno;
    if (fclose(out) != 0 && whole) {
        whole = FALSE;
        number = errno;
    }
    if (whole)
        return TRUE;
    g_remove(file);
    set_error(error, file, number);
    return FALSE;
}

PrintDone print_file(const char *name, const char *text, char **file, GError **error)
{
    *file = NULL;
    for (guint number = 1; number <= MOST; number++) {
        g_autofree char *path = number == 1 ? g_strdup_printf("%s.txt", name)
                                            : g_strdup_printf("%s-%u.txt", name, number);
        FILE *out = fopen(path, "wx");
        gboolean taken = !out && errno == EEXIST, there = taken && is_same(path, text);
        if (taken && !there)
            continue;
        if (!out && !there)
            set_error(error, path, errno);
        if (!there && (!out || !write_all(out, path, text, error)))
            return PRINT_FAILED;
        *file = g_steal_pointer(&path);
        return there ? PRINT_THERE : number == 1 ? PRINT_WRITTEN : PRINT_BESIDE;
    }
    set_error(error, name, EEXIST);
    return PRINT_FAILED;
}
