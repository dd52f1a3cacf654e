// What a person takes back with a key: entries of who works here, and strikes of them.
#pragma once
#include "desk.h"

// Whether a key takes such an entry back: not that work was picked up or put down, nor a `take`.
gboolean struck_can_be(const Entry *entry);

// The newest live entry of who works here in the build in hand that can be struck and is no strike
// itself, as row 23 has it: not what was entered at another terminal since the build was taken up
// here. 0 if there is none.
gint64 struck_next(Desk *desk);
// The newest live strike of who works here, likewise; 0 if there is none.
gint64 struck_last(Desk *desk);

// Whether the entry is of who works here.
gboolean struck_is_own(Desk *desk, gint64 seq);

// What an entry says: as it was put when it was entered here, else as any page tells it. The caller
// frees with g_free.
char *struck_words(Desk *desk, gint64 seq) G_GNUC_WARN_UNUSED_RESULT;

// Whether the newest entry of the build in hand came behind the first `opened` and strikes what is
// of no bolt of that set: then what was done in front of the bolts is asked again first.
gboolean struck_behind(Desk *desk, guint opened, const char *set);
