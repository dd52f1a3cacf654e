// A text written as a file where the program was started.
#pragma once
#include <glib.h>

typedef enum {
    PRINT_FAILED,  // with an error
    PRINT_WRITTEN, // under the name asked for
    PRINT_BESIDE,  // beside another text of that name: a number was put behind it
    PRINT_THERE,   // these very bytes lie there already: nothing was written
} PrintDone;

// Writes `NAME.txt`, never over what lies there: where that is another text, `NAME-2.txt`, then
// `NAME-3.txt` and on. `file` becomes the name it lies under, which the caller frees with g_free;
// NULL where it failed.
PrintDone print_file(const char *name, const char *text, char **file, GError **error);
