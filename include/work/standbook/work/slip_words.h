// Whether a reading is likely a slip of the fingers (rules/slip.h), in one sentence. Nothing is
// ever corrected: what was typed is what is kept.
#pragma once
#include <standbook/work/session.h>

// The slip in a line that enters one reading, asked before it is entered:
// `10 times the other 3? Enter again keeps 900.260 mm, not 90.026 mm`. NULL if there is none, or if
// the line enters anything else or cannot be taken. Nothing is stored. The caller frees with
// g_free.
char *session_slip(Session *session, const char *line) G_GNUC_WARN_UNUSED_RESULT;

// The same of an entry just taken, against the build as it stood before it, as the answer to a log
// line says it: `10 times the other 3? 900.260 mm is kept, not 90.026 mm`. The caller frees.
char *slip_answer(const Assessment *before, const Entry *entry) G_GNUC_WARN_UNUSED_RESULT;
