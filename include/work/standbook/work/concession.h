// A concession in lines as a builder writes them, and its reason as the entry keeps it. Pure.
#pragma once
#include <standbook/work/agenda.h>

enum { CONCESSION_LINES = 6 }; // why, instead, effect, watch, told, answer

// `why`, `instead`, …; static.
const char *concession_word(guint line);

// The reason of the entry: `Honed oversize outside. Instead: a sleeve. Told: by letter.` Of the
// lines only the first must be there; others may be NULL or empty. The caller frees with g_free.
char *concession_reason(const char *const lines[CONCESSION_LINES]) G_GNUC_WARN_UNUSED_RESULT;

// What such a reason says on one line, NULL if nothing. The caller frees with g_free.
char *concession_said(const char *reason, guint line) G_GNUC_WARN_UNUSED_RESULT;

// The whole reason with each of its lines as a sentence, without the last stop: `Machined before.
// Instead: a thicker gasket. Effect: none`. The caller frees with g_free.
char *concession_sentences(const char *reason) G_GNUC_WARN_UNUSED_RESULT;

// What the concession that counts at a place says on one line; NULL also where none does. The
// caller frees.
char *conceded_line(const Agenda *agenda, const Requirement *made,
                    guint line) G_GNUC_WARN_UNUSED_RESULT;

// What the live concessions among the entries say on that line: each sentence once, the newest
// first, at most nine (char *). The caller frees with g_ptr_array_unref.
GPtrArray *concession_before(const Entry *const *entries, gsize count,
                             guint line) G_GNUC_WARN_UNUSED_RESULT;
