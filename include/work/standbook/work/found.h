// What holds some words: entries of every build and of the shop, people and owners by name.
#pragma once
#include <standbook/book/book.h>

typedef struct {
    char *label; // the build's number, `shop`; of a name `person` or `owner`
    gint64 seq;  // of the entry; 0 for all that is none
    char *kind;  // of the entry; `person` or `owner` for a name; `build` for one of an owner that
                 // was found; `tool` or `lot` for what it was used on in a build
    char *when;  // `2025-03-04 10:05`; NULL for what is no entry
    char *by;    // initials of whoever typed it; of a name its own initials or short word; the
                 // tool or lot; "" for a build
    char *words; // what it says, clean text; of a name the name, of a build its engine, of a tool
                 // or lot what it was used on
    gboolean struck;
} Found;

// All that hold all these words, in any order and whatever case; names first (of people, also by
// their initials; of owners with their builds; of builds by number, serial and what the engine is
// called), then, if the words are the label of a tool or lot, its uses by build, the newest first,
// then the entries, by when they were done, the newest first (Found *). Among the words, the number
// or name of an engine's build stands for all that was entered there, if others say more; initials
// or a word of the name of a person also stand for whatever that person entered; a day
// (`2025-03-04`, `4 Mar`, `4 Mar 2025`) for what was done on it; `struck` for what was struck;
// `conceded`, `upheld`, `signed` and the like for every entry that does so. Behind them may stand
// `since 2024`, `since 2024-01` or `since 2024-01-30`: then of the entries only those of work done
// since. `known` has the entries of builds that were read already (GPtrArray of Entry *, by
// number); it may be NULL. NULL with an error (STORE). The caller frees with g_ptr_array_unref.
GPtrArray *found_words(Book *book, const char *asked, GHashTable *known,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
