// Looking after the store: is it whole, copying it, moving ledgers in and out.
#pragma once
#include <standbook/book/book.h>

typedef struct {
    char *ledger; // its label, NULL if the fault lies in no one ledger
    gint64 seq;   // the entry, 0 if it lies in no one entry
    char *fault;  // a sentence
} BookFault;

// All that is wrong in the store, in one reading of it: the tables and guards are those of a new
// store, SQLite finds the file sound, each entry is a ledger line in its turn whose digest follows
// from the one before, plans and assessments have their digests and none that an entry names is
// missing, the projections are what the lines make them. An array of BookFault, empty if all is
// whole, freed with g_ptr_array_unref; NULL with an error if that could not be found out. What no
// digest can show: standbook-ledger(5).
GPtrArray *book_verify(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Throws the projections away and makes them from the lines.
gboolean book_rebuild(Book *book, GError **error);

// Copies the store, as it stands at one moment, into a file that is not there yet, and verifies the
// copy; a copy that could not be finished, or of a store that is not whole, is not left behind.
gboolean book_backup(Book *book, const char *target, GError **error);

// A ledger as text, one row `DIGEST LINE` and a line feed for each entry (standbook-ledger(5)). The
// caller frees with g_free.
char *book_export(Book *book, const char *ledger, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Takes such rows in, all or none, and says in `taken` how many were new. The ledger is that of the
// rows; if the store does not have it, it is begun with that sort and label; if it has, its entries
// must be the first of the rows, and only what follows is taken. Refused (NO) if the rows are not
// whole, belong to no one ledger, or part from what the store has. `length` -1: up to the NUL.
gboolean book_import(Book *book, const char *rows, gssize length, LedgerSort sort,
                     const char *label, gint64 *taken, GError **error);
