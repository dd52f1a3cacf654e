// A build and the shop as questions and sheets read them: whole, at one moment.
#pragma once
#include <standbook/book/book.h>
#include <standbook/judge/assess.h>
#include <standbook/work/entry_words.h>
#include <standbook/work/shop.h>

typedef struct {
    char *number, *ledger;
    GPtrArray *entries; // Entry *, in turn
    GHashTable *names;  // id of a person or owner → name, where the store knows one
    Taken *taken;
    Plan *kept;      // as the plan file says
    Plan *grown;     // with what the build added, NULL if it added nothing
    gint64 upto;     // the last entry looked at
    gint64 end;      // the last entry when all were read, or a newer one
    char digest[65]; // of that entry
    char *shop;      // its name now, NULL if nobody has said
    char *differs;   // what is judged differently since the newest seal, NULL if nothing
} Opened;

// Reads a build by its number. NULL with an error: no such build, a plan that is not kept, a ledger
// that is damaged. The caller frees with opened_free.
Opened *opened_new(Book *book, const char *number, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void opened_free(Opened *opened); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Opened, opened_free)

// The entries of a ledger by its id (Entry *), in turn; freed with g_ptr_array_unref.
GPtrArray *entries_read(Book *book, const char *ledger, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The plan in force; it belongs to the build.
const Plan *opened_plan(const Opened *opened);

// Looks at entries 1 to `upto` only (0: all), with the plan as it was then.
void opened_look_at(Opened *opened, gint64 upto);
// The same for `#41`, or a day or moment: the last entry typed by then. NULL words mean all. FALSE
// with an error (MISUSE) if it is neither, or there was no entry by then.
gboolean opened_as_of(Opened *opened, const char *words, GError **error);

// The assessment of what is looked at. The caller frees.
Assessment *opened_assess(const Opened *opened,
                          const Hypothesis *hypothesis) G_GNUC_WARN_UNUSED_RESULT;

// Fills in `differs`: what is judged differently now from what the newest seal fixed. FALSE with an
// error if the store does not hold what the seal says.
gboolean opened_compare_seal(Book *book, Opened *opened, const Assessment *assessment,
                             GError **error);

// `first start, hand over`. The caller frees with g_free.
char *gates_words(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;

// The numbers of all builds (char *), freed with g_ptr_array_unref.
GPtrArray *build_numbers(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Puts the numbers of builds (char *), as the store lists them, in the shop's order: the build
// begun last first, behind all of these those that the shop did not begin.
void numbers_newest_first(GPtrArray *numbers, const Shop *shop);

// The shop's ledger; empty if there is none yet.
Shop *shop_open(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The name of a person or owner outside the chain; NULL if none is known. The caller frees.
char *person_name(Book *book, const char *id) G_GNUC_WARN_UNUSED_RESULT;

// The ledger of the build with that number; `shop` is the shop's. NULL with an error (MISUSE) and
// the nearest number if there is none. The caller frees with g_free.
char *ledger_of(Book *book, const char *label, GError **error) G_GNUC_WARN_UNUSED_RESULT;
