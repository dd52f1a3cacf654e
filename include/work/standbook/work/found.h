// What holds some words: entries of every build and of the shop, people and owners by name.
#pragma once
#include <standbook/book/book.h>

typedef struct {
    char *label; // the build's number, `shop`; of a name `person` or `owner`
    gint64 seq;  // of the entry; 0 for a name, and for a build of an owner that was found
    char *kind;  // of the entry; `person` or `owner` for a name, `build`
    char *when;  // `2025-03-04 10:05`; NULL for a name or build
    char *by;    // initials of whoever typed it; of a name its own initials or short word
    char *words; // what it says, clean text; of a name the name, of a build its engine
    gboolean struck;
} Found;

// All that hold all these words, in any order of the words; names first, then by ledger and seq
// (Found *). NULL with an error (STORE). The caller frees with g_ptr_array_unref.
GPtrArray *found_words(Book *book, const char *words, GError **error) G_GNUC_WARN_UNUSED_RESULT;
