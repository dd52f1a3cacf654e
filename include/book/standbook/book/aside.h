// What was typed at a terminal and stands in no ledger, kept beside the store as long as it waits
// there: what a program leaves, however it ends, the next one finds. Each program that keeps
// something has a file of its own, `STORE-typed-` and six letters, locked while it runs. Where no
// file can be made nothing is kept, and no word is said of it.
#pragma once
#include <glib.h>

typedef struct Aside Aside;

// `store` is the store's path; there need be none yet, nor its folder, which is made for the first
// text that is kept. What programs left that have ended is put in *left (char *, freed with
// g_ptr_array_unref); it stays where it is until aside_keep was called. The caller frees with
// aside_close.
Aside *aside_open(const char *store, GPtrArray **left) G_GNUC_WARN_UNUSED_RESULT;

// Keeps this text, without NUL, in place of the one before; "" for nothing.
void aside_keep(Aside *aside, const char *text);

// What was kept last is left for the next program. NULL is allowed.
void aside_close(Aside *aside);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Aside, aside_close)
