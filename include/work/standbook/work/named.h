// What people call a place: `3 main`, `ring gap 2`, `cyl 4 bore top`. Pure.
#pragma once
#include <standbook/judge/assess.h>

// What the places of one assessment can be called, made ready once so that words are found in it at
// every key. It says what stood there when it was made, and is to be used only until an entry more
// is judged.
typedef struct Naming Naming;

Naming *naming_new(const Assessment *assessment) G_GNUC_WARN_UNUSED_RESULT;
void naming_free(Naming *naming); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Naming, naming_free)

// The requirements that all these words name, in any order, the best first, `most` at most (const
// Requirement *). A word must be a label or begin a word of the name, an axis, the step, the answer
// (a lot) or the value as shown; one of one or two digits must be all of it, and one that is a
// label of a place there (`R`, `in`) names the places with that label before all others. Case does
// not matter;
// `#`, `?` and the like part words; `three` and `third` are 3 as well, up to twelve. Where nothing
// is called all of it, words that only make a question of the others are left out: `what was the
// clearance on number three main?` What stands in the name counts most; then a check
// that is called just so; then a judged value of just that place comes before what it is worked out
// from, that before bolts and signatures; of those as good the first in the plan, but of bolts of
// one set what was done last. Of a check that several steps ask for, the step in which it was read
// last comes before the others. The caller frees
// with g_ptr_array_unref.
GPtrArray *naming_asked(const Naming *naming, const char *words,
                        guint most) G_GNUC_WARN_UNUSED_RESULT;

// The same of an assessment that is asked once.
GPtrArray *requirements_named(const Assessment *assessment, const char *words,
                              guint most) G_GNUC_WARN_UNUSED_RESULT;

// `main clearance 3`, `signed Receive`, `sign Receive` where nobody has: what it is called where
// things of many kinds stand together. The caller frees with g_free.
char *named_title(const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// The place that an entry of the build is about; NULL if it is about none.
const Requirement *requirement_about(const Assessment *assessment, const Entry *entry);
// Whether an entry names this place, or its check, bolt set or part without a place.
gboolean entry_is_about(const Entry *entry, const Requirement *made);
