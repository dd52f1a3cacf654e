// One check over all engines of a family. Pure.
#pragma once
#include <standbook/judge/assess.h>

// One place of one engine at which it was read.
typedef struct {
    const char *number;      // of the build
    const Requirement *made; // with a value
} Over;

// What was judged there: of a finding what was found, though work has answered it since. Beyond the
// wear limit is low or high.
Verdict over_verdict(const Requirement *made);
Reason over_reason(const Requirement *made);

// The checks of an assessment that have a value and a limit somewhere, each once, in the order of
// the plan (const PlanCheck *). The caller frees with g_ptr_array_unref.
GPtrArray *over_checks(const Assessment *assessment) G_GNUC_WARN_UNUSED_RESULT;

// The check to show for one in hand: itself if it has a value and a limit somewhere, else the first
// such that is worked out from it; NULL if there is none. It belongs to the assessment.
const char *over_about(const Assessment *assessment, const char *check);

// Whether a check of that name was read there, with limits or without.
gboolean over_was_read(const Assessment *assessment, const char *check);

// Adds the places of one build at which a check of that name was read, in turn.
void over_add(GArray *rows, const char *number, const Assessment *assessment, const char *check);

// Whether it wears away from 0, new: its only limit is an upper one, and it has a wear limit.
gboolean over_wears_away(const Requirement *made);

// The least and the greatest that a strip of all of them must show: values, limits, wear limit,
// and 0 where it wears away from there (the only limit is an upper one). FALSE without any row.
// The caller frees both.
gboolean over_window(const GArray *rows, Number **least, Number **greatest);

// The place of one build that needs a person most: the first past its wear limit, else that fails,
// else that is in doubt, else the first. NULL if the build has none.
const Over *over_worst(const GArray *rows, const char *number);

// What they come to, in three sentences at most: which of each build are past the wear limit, by how
// much, and then on it, four by name; how the others are judged, on a line of its own; and how many
// findings among them count otherwise in their step, because they wait for an answer or have it. The
// caller frees with g_free.
char *over_words(const GArray *rows) G_GNUC_WARN_UNUSED_RESULT;
