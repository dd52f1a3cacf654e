// Points in time as entries hold them: text of RFC 3339, to the second, with its offset from UTC
// ("2025-03-13T11:36:00+01:00", or Z). Times are printed, and subtracted only for waits and
// windows.
#pragma once
#include <glib.h>

// Whether the text is such a time; if so and `seconds` is not NULL, the seconds since
// 1970-01-01T00:00:00Z (no leap seconds, years 1970 to 9999).
gboolean moment_read(const char *text, gint64 *seconds);

// Whether the text is a date of the calendar, "2025-03-13".
gboolean date_is_valid(const char *text);
