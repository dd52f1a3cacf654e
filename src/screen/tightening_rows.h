// The rows NEXT and then of a tightening, and the log line that its Enter enters.
#pragma once
#include "bolt_tool.h"
#include "page.h"

// `bolt 4`; the caller frees with g_free.
char *bolt_words(const Turn *turn) G_GNUC_WARN_UNUSED_RESULT;

// How many turns one Enter takes from that one on, at least 1: of a set logged as a group all that
// are open behind it at this stage, as far as they are pulled with the same adapter; never by angle
// or stretch.
guint tightening_round(Desk *desk, const Tightening *tightening, guint here);

// `all 4`, `bolts 1, 3, 2`, `bolt 4`: that many turns. The caller frees with g_free.
char *tightening_round_words(const Tightening *tightening, guint here,
                             guint count) G_GNUC_WARN_UNUSED_RESULT;

// What is to be done at a turn, and behind it; `typed` is what the wrench shows.
void tightening_rows(Desk *desk, const Tightening *tightening, guint here, const char *typed,
                     Page *page);

// Where it is typed what ends a stage `until CHECK` at the bolt of a turn: `bolt length 1, a,
// tight`, of several the first that is open. NULL at other stages. The caller frees with g_free.
char *tightening_until(Desk *desk, const Tightening *tightening,
                       const Turn *turn) G_GNUC_WARN_UNUSED_RESULT;

// What is said of a bare number typed at such a stage, which is no torque; NULL where it may be
// entered. The caller frees with g_free.
char *tightening_no_torque(Desk *desk, const Tightening *tightening, const Turn *turn,
                           const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// What the wrench shows, a bare figure in the unit of the one in hand, else in that of the stage,
// and an angle in degrees. The caller frees with g_free.
char *tightening_shown(Desk *desk, const Tightening *tightening, const Turn *turn,
                       const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// The line that enters the round (standbook-log(5)). The caller frees with g_free.
char *tightening_line(Desk *desk, const Tightening *tightening, guint here,
                      const char *typed) G_GNUC_WARN_UNUSED_RESULT;
