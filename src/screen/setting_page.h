// How a setting looks from far away, and what stands beside it on a wide screen.
#pragma once
#include "desk.h"
#include "page.h"

#include <standbook/work/advice.h>

// The tries and below them the advice: where not all fits, the newest rows of tries are shown, and
// how many are not; of the advice its first sentences, each whole, and that `w` says the rest.
void setting_body(const Trials *trials, const TrialNext *next, const NextMove *advised,
                  const char *typed, Page *page);
// Whether all of the advice fits there.
gboolean setting_says_all(const Trials *trials, const TrialNext *next, const NextMove *advised,
                          const Page *page);
// What is in hand over the whole body: `digits` are typed, and `typed` is how its place stands with
// them (setting_typed); NULL for the last try.
void setting_far(const Trials *trials, const TrialNext *next, const NextMove *advised,
                 const char *digits, const Requirement *typed, Page *page);
// At the right of a wide screen: the place asked for, the tries entry by entry, the newest entries.
void setting_detail(Desk *desk, const Trials *trials, const TrialNext *next, Page *page);
