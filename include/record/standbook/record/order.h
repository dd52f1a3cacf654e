// The order in which a ledger is judged. `seq` is the order of commit; `after` places an entry
// behind an earlier one: a correction stands where the struck entry stood. The rank of an entry is
// the rank of its `after`, then its own seq: it stands behind that one and all that was placed
// there before it, and in front of whatever followed. A chain of `after` may have any length.
#pragma once
#include <standbook/record/entry.h>

// Whether the entries are a ledger from its start: seq 1, 2, 3, … and every `after` an earlier one.
// If not, FALSE with an error (NO) naming the first that is out of turn.
gboolean ledger_in_turn(const Entry *const *entries, gsize count, GError **error);

// Fills `ranked` (room for `count`) with the seq of the entries in order of rank. The entries must
// be in turn (ledger_in_turn); the first n of a ledger rank among themselves as they did when the
// n-th was the last, so that any earlier day can be judged. Linear in count.
void rank_order(const Entry *const *entries, gsize count, gint64 *ranked);
