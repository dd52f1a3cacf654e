// Parts that more than one document has.
#pragma once
#include <standbook/sheet/figures.h>

// The engine and its owner as they were at the first seal of the gate sealed last, with a line if
// the owner has changed since; the plan; when it came in, was sealed, and had its newest supplement.
void section_head(Document *document, const SheetSource *source);
// `H23-4, no. H23-4/01187`: that engine. The caller frees with g_free.
char *engine_words(const SheetSource *source) G_GNUC_WARN_UNUSED_RESULT;
// Its serial number, NULL if it is not known; belongs to the entries.
const char *engine_serial(const SheetSource *source);
// `13 January 2025`: when an entry was done. The caller frees with g_free.
char *date_words(const Entry *entry) G_GNUC_WARN_UNUSED_RESULT;
// Every seal, the entries looked at, and the digest that only a printed sheet can hold against a
// ledger that was cut or rewritten.
void section_digest(Document *document, const SheetSource *source);
// The line that stands on every sheet.
void section_precedence(Document *document);
// Its words. Static.
const char *precedence_words(void);

// Whether the requirement at that index has a figure of the engine as it was left: not as found,
// not of a mock-up taken down again, and not read again later.
gboolean is_as_left(const SheetSource *source, guint index);
// Every figure as left: with its strip where it has limits, then without; apart from them those of
// the plan alone. All other readings are counted.
void section_measured(Document *document, const SheetSource *source);

// Every tightening as left: its stages, how many of its bolts are tight, when; bolts that were done
// again because their wrench was found wrong have a footnote.
void section_tightened(Document *document, const SheetSource *source);

// What is fitted, and from which lot or why it is used again; nothing where nothing is.
void section_parts(Document *document, const SheetSource *source);
// `serial` or `lot`: what the plan asks for and nobody has said of what was fitted there; NULL if
// nothing lacks.
const char *fit_lacks(const SheetSource *source, const Requirement *made);

// What was laid as sealant, locker or paste: on what, its lot, when, and where the plan gives a
// time whether it was closed in it; nothing where nothing was laid.
void section_laid(Document *document, const SheetSource *source);
// What was found outside its limits and decided about, unless a later check tells what came of it:
// what was found, what was decided, why, by whom, and the customer's consent.
void section_decided(Document *document, const SheetSource *source);

// Every setting with its tries and strips, of one that is worked out also what was read for it;
// nothing where nothing was set.
void section_settings(Document *document, const SheetSource *source);
// `Set in 3 tries.`, `2 of 6 places set, in one try.`: how often a setting was tightened and read
// until it stood, of those places that stand, and what stands in of a stock; NULL if it is none, or
// none stands. The caller frees with g_free.
char *tries_words(const SheetSource *source, const PlanCheck *check);
// Adds a footnote to the numbers of a cell, once, and frees its text.
void note_add(GString *numbers, Document *document, char *text);
// `Oil in was signed 2026-03-02 13:49; sump: no fluid before 14:45.`: what was too soon, and for
// which time; NULL where that is not why it is in doubt. The caller frees with g_free.
char *signed_too_soon(const SheetSource *source, const Requirement *made,
                      Reason doubt) G_GNUC_WARN_UNUSED_RESULT;
// The footnote of a requirement to what that entry upholds there, or of what it rests on: why it
// was in doubt, where a tool found wrong is the cause which and when; and who upheld it with what
// reason. The caller frees with g_free.
char *upheld_words(const SheetSource *source, const Requirement *made,
                   const Entry *uphold) G_GNUC_WARN_UNUSED_RESULT;

// Whether work broke off at that entry (its index; `live` is of all entries): it was put down, with
// the reason in a note behind; or picked up while somebody had it in hand who did not go on.
gboolean is_interruption(const SheetSource *source, const gboolean *live, gsize i);
// `taken up again 2025-03-13 15:31, MO`, `broken off without a word: JT had it in hand, up to …`;
// NULL of the reason. The caller frees with g_free.
char *interruption_words(const SheetSource *source, const gboolean *live,
                         gsize i) G_GNUC_WARN_UNUSED_RESULT;

// What certificates claim beside the own readings; nothing where there is no claim.
void section_claims(Document *document, const SheetSource *source);

// Counts in words, those of nought left out: `3 open (1 optional), 143 pass`. `optional` is how
// many of the open may stay so. The caller frees with g_free.
char *counts_words(const guint counts[VERDICTS], guint optional) G_GNUC_WARN_UNUSED_RESULT;

// The newest seal that is live; NULL if there is none.
const Entry *newest_seal(const SheetSource *source);
// The first live seal of the gate that was sealed last: a supplement does not move the day of it.
const Entry *first_seal(const SheetSource *source);
