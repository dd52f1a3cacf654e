// Whether a reading, or what a wrench showed, is likely a slip of the fingers (rules/slip.h), in
// one sentence. Nothing is ever corrected: what was typed is what is kept.
//
// A reading is compared with the other places of its check, then with those of the same line, and
// where there are none with other engines of the family, then with the plan's aim; what is set,
// loose or tightened, with its limits as well (a move of it: move_slip.h). What a wrench showed is
// compared with what the stage asks. A bolt that stands turned and is pulled once more is asked
// about (stages_turn_past), and what is filled or run too soon (too_soon.h).
#pragma once
#include <standbook/work/session.h>

// The first slip in a line, asked before it is entered:
// `10 times the other 3? Enter again keeps 900.260 mm, not 90.026 mm`. NULL if there is none, or if
// the line cannot be taken. Nothing is stored. The caller frees with g_free.
char *session_slip(Session *session, const char *line) G_GNUC_WARN_UNUSED_RESULT;

// All slips (char *) of a line just taken and not yet part of the build, as its answer says them:
// `10 times the other 3? 900.260 mm is kept, not 90.026 mm`. The caller frees with
// g_ptr_array_unref.
GPtrArray *session_slips(Session *session, const LineTaken *taken) G_GNUC_WARN_UNUSED_RESULT;
