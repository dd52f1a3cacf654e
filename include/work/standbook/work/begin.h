// Beginning: a plan kept in a store, and the demo.
#pragma once
#include <standbook/plan/plan.h>
#include <standbook/work/session.h>

// Whether the very same file is the newest plan of its name already. `bytes` are those that `plan`
// was read from.
gboolean plan_is_kept(const Shop *shop, const Plan *plan, GBytes *bytes);

// Keeps a plan's file and enters it in the shop's ledger, which is begun if there is none. A file
// that is there already, byte for byte, as the newest of its name changes nothing: then `*kept`
// (may be NULL) is FALSE. `bytes` are those that `plan` was read from. Of `options` the clock and
// the ids are used.
gboolean plan_keep(Book *book, GBytes *bytes, const Plan *plan, const SessionOptions *options,
                   gboolean *kept, GError **error);

// Makes a store at `path` of what a folder's file `order` names, a line each: `plan FILE`, `shop
// FILE` (a log of the shop), `BUILD FILE` (a log of that build), dates and all. Nothing is left at
// `path` if that fails.
gboolean demo_make(const char *folder, const char *path, const SessionOptions *options,
                   GError **error);
