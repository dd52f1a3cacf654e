// What earlier builds of the family have shown of a setting.
#pragma once
#include <standbook/work/next_move.h>
#include <standbook/work/opened.h>

enum { EARLIER_MOST = 6 }; // builds that one setting begins with

// What another build, of that plan and these entries, shows of the setting `here`; FALSE if it is
// of another family, or the setting was not tightened and read there.
gboolean earlier_learned(const Trials *here, const Plan *plan, const Assessment *assessment,
                         const Entry *const *entries, gsize count, SettingLearned *learned);

// SettingLearned of the same setting in the other builds of the store than `number`, the newest
// first, at most EARLIER_MOST; builds that cannot be read are left out. The caller frees with
// g_array_unref.
GArray *earlier_settings(Book *book, const char *number,
                         const Trials *here) G_GNUC_WARN_UNUSED_RESULT;
