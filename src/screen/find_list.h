// What any words are answered with, over all builds: the lines of find, best first.
#pragma once
#include "desk.h"

#include <standbook/work/found.h>
#include <standbook/work/named.h>

// A build that is asked.
typedef struct {
    char *number;
    Session *session; // NULL: not open yet, or cannot be
    Naming *naming;   // of its places …
    guint entries;    // … with so many entries
} FindBuild;

// One line: a place, else the lot fitted at the first of them, else what was found beside.
typedef struct {
    const FindBuild *build;
    const Requirement *made; // the place, or NULL
    const Found *found;      // or NULL
} FindLine;

typedef struct {
    GArray *builds;   // FindBuild: the one in hand, then the newest first
    guint opened;     // how many of them were tried by now
    char *asked;      // the words for which the lines stand; NULL: to be asked anew
    char *left;       // these without the numbers of builds …
    GPtrArray *meant; // … and the builds so named (char *), none: all builds are asked
    GArray *lines;    // FindLine
    guint places;     // of them are places in front
    GPtrArray *found; // Found *: all that hold the words; NULL as long as they are not kept
    GPtrArray *told;  // char *: of the first place; NULL where there is none
    char *lot;        // the label of the lot fitted there; NULL for none
    char *lot_words;  // where else it is: `main shells 2 3 here; TL-0397 main shells 1 2 3`
    FindLine told_of; // the place for which these stand …
    guint told_at;    // … with so many entries of its build
} FindList;

FindList *find_list_new(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
void find_list_free(FindList *list);

// Opens the next build, to be asked too. FALSE if there is none left.
gboolean find_list_open_next(FindList *list, Desk *desk);

// Asks for these words unless that is what stands there and nothing was entered since.
void find_list_ask(FindList *list, const Desk *desk, const char *words);

// Asks, and adds all that was ever entered with these words. FALSE with an error (STORE); then
// nothing is kept.
gboolean find_list_keep(FindList *list, const Desk *desk, const char *words, GError **error);
// Back to the places alone.
void find_list_let_go(FindList *list);

// Where the lot is that was fitted at a place of the build in hand, in all builds that are open by
// now: `lot MB-2417-C: main shells 2 3 here; TL-0397 main shells 1 2 3`. NULL where none was. The
// caller frees with g_free.
char *find_list_lot(FindList *list, const Desk *desk,
                    const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// The build of that number; NULL if it is not open.
const FindBuild *find_list_build(const FindList *list, const char *number);
// The place that an entry found there is about; NULL for none.
const Requirement *find_list_about(const FindBuild *build, const Found *found);

// In how many builds the lines are.
guint find_list_builds(const FindList *list);
