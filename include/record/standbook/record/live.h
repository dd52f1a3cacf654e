// Which entries count. A strike takes back one earlier entry; a strike can itself be struck, and
// then what it took back counts again. An entry is live unless a live strike names it, and a strike
// is always newer than what it takes back, so one pass from the newest to the oldest settles all.
#pragma once
#include <standbook/record/entry.h>

// Fills `live` (room for `count`): whether entry i (seq i + 1) is live. The entries must be in turn
// (ledger_in_turn in order.h).
void live_entries(const Entry *const *entries, gsize count, gboolean *live);

// The seq of the newest live strike that takes back entry `seq`, 0 if it is live: for the sheet
// that prints struck entries with their cause. `live` is what live_entries filled in.
gint64 live_strike_of(const Entry *const *entries, gsize count, const gboolean *live, gint64 seq);

// Fills `causes` (room for `count`): why entry i (seq i + 1) was struck, by the newest live strike;
// NULL if it is live. They belong to the entries.
void live_causes(const Entry *const *entries, gsize count, const char **causes);
