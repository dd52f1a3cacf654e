// Who else works here.
#pragma once
#include "desk.h"

// `JT here too`: who picked up the same step of the build in hand and has it in hand, at a program
// that is still running; NULL if nobody else. The caller frees with g_free.
char *others_here(Desk *desk, const char *step) G_GNUC_WARN_UNUSED_RESULT;

// The initials of who made the entry of that seq, if that is not who works here; NULL otherwise.
// They belong to the session.
const char *others_initials(Desk *desk, gint64 seq);

// Whether who made that entry is another than works here, picked up the step and has it in hand,
// at a program that is still running.
gboolean others_are_at(Desk *desk, const char *step, const Entry *entry);
