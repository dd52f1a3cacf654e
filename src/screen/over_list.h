// One check over all engines of the family: which checks there are, and its places.
#pragma once
#include "desk.h"

#include <standbook/work/over.h>

typedef struct {
    char *check;         // its name; NULL: the first that there is
    char *asked;         // the one that is shown by what is worked out from it; NULL: none is
    const Session *lead; // whose plan says the order of the checks; NULL: nothing is open
    GPtrArray *checks;   // const char *: of the family, those that were read somewhere
    GArray *rows;        // Over: by build, the newest first
    Number *from, *to;   // the window of all rows; NULL without any
    char *doubt;         // `±.004` where it is that of all rows, else ""
    guint place_width, value_width; // of the widest, in columns
    gboolean wear, away;            // some have a wear limit; wear away since new
    guint engines;
    char *words; // what the rows come to (over_words); NULL without any
    gboolean unlimited; // no row, but the check was read where it has no limit
    guint known; // with so many entries of all builds
} OverList;

// `check` may be NULL.
OverList *over_list_new(const char *check) G_GNUC_WARN_UNUSED_RESULT;
void over_list_free(OverList *list);

// Looks again if there is something new.
void over_list_look(OverList *list, const Desk *desk);
// Turns to the check of that name.
void over_list_turn(OverList *list, const Desk *desk, const char *check);
// Turns to the check behind the one shown; after the last to the first.
void over_list_next(OverList *list, const Desk *desk);

// The place of a row; where a later step reads the check again, with that step behind it. The
// caller frees with g_free.
char *over_list_place(const Over *row) G_GNUC_WARN_UNUSED_RESULT;

// Whether a row is the first of its engine, the number of the engine in the list (from 1), and the
// build of that number; NULL for none.
gboolean over_list_is_first(const OverList *list, guint row);
guint over_list_engine(const OverList *list, guint row);
const char *over_list_build(const OverList *list, guint64 engine);
