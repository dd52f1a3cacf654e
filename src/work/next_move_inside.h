// Inside the room: the kind of an advice, beside what the ledger asks.
#pragma once
#include <standbook/work/next_move.h>

// The kind of advice that serves, of the one that the adviser gives, which does not know how the
// newest try was judged, nor what of it was left out. `wrong_gauge`: it was read with one that was
// found wrong.
SettingKind next_move_kind(const Trials *trials, SettingKind kind, gboolean wrong_gauge);
