// Text from outside: made safe to show, and compared with what it may have meant.
#pragma once
#include <glib.h>

// Returns the text as valid UTF-8 without control characters: a byte that is not UTF-8, a control
// character (C0, DEL, C1) and a character that turns or hides text (bidirectional marks, zero
// width) is shown as \xHH per byte, so nothing disappears. `length` is in bytes, -1 up to the NUL. The caller
// frees with g_free.
char *text_clean(const char *bytes, gssize length) G_GNUC_WARN_UNUSED_RESULT;

// `1 step`, `6 steps`, `2 entries`: so many of what the noun says in the singular. The caller frees
// with g_free.
char *text_counted(guint64 count, const char *noun) G_GNUC_WARN_UNUSED_RESULT;

// Returns a path as it can be pasted into a shell: as it is where nothing in it means anything to
// one, else in quotes; what text_clean would not show as it is stands as \xHH in $'…'. The caller
// frees with g_free.
char *text_path(const char *path) G_GNUC_WARN_UNUSED_RESULT;

// The number of slips between two words: letters left out, added, changed, or two neighbours
// swapped, each one slip. Counted in characters; upper and lower case are alike.
// (Optimal string alignment distance: Damerau 1964, Comm. ACM 7(3), 171; each pair swapped once.)
guint text_slips(const char *one, const char *other);

// Returns the candidate nearest to the word, or NULL if none is within one slip per four letters
// begun. Of equals the first. The result belongs to `candidates` (`count` strings).
const char *text_nearest(const char *word, const char *const *candidates, gsize count);

// Adds a text to others (const char *) unless it is there already, or NULL. It is not copied.
void text_add_once(GPtrArray *texts, const char *text);
