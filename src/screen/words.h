// Short words that several views print.
#pragma once
#include <standbook/base/moment.h>
#include <standbook/judge/assess.h>

// The caller frees all texts with g_free, apart from those that are const.

// `S13  Check returned work`
char *step_words(const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;
// `297 pass  34 noted  1 conc.  154 open (1 optional)`; what is nought is left out. `optional` is
// how many of the open may stay so.
char *tally_words(const guint counts[VERDICTS], guint optional) G_GNUC_WARN_UNUSED_RESULT;
// The same of all that a build asks for.
char *build_tally_words(const Assessment *assessment) G_GNUC_WARN_UNUSED_RESULT;
// The front of a text that is too long for so many columns.
char *front_words(const char *text, glong room) G_GNUC_WARN_UNUSED_RESULT;
// The same, ending with a whole word.
char *whole_words(const char *text, glong room) G_GNUC_WARN_UNUSED_RESULT;
// Initials as they are kept, in front of whatever follows them: `MO` for `mo`, `TB Tess Bell` for
// `tb Tess Bell`; anything else as typed.
char *initials_typed(const char *typed) G_GNUC_WARN_UNUSED_RESULT;
// `Thursday 13 March 2025`
char *day_words(Moment moment) G_GNUC_WARN_UNUSED_RESULT;
// `√ pass `, `▲ FAIL `: seven columns, which way and which verdict. `check` tells on which side of
// its limits wear lies; NULL where that is not asked.
const char *verdict_mark(Verdict verdict, Reason reason,
                         const PlanCheck *check) G_GNUC_WARN_UNUSED_RESULT;
// What was found there: of a finding its own verdict, whatever answers it later.
Verdict verdict_found(const Requirement *made);
// `▲`, `×`, `?`, `◆`: the sign alone of what was found, for a value among others; empty for a
// verdict that needs nobody and needed nobody.
char *fault_mark(const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
// ` · ▲ FAIL, 0.006 over`, ` · ? DOUBT, tool`; empty for a verdict that needs nobody.
char *fault_words(const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
