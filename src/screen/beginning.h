// What is begun: a demo of its own, a store with its first engine, or the next engine of a store.
#pragma once
#include "desk.h"

typedef struct {
    char *plan;   // file of the plan, or name of one that is kept; NULL: a blank card
    char *person; // `TB Tess Bell`, or initials alone; NULL: who works here
    char *serial;
    char *owner; // "": nobody knows
    char *build;
    char *shop; // what the shop is called; NULL or "": nobody said
} Beginning;

void beginning_clear(Beginning *beginning);

// The plans that an engine can be begun with (char *), 99 at most: the names of those that are
// kept, then by name the files in the working folder, and in `plans` and `demo-data` there, that
// hold another one without fault. The caller frees with g_ptr_array_unref.
GPtrArray *plans_found(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// What Beginning has of the plan that was typed: the number of a line of those found, one of their
// names, or the path of a file that holds a plan. NULL with an error: what is wrong with it. The
// caller frees.
char *plan_typed(const GPtrArray *plans, const char *typed,
                 GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Whether this can be a person: initials, and perhaps a name.
gboolean person_fits(const Desk *desk, const char *person, GError **error);
// `person TB "Tess Bell"`, as a line of the shop has it: the name is the initials where none is
// said. The caller frees.
char *person_words(const char *person) G_GNUC_WARN_UNUSED_RESULT;

// Whether this can be a number that things are called by: one word.
gboolean word_fits(const char *word, GError **error);
// Whether this can be the number of a new build: one word that no other build has.
gboolean build_fits(const Desk *desk, const char *number, GError **error);
// Whether it looks like something read, rather than what a build is called: `0.0025`.
gboolean build_is_odd(const char *number);
// The first of `B-1`, `B-2`, … that no build has. The caller frees.
char *build_free(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;

// Where the demo is kept, beside the store; whether it was made already. The caller frees the path.
char *demo_path(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
gboolean demo_is_made(const Desk *desk);
// Whether the store that is open is the demo: it is known by the name of its file.
gboolean demo_is_open(const Desk *desk);
// Makes the demo there, unless it is there, and works on it from then on.
gboolean begin_demo(Desk *desk, GError **error);

// Enters person, plan, owner, engine and build, and takes that build up. Where there is no store it
// is made; then it is all of them or no store. FALSE with an error, or with a warning of the desk.
gboolean begin_engine(Desk *desk, const Beginning *beginning, GError **error);
