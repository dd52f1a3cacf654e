// A moment as the workshop's wall clock shows it: a date and a time of day, without a zone. It is
// always handed in; nothing here asks what time it is. Moments are printed, and subtracted only
// for waits and windows.
#pragma once
#include <glib.h>

// Seconds since 1970-01-01 00:00 by the same wall clock.
typedef gint64 Moment;

// Reads `2025-03-13T11:36`, `2025-03-13 11:36` or either with seconds (ISO 8601-1:2019, 5.4.2.1,
// extended format; a space may stand for the T). Years 1900 to 9999. On failure returns FALSE,
// leaves *moment alone and sets STANDBOOK_ERROR_MISUSE.
gboolean moment_parse(const char *text, Moment *moment, GError **error);

// The beginning of a day written `2025-03-13`; 0 for NULL, or for what is no day.
Moment moment_of_day(const char *day);

// Returns `2025-03-13T11:36:05`. The caller frees with g_free.
char *moment_text(Moment moment) G_GNUC_WARN_UNUSED_RESULT;
