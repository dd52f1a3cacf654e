// A build in the list of the shop: what is told of it as of so many entries.
#pragma once
#include "desk.h"

#include <standbook/work/waits.h>

typedef struct {
    char *number;
    gboolean known;        // the rest is filled in
    guint entries;         // so many the build had then
    char *engine;          // in words
    char *tally;           // `297 pass  1 conc.`
    char *next, *progress; // what is next there, how far that has come; NULL: not known
    Waits waits;
    GArray *dues; // Due; NULL if the build cannot be opened
} Card;

Card *card_new(const char *number) G_GNUC_WARN_UNUSED_RESULT;
void card_free(gpointer card);
// Opens its build and fills in the rest.
void card_fill(Card *card, Desk *desk);
// Fills it in anew if there are more entries than when it was filled.
void card_refresh(Card *card, Desk *desk);
