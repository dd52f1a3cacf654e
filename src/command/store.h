// The store as subcommands open it.
#pragma once
#include "command.h"
#include <standbook/book/book.h>

// --store, else STANDBOOK_STORE, else standbook/standbook.db among the user's data (XDG base
// directories). The caller frees with g_free.
char *store_path(const Common *common) G_GNUC_WARN_UNUSED_RESULT;

// Opens that store. NULL with an error.
Book *store_open(const Common *common, BookUse use, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The clock and the ids of sessions and of the front end.
Moment wall_clock(gpointer user);
char *random_id(gpointer user) G_GNUC_WARN_UNUSED_RESULT;
