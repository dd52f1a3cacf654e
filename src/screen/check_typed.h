// A new check as it is named at the screen: `main 3 oil clearance`; `rod[1..4]` or `rod 1..4` with
// its places; and what is like it already. Pure.
#pragma once
#include <standbook/work/agenda.h>

typedef struct {
    char *name;
    char *at;                // as a plan has it behind `at:`; NULL: one place, without a label
    gboolean grows;          // more places of a check that this build added
    const Requirement *like; // of that check, else of the newest whose name has only other numbers;
                             // NULL for none
} CheckTyped;

// What was typed for a check of that step. Cleared with check_typed_clear.
CheckTyped check_typed(const Agenda *agenda, const char *step, const char *typed);
void check_typed_clear(CheckTyped *typed);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(CheckTyped, check_typed_clear)

// The limits that it takes over from what is like it, in words that can be typed; NULL for none.
// The caller frees with g_free.
char *check_typed_limits(const CheckTyped *typed) G_GNUC_WARN_UNUSED_RESULT;
