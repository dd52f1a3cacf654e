// Inside the room: the kind of an advice, beside what the ledger asks.
#pragma once
#include <standbook/work/next_move.h>

// The kind of advice that serves, of the one that the adviser gives. The adviser does not know how
// the newest try was judged, nor what of it was left out (`wrong_gauge`: read with one that was
// found wrong), nor that by a gauge whose doubt is far below its `graduation` (base units) a
// reading again that falls on the next mark, as it may, would put both in doubt.
SettingKind next_move_kind(const Trials *trials, SettingKind kind, gboolean wrong_gauge,
                           const Number *graduation);
