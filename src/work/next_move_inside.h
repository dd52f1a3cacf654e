// Inside the room: the kind of an advice, beside what the ledger asks.
#pragma once
#include <standbook/work/next_move.h>

// The kind of advice that serves, of the one that the adviser gives, which does not know how the
// newest try was judged, nor what of it was left out. `wrong_gauge`: it was read with one that was
// found wrong.
SettingKind next_move_kind(const Trials *trials, SettingKind kind, gboolean wrong_gauge);

// What it found odd, as a sentence put behind those there are.
void next_move_say_finding(const Trials *trials, const NextMove *next,
                           const SettingFinding *finding, GPtrArray *sentences);

// What is not counted in steps, to as many places as anybody could set. The caller frees.
Number *next_move_number(double value) G_GNUC_WARN_UNUSED_RESULT;
