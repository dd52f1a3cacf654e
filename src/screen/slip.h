// A line that is likely a slip is asked about once; the same line again is taken.
#pragma once
#include "desk.h"

typedef struct {
    char *line; // that was asked about; NULL for none
    char *said; // what was asked
} Slip;

// Whether the line is now asked about: likely a slip, and not the line that was asked about before.
gboolean slip_asks(Slip *slip, Desk *desk, const char *line);

// The same of what is asked about it (taken over; NULL: it is no slip).
gboolean slip_asks_this(Slip *slip, const char *line, char *said);

// What is asked of a lot that is none of these (const Entry *, of the part or consumable `of`): is
// it one whose label is nearly the same, or a new one? The caller frees with g_free.
char *slip_new_lot(const GPtrArray *lots, const char *typed,
                   const char *of) G_GNUC_WARN_UNUSED_RESULT;

// What was asked about the line; NULL if it was not. `line` may be NULL.
const char *slip_asked(const Slip *slip, const char *line);

void slip_forget(Slip *slip);
