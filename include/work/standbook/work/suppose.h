// What a line would do, before it is entered.
#pragma once
#include <standbook/work/session.h>

// The build as it would stand if that line were entered now: a line as session_line takes it, of
// this build. Nothing is stored. NULL with an error (MISUSE) if the line cannot be taken; NULL
// without one if it enters nothing. The caller frees with assessment_free.
Assessment *session_suppose(Session *session, const char *line,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
