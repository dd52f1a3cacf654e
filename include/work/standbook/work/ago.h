// Moments as people at the stand say them: the clock first, then how long ago. Pure: the present is
// handed in.
#pragma once
#include <standbook/base/moment.h>

// `14:12, 47 min ago`, also over midnight; from 90 min on, the hours rounded, `09:12, 3 h ago`; on
// another day `4 Mar`, in another year `4 Mar 2024`. A moment in the minute that runs is `14:12,
// now`; one still to come on the same day, as after a clock was set back, is its clock alone:
// `14:12`. The caller frees with g_free.
char *ago_words(Moment moment, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// How long ago alone: `47 min ago`, `3 h ago`, `now`; of another day that day, as above; NULL for
// one still to come on the same day. The caller frees with g_free.
char *ago_since(Moment moment, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// The day alone: `4 Mar`, in another year `4 Mar 2024`. The caller frees with g_free.
char *ago_day(Moment moment, Moment now) G_GNUC_WARN_UNUSED_RESULT;
