// Questions over all ledgers, and the names of people.
#pragma once
#include <standbook/book/book.h>

typedef enum {
    BOOK_FIND_WORDS,  // entries in which the words stand in this order; A to Z and a to z alike
    BOOK_FIND_CHECK,  // values, answers and claims of a check, by its name
    BOOK_FIND_TOOL,   // uses of a tool, by its id
    BOOK_FIND_LOT,    // parts fitted out of a lot, by its id
    BOOK_FIND_SERIAL, // parts fitted of that serial
    BOOK_FIND_STOCK,  // what the shop entered about a lot or consumable, by its id
    BOOK_FIND_TAKEN,  // the first entry by which each build took something: by its id, for a
                      // calibration its tool's, for a plan its digest, for a default its name
} BookQuestion;

typedef struct {
    char *ledger; // id
    gint64 seq;
} BookHit;

// The entries that answer, by label of the ledger and seq; struck ones are among them. An array of
// BookHit, freed with g_ptr_array_unref.
GPtrArray *book_find(Book *book, BookQuestion question, const char *text,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

// A value read in some build, exact as in its line (`<` or `>` before a bound).
typedef struct {
    char *ledger, *value, *unit; // `unit` NULL for a pure number
} BookValue;

// The values of a check of that name in all builds, tightened where that matters, struck ones among
// them; some hundreds at most. An array of BookValue, freed with g_ptr_array_unref.
GPtrArray *book_values(Book *book, const char *check, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// How many bolts were taken through a stage of torque with a tool since one of its calibrations
// (ids), over all builds, struck ticks among them: the wrench was used for them too. Of ticks older
// than format 3 the stage is not known, and all count. -1 if it cannot be asked.
gint64 book_tool_uses(Book *book, const char *tool, const char *calibration);

// How many parts were fitted new out of a lot (by its id) over all builds; those whose fitting was
// struck do not count, unless that strike was struck. -1 if it cannot be asked.
gint64 book_lot_fitted(Book *book, const char *lot);

// What is known of a person outside the ledgers; NULL where nothing is.
typedef struct {
    char *name, *address, *phone;
} BookPerson;

// The caller frees with book_person_free; all NULL if the store knows nothing of that id.
BookPerson *book_person(Book *book, const char *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void book_person_free(BookPerson *person);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(BookPerson, book_person_free)

// Puts what is known of a person beside what else the turn holds: for one who is new. What was
// there before is no longer found, but its bytes may stay in the file; book_person_set erases them.
gboolean book_turn_person(BookTurn *turn, const char *id, const BookPerson *person, GError **error);

// Puts what is known in place of what was, in a turn of its own. What was is overwritten in the
// file as well, once nobody reads the store; older backups keep it.
gboolean book_person_set(Book *book, const char *id, const BookPerson *person, GError **error);
