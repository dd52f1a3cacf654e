// Which part or material is the reason of a doubt, told of a requirement. Pure.
#pragma once
#include <standbook/judge/assess.h>
#include <standbook/work/entry_words.h>

// `Lot FB-9 is recalled: heads crack.`, `Silicone S-14 expired 2025-01-31.`, `It was used again
// where a new one is asked for.`, all that hold of what was fitted there and laid on it; NULL where
// none is found. The caller frees with g_free.
char *part_cause_words(const Taken *taken, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
