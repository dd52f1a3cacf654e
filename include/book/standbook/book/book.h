// The store: one file that holds every ledger, the plans and assessments that entries name by
// their digest, and the names of people. All errors are STANDBOOK_ERROR_STORE unless said
// otherwise. A Book belongs to one thread.
#pragma once
#include <glib.h>
#include <standbook/record/kind.h>

typedef struct Book Book;

// Makes a new, empty store. Never overwrites: it is an error if anything is at `path`.
gboolean book_create(const char *path, GError **error);

typedef enum { BOOK_WRITE, BOOK_READ } BookUse;

// Opens a store; never makes one. Refused, each with its own sentence: missing, not a store of
// this program, made by a newer version, on a network file system, locked, damaged. A store that
// may not be written is opened to be read (book_is_read_only). Entries are not checked here:
// that is book_verify. The caller frees with book_close.
Book *book_open(const char *path, BookUse use, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void book_close(Book *book);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Book, book_close)

gboolean book_is_read_only(const Book *book);

// The path of the store's file, links followed; belongs to the book.
const char *book_path(const Book *book);

// Changes whenever another process has written to the store; own writing does not change it. -1 if
// that cannot be told just now. Cheap enough to ask four times a second; not inside a turn.
gint64 book_data_version(Book *book);

// Says that who made that entry is here, at this program, until it ends, however it ends; and asks
// whether one is at another program that is running. Nothing is said of a store that is read only.
void book_attend(Book *book, const char *ledger, gint64 seq);
gboolean book_is_attended(const Book *book, const char *ledger, gint64 seq);

// READING ---------------------------------------------------------------------------------------

typedef struct {
    char *id;
    LedgerSort sort; // LEDGER_BUILD or LEDGER_SHOP
    char *label;     // what the shop calls it: the build's number
    gint64 last;     // seq of its last entry, 0 if it has none
} BookLedger;

// All ledgers, the shop first, then builds by label: BookLedger, freed with g_ptr_array_unref.
GPtrArray *book_ledgers(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The ledger lines (char *, without line feed) behind the entry `behind` (0: all), in order of
// seq; freed with g_ptr_array_unref. A ledger that is not there has none.
GPtrArray *book_read(Book *book, const char *ledger, gint64 behind,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The seq and digest of a ledger's last entry: 0 and CHAIN_START if it has none. Either may be
// NULL.
gboolean book_end(Book *book, const char *ledger, gint64 *seq, char digest[65], GError **error);

// The bytes of a plan or an assessment, by its SHA-256; NULL with an error if it is not there or
// its bytes have another digest (NO).
GBytes *book_kept(Book *book, const char *digest, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// WRITING ---------------------------------------------------------------------------------------
// A turn is one transaction: from when it is taken, nobody else writes. What is put in it stands
// in the store once book_turn_keep has said so, all of it, or none. book_turn_free before that
// takes all of it back. After any error inside a turn, only freeing it is left to do. Reading
// functions called within a turn see what was put.

typedef struct BookTurn BookTurn;

// Waits at most five seconds for others to finish. One turn at a time per book. NULL with an error
// if the store cannot be written now, was replaced by another file or has another version.
BookTurn *book_turn(Book *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean book_turn_keep(BookTurn *turn, GError **error);
void book_turn_free(BookTurn *turn);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(BookTurn, book_turn_free)

typedef enum {
    BOOK_TAKEN,
    BOOK_MOVED_ON, // somebody entered something before: read it, and write the line anew
    BOOK_REFUSED,  // with an error
} BookOutcome;

// Begins a ledger. Refused if there is one of that id, or of that sort and label, or a second shop.
gboolean book_turn_ledger(BookTurn *turn, const char *id, LedgerSort sort, const char *label,
                          GError **error);

// Corrects the label of a ledger. Refused (NO) if another of that sort has it.
gboolean book_turn_label(BookTurn *turn, const char *id, const char *label, GError **error);

// Puts a ledger line (entry_write) into the ledger it names, at the seq it names. MOVED_ON, with
// an error (NO) and the turn still good, if the ledger already has that seq; refused (NO) if it is
// no ledger line, would leave a gap, or is of a kind that has no place in this sort of ledger.
BookOutcome book_turn_put(BookTurn *turn, const char *line, GError **error);

// Keeps a plan file (`what` "plan") or a seal's assessment ("assessment"); at most 2 MB. Its
// SHA-256 is filled in. Keeping the same bytes again is no error.
gboolean book_turn_keep_bytes(BookTurn *turn, const char *what, GBytes *bytes, char digest[65],
                              GError **error);

// One turn for lines that are already written, of one ledger or several: all or none.
BookOutcome book_append(Book *book, const char *const *lines, gsize count, GError **error);
