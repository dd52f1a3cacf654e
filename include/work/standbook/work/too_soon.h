// What is filled or run while a clock says not before, in one sentence: its signature is in doubt
// then, and is better given later.
#pragma once
#include <standbook/work/agenda_item.h>

// What is asked about an entry before it is made, or (`ask` FALSE) said behind it: about the first
// that is read, looked at or fitted in a step that fills a fluid or runs the engine, and about its
// first signature. `case screws: no fluid before 14:45; Enter again takes it all the same`. NULL if
// nothing is. `agenda` is of the build as it stands before it. The caller frees with g_free.
char *too_soon(const Agenda *agenda, const Entry *entry, gboolean ask) G_GNUC_WARN_UNUSED_RESULT;

// `case screws: no fluid before 14:45`, of the step at `now`; NULL if it may begin. The caller
// frees with g_free.
char *too_soon_words(const Agenda *agenda, const PlanStep *step,
                     Moment now) G_GNUC_WARN_UNUSED_RESULT;
