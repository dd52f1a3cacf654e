// How bolts are told that were done before.
#pragma once
#include <standbook/judge/assess.h>

// The bolts and by which entries they stand, those of one entry together and in runs: `1 to 50
// (#57)`, `1 to 3, 7 (#57), 4, 5 (#60)`; of many runs the first, and how many bolts more. `places`:
// const Requirement * of one set and stage in the order of their positions, NULL where one lies
// between that is not meant. "" for none. The caller frees with g_free.
char *bolts_done_words(const GPtrArray *places) G_GNUC_WARN_UNUSED_RESULT;
