// The working of the advice on a setting, in words: what was seen, what was made of it, and what
// it rests on. Pure.
#pragma once
#include <standbook/work/next_move.h>

typedef struct {
    const char *head; // `answers`; "" goes on with the line before
    char *said;
} SettingWhy;

// The lines (SettingWhy) for trials that are judged and the advice on them: how it answered, try by
// try and as a straight line through the tightened readings (rules/line.h), beside the plan; how it
// is reckoned to answer; what tightening adds; the chances; what it begins with and leaves out. A
// doubt is one standard deviation. The caller frees with g_array_unref.
GArray *setting_why(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
