// One check over all engines of a family. Pure.
#pragma once
#include <standbook/judge/assess.h>

// One place of one engine at which it was read.
typedef struct {
    const char *number;      // of the build
    const Requirement *made; // with a value
} Over;

// What was judged there: of a finding what was found, though work has answered it since.
Verdict over_verdict(const Requirement *made);
Reason over_reason(const Requirement *made);

// The checks of an assessment that have a value and a limit somewhere, each once, in the order of
// the plan (const PlanCheck *). The caller frees with g_ptr_array_unref.
GPtrArray *over_checks(const Assessment *assessment) G_GNUC_WARN_UNUSED_RESULT;

// Adds the places of one build at which a check of that name was read, in turn.
void over_add(GArray *rows, const char *number, const Assessment *assessment, const char *check);

// The least and the greatest that a strip of all of them must show: values, limits, service limit,
// and 0 where it wears away from there (the only limit is an upper one). FALSE without any row.
// The caller frees both.
gboolean over_window(const GArray *rows, Number **least, Number **greatest);

// What they come to, in two sentences at most: which stand past the service limit and by how much,
// and how the others are judged. The caller frees with g_free.
char *over_words(const GArray *rows) G_GNUC_WARN_UNUSED_RESULT;
