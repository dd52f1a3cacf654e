// What people call a place: `3 main`, `ring gap 2`, `cyl 4 bore top`. Pure.
#pragma once
#include <standbook/judge/assess.h>

// How well these words name a requirement, all of them, in any order: more is better, 0 is not at
// all. A number must be one of its labels; any other word must begin a word of its name, a label,
// an axis, its step or its answer (a lot). A judged value of just that place comes before what it
// is worked out from, that before bolts and signatures.
guint requirement_named(const Requirement *made, const char *words);

// The requirements of an assessment that the words name, the best first, `most` at most (const
// Requirement *). The caller frees with g_ptr_array_unref.
GPtrArray *requirements_named(const Assessment *assessment, const char *words,
                              guint most) G_GNUC_WARN_UNUSED_RESULT;

// The place that an entry of the build is about; NULL if it is about none.
const Requirement *requirement_about(const Assessment *assessment, const Entry *entry);
