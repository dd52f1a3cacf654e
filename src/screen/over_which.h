// Which check is to be shown over the engines, asked for by its name: words are typed, and where
// several names have them one is chosen by its line.
#pragma once
#include "desk.h"
#include "list_part.h"
#include "page.h"

typedef struct {
    gboolean asks; // words are typed, or a line is chosen
    char *held;    // the words, once a line is chosen of those that have them; NULL: they are typed
    ListPart part; // that line, and those seen
} OverWhich;

void over_which_begin(OverWhich *which);
void over_which_clear(OverWhich *which); // it asks nothing then

// Of these names (const char *) those that hold all the words, in any case: the one that is typed
// whole first, then those that begin with it, else in their order. All of them if nothing is typed.
// The caller frees with g_ptr_array_unref.
GPtrArray *over_which_names(const GPtrArray *names, const char *words) G_GNUC_WARN_UNUSED_RESULT;

void over_which_paint(OverWhich *which, const GPtrArray *names, const char *typed, Page *page);
// Enter: the name that is meant, of `names`; NULL where there is more to be asked (*keeps FALSE),
// or with a warning (*keeps TRUE: what was typed stays).
const char *over_which_enter(OverWhich *which, const GPtrArray *names, const char *typed,
                             Desk *desk, gboolean *keeps);
void over_which_move(OverWhich *which, const GPtrArray *names, gint direction);
// Backspace: from the lines to the words, from these out of it.
void over_which_up(OverWhich *which);
