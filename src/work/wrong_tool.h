// What the files on tools in doubt share.
#pragma once
#include <standbook/work/agenda.h>

// How often the wrench had been used since its calibration when all bolts of a tick were through; 0
// where the tick does not say.
gint64 uses_by_then(const Entry *tick);

// Where and how a check of that tool is entered that found it good. The caller frees with g_free.
char *found_good_words(const char *label, Moment now) G_GNUC_WARN_UNUSED_RESULT;
