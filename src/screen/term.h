// The terminal: the only place that sees curses. One at a time.
#pragma once
#include "cells.h"
#include "typing.h"

typedef struct Term Term;

// Takes the terminal of standard input and output. `colours` may set roles to colours, as in
// `heed=1 unsure=11` (0 to 15; `none`); NULL for the usual ones. Without colour if NO_COLOR is set.
// NULL with an error (MISUSE): no terminal, or one of an unknown kind. The caller gives it back
// with term_close.
Term *term_open(const char *colours, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void term_close(Term *term); // NULL is allowed; leaves the terminal as it was
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Term, term_close)

// Whether signs beyond ASCII can be shown.
gboolean term_is_ascii(const Term *term);
void term_size(const Term *term, guint *width, guint *height);

// Shows a canvas of the terminal's size, sending only what differs from what is there, and puts the
// cursor. A canvas of another size is shown as far as it goes.
void term_show(Term *term, const Canvas *canvas, guint row, guint column);
// Forgets what is there: the next term_show paints everything.
void term_forget(Term *term);

// Waits up to so many milliseconds for a key; PRESSED_NONE if none came, PRESSED_HANGUP when the
// terminal is gone or somebody wants the program to end, PRESSED_RESIZE when all must be painted
// anew. A byte that belongs to no character comes as U+FFFD.
Key term_key(Term *term, guint milliseconds);
// Keys that have come and were not asked for, up to so many, whatever became of the terminal: Key,
// freed by the caller with g_array_unref.
GArray *term_rest(Term *term, guint most) G_GNUC_WARN_UNUSED_RESULT;
// Gives the terminal back and stops, until somebody lets the program go on.
void term_stop(Term *term);
void term_bell(Term *term);
