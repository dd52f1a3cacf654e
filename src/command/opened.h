// A build and the shop as the answering subcommands read them: whole, at one moment.
#pragma once
#include "store.h"
#include <standbook/judge/assess.h>
#include <standbook/sheet/sheet.h>
#include <standbook/work/shop.h>

typedef struct {
    char *number, *ledger;
    GPtrArray *entries; // Entry *, in turn
    GHashTable *names;  // id of a person or owner → name, where the store knows one
    Taken *taken;
    Plan *plan;
} Opened;

// Reads a build by its number. NULL with an error: no such build, a plan that is not kept, a ledger
// that is damaged. The caller frees with opened_free.
Opened *opened_new(Book *book, const char *number, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void opened_free(Opened *opened); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Opened, opened_free)

// The entries of a ledger by its id (Entry *), in turn; freed with g_ptr_array_unref.
GPtrArray *entries_read(Book *book, const char *ledger, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Its assessment as of entry `upto` (0: all). The caller frees.
Assessment *opened_assess(const Opened *opened, gint64 upto,
                          const Hypothesis *hypothesis) G_GNUC_WARN_UNUSED_RESULT;

// What the sheets are made from; all of it belongs to the two.
SheetSource opened_source(const Opened *opened, const Assessment *assessment);

// `#41` or a day or moment: the last entry typed by then, at least 1. 0 with an error (MISUSE) if
// it is neither, or there was none by then.
gint64 opened_as_of(const Opened *opened, const char *words, GError **error);

// `first start, hand over`. The caller frees with g_free.
char *gates_words(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;

// The numbers of all builds (char *), freed with g_ptr_array_unref.
GPtrArray *build_numbers(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The shop's ledger; empty if there is none yet.
Shop *shop_open(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The name of a person or owner outside the chain; NULL if none is known. The caller frees.
char *person_name(Book *book, const char *id) G_GNUC_WARN_UNUSED_RESULT;

// Prints a document as text, or as JSON.
void say_document(const Document *document, gboolean json);
