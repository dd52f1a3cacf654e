// The many ways to type one number, turned into the plain one that a number is scanned in.
#pragma once
#include <glib.h>

// `2⅝″` becomes `2 5/8"`, `63,51` becomes `63.51`; columns still count from what was typed.
typedef struct {
    char *plain;
    GArray *columns; // of gsize: for every byte of `plain` and its end, the character typed
} Spelling;

// FALSE with STANDBOOK_ERROR_MISUSE and the column in *offset (NULL allowed) if two people could
// read a comma in it differently. `text` is UTF-8. On TRUE clear with spelling_clear.
gboolean spelling_read(const char *text, Spelling *spelling, gsize *offset, GError **error);
void spelling_clear(Spelling *spelling);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Spelling, spelling_clear)
// The column of a place in `plain`.
gsize spelling_column(const Spelling *spelling, const char *at);
