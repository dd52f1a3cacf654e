#pragma once
#include "store.h"
#include <standbook/book/care.h>

typedef void (*ProjectionDiffers)(gpointer data, const char *projection, const char *ledger,
                                  gint64 seq);

// Calls `differs` for each entry whose rows in a projection are not what its line makes them.
gboolean projections_compare(Book *book, ProjectionDiffers differs, gpointer data, GError **error);

// Makes the projections anew in a store just being opened, which has no statements yet.
gboolean projections_repair(Book *book);
