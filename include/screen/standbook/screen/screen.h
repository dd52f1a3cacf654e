// The front end at the stand.
#pragma once
#include <standbook/book/book.h>
#include <standbook/work/session.h>

typedef struct {
    const char *store;              // path of the store; it need not be there yet
    Moment (*now)(gpointer user);   // the clock on the wall
    char *(*new_id)(gpointer user); // a new UUID in lower case, freed with g_free
    gpointer user;
    const char *colours; // see standbook(1); NULL for the usual ones
} ScreenOptions;

// Takes the terminal, works until its person leaves or the terminal is gone, and gives it back.
// FALSE with an error: MISUSE no terminal, or one of an unknown kind; STORE trouble with the store.
gboolean screen_run(const ScreenOptions *options, GError **error);
