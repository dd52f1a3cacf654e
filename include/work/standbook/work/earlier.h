// What earlier builds of the family have shown of a setting.
#pragma once
#include <standbook/work/next_move.h>
#include <standbook/work/opened.h>

enum { EARLIER_MOST = 6 }; // earlier settings that one begins with

// A build of that plan and these entries.
typedef struct {
    const Plan *plan;
    const Assessment *assessment;
    const Entry *const *entries;
    gsize count;
} EarlierBuild;

// Adds to `all` (SettingLearned) what a build shows of the setting `here`, until there are
// EARLIER_MOST: nothing if it is of another family, or the setting was not moved, tightened and
// read there; where each place is set by itself, of every place that was.
void earlier_learn(const Trials *here, const EarlierBuild *build, GArray *all);

// The same of the other places of the build itself, where each is set by itself; else nothing.
void earlier_here(const Trials *here, GArray *all);

// SettingLearned of the other places of the build, then of the same setting in the other builds of
// the store than `number`, the newest first, at most EARLIER_MOST; builds that cannot be read are
// left out. The caller frees with g_array_unref.
GArray *earlier_settings(Book *book, const char *number,
                         const Trials *here) G_GNUC_WARN_UNUSED_RESULT;
