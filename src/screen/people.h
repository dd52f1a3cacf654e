// The people of the shop, and the digits that stand for them.
#pragma once
#include "desk.h"

enum { PEOPLE_DIGITS = 9 };

// The initials of the shop's people (const char *), by first entry, but with who was called among
// the first PEOPLE_DIGITS. The caller frees.
GPtrArray *people_listed(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// What 0 offers beside their digits: `0 new`, `0 another`.
const char *people_others(const GPtrArray *people);
// Gives a person one of their digits; FALSE if the shop has nobody of these initials.
gboolean people_call(Desk *desk, const char *initials);
