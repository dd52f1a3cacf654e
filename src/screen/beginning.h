// What the first screen begins: a demo of its own, or a store with its first engine.
#pragma once
#include "desk.h"

typedef struct {
    char *plan;   // file of the plan; NULL: a blank card
    char *person; // `TB Tess Bell`
    char *serial, *owner, *build;
} Beginning;

void beginning_clear(Beginning *beginning);

// The files (char *) in the working folder that hold a plan without fault, by name, 99 at most. The
// caller frees with g_ptr_array_unref.
GPtrArray *plans_found(void) G_GNUC_WARN_UNUSED_RESULT;

// Whether this can be a person: initials and a name.
gboolean person_fits(const char *person, GError **error);

// Whether this can be a number that things are called by: one word.
gboolean word_fits(const char *word, GError **error);

// Makes the demo beside the store, unless it is there, and works on it from then on.
gboolean begin_demo(Desk *desk, GError **error);

// Makes the store, and enters person, plan, owner, engine and build in it; all of them or no store.
gboolean begin_engine(Desk *desk, const Beginning *beginning, GError **error);
