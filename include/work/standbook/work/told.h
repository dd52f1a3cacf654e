// What is told of one place when somebody asks for it, beside its figures. Pure.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/entry_words.h>

// In turn, each as a line: what it was worked out from and with which gauges, by whom; the parts
// fitted there that it has to do with (parts_at.h); what certificates claim; what of it
// was upheld, conceded or decided, when and by whom, and why; then its footnotes (char *). A day of
// the year of `now` is said without it; with `now` 0 every year is said. The caller frees with
// g_ptr_array_unref.
GPtrArray *told_lines(const Agenda *agenda, const Taken *taken, const Requirement *made,
                      Moment now) G_GNUC_WARN_UNUSED_RESULT;

// The upholds that stand about a place, or about a reading that it is worked out from, whether or
// not the doubt came back another way; the one that counts first (const Entry *). The caller frees
// with g_ptr_array_unref.
GPtrArray *upholds_about(const Plan *plan, const Entry *const *entries, gsize count,
                         const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
