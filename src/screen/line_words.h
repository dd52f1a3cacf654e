// Log lines put together (standbook-log(5)).
#pragma once
#include <standbook/judge/assess.h>

// All are freed by the caller with g_free.

// Words in double quotes, those within doubled.
char *line_quoted(const char *words) G_GNUC_WARN_UNUSED_RESULT;

// What a requirement is about: `bore[4, T, mid] in Check returned work`. A label that two axes
// share has its axis in front; of a signature `sign Sump, 1`.
char *line_target(const Plan *plan, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// The axes along which a requirement has places; NULL where it has none.
const GPtrArray *requirement_axes(const Plan *plan, const Requirement *made);
