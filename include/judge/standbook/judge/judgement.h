// A build judged entry after entry, at the bench: what `assess` would say of all entries so far,
// but a new entry costs only what rests on it. What cannot be judged by itself (an entry placed
// behind an earlier one, a strike, a decision about requirements, news of a tool in use) is judged
// whole.
#pragma once
#include <standbook/judge/assess.h>

typedef struct Judgement Judgement;

// A requirement that was judged anew; whether it came out otherwise is the caller's to see.
typedef struct {
    guint index; // in Assessment.requirements
    const Requirement *before;
} JudgementChange;

// A build without entries. The plan is the one in force, with what the build added; it outlives the
// judgement. The caller frees with judgement_free.
Judgement *judgement_new(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;
void judgement_free(Judgement *judgement); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Judgement, judgement_free)

// The next entry of the ledger, which outlives the judgement. Nothing is judged yet.
void judgement_add(Judgement *judgement, const Entry *entry);
// How many entries were added.
gsize judgement_entries(const Judgement *judgement);

// Equal in everything to the `assess` of all entries added. Belongs to the judgement and holds
// until it is asked for again with more entries.
const Assessment *judgement_now(Judgement *judgement);

// What was judged anew the last time that there were more entries, against the time before:
// JudgementChange, by index; all requirements where all was judged, none the first time. Holds as
// long as that assessment.
const GArray *judgement_changed(const Judgement *judgement);

// The assessment if these `count` entries came next; nothing is kept of them, and they need not
// live longer than this call. What is read or looked at costs what rests on it; where any other
// kind is among them all is judged. The caller frees it with assessment_free.
Assessment *judgement_suppose(Judgement *judgement, const Entry *const *entries,
                              gsize count) G_GNUC_WARN_UNUSED_RESULT;
