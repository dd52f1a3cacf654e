// One requirement's figures in text, the same on all sheets. Every char * is freed with g_free; an
// empty text where there is nothing to say.
#pragma once
#include <standbook/sheet/sheet.h>

// `0.086`, `<0.03`, `yes`: without its unit.
char *figure_value(const Requirement *requirement);
// `±.005`: U, k = 2.
char *figure_doubt(const Requirement *requirement);
// `0.050 to 0.080`, `at least 7.0`, `at most 0.010`; for a look the answer wanted.
char *figure_limits(const Requirement *requirement);
// Of a value, and of a bolt the unit of what its stage asks where that does not say it. Static.
const char *figure_unit(const Requirement *requirement);
// `0.050 to 0.080 mm`: the limits with the unit of the value behind them; of a value without limits
// its unit alone.
char *figure_asked(const Requirement *requirement);
// A unit behind the word `in`: `mm`, but `inches`.
const char *unit_said(const char *unit);
// `pass`, `fail, 0.006 over`, `in doubt: gauge`, `in doubt: tool, order`.
char *figure_verdict(const Requirement *requirement);
// `0.006 over`, in the unit that stands beside it; empty inside the limits.
char *figure_outside(const Requirement *requirement);
// `0.006 mm over`, for a sentence; of a bolt that failed what was shown, `44.1 of 40 N·m shown`.
char *figure_far(const Requirement *requirement);
// A number of that check's kind (base units) as its figures are shown.
char *figure_number(const Requirement *requirement, const Number *number);

// Why a reason leaves it undecided or outside, in a sentence a customer understands.
const char *reason_sentence(Reason reason);
// The same of a requirement, a sentence for each doubt that stands: of a doubt for a tool which and
// how, of a bolt pulled out of turn in which way. The caller frees with g_free.
char *figure_reason(const Requirement *requirement, const Taken *taken,
                    const Entry *const *entries) G_GNUC_WARN_UNUSED_RESULT;
// The same of a doubt that was upheld, or of another reason that the requirement had.
char *figure_doubted(const Requirement *requirement, Reason doubt, const Taken *taken,
                     const Entry *const *entries) G_GNUC_WARN_UNUSED_RESULT;

// The entry of that seq, NULL for 0.
const Entry *source_entry(const SheetSource *source, gint64 seq);

// Footnotes to a requirement: conceded, upheld, amended, undecided, failed or open, in plain words.
// Returns their numbers, `1 2`; the caller frees with g_free.
char *footnotes_of(Document *document, const SheetSource *source,
                   const Requirement *requirement) G_GNUC_WARN_UNUSED_RESULT;
// The same, put behind the numbers that a cell has already, each once.
void footnotes_add(GString *numbers, Document *document, const SheetSource *source,
                   const Requirement *requirement);
