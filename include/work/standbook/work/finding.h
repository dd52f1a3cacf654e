// A finding outside its limits stays open until later work or a decision answers it. Pure.
#pragma once
#include <standbook/judge/assess.h>

// Whether it was judged and is open all the same, until it is answered.
gboolean finding_waits(const Requirement *made);
// What answers it: `evenness warm`, `bore, taper`, `a decision`; NULL if it does not wait. The
// caller frees with g_free.
char *finding_waits_for(const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
