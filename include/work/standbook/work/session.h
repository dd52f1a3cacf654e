// Work on one build, or on the shop, in a store: lines are taken, stored one transaction each, and
// answered with what they did to the verdicts. The ledgers are read once, at the opening; after
// that only what others have entered meanwhile.
#pragma once
#include <standbook/book/book.h>
#include <standbook/work/agenda.h>
#include <standbook/work/line.h>

typedef struct {
    Moment (*now)(gpointer user);   // the clock on the wall
    char *(*new_id)(gpointer user); // a new UUID in lower case, freed with g_free
    gpointer user;
    gboolean check;       // everything is taken as if, and nothing is stored
    gboolean trust_times; // see line_taker_trust_times
    gboolean quiet;       // no answers, and then nothing is judged that need not be
} SessionOptions;

typedef struct Session Session;

// Opens the build of that number; NULL opens the shop, whose ledger is begun with its first line if
// there is none. NULL with an error: no such build (the nearest is named), a plan that is not kept,
// a damaged ledger. The book and what the options point to outlive the session. The caller frees
// with session_close.
Session *session_open(Book *book, const char *number, const SessionOptions *options,
                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
void session_close(Session *session); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Session, session_close)

// Takes the next line: `length` bytes without the line feed, -1 up to the NUL. TRUE once it is
// stored; `answer` (may be NULL) is then one sentence, freed with g_free, or NULL if there is
// nothing to say: `#412: main bore[1, front] 59.790 mm: pass`. FALSE with an error whose sentence
// begins `line 4, column 18: `: MISUSE what cannot be taken, NO what somebody else has entered at
// the same place meanwhile, STORE trouble with the store. Nothing is stored then.
gboolean session_line(Session *session, const char *text, gssize length, char **answer,
                      GError **error);

// How many of the build's last entries the line taken last made: what others had entered meanwhile
// stands before them.
guint session_entered(const Session *session);

// What was likely a slip of the fingers in the line taken last (char *), as its answer says it;
// NULL or empty if nothing was, or no answer was asked for. It belongs to the session, until the
// next line.
const GPtrArray *session_last_slips(const Session *session);

// Takes all lines of a text until the first that is refused. `say` (may be NULL) gets each answer
// with the number of its line, from 1.
gboolean session_text(Session *session, const char *text, gsize length,
                      void (*say)(guint line, const char *answer, gpointer user), gpointer user,
                      GError **error);

// How many lines have been taken that entered something.
guint session_taken(const Session *session);
// How many lines have been read, refused ones among them.
guint session_lines(const Session *session);
// What carries forward to the next line (line_taker_carried). The caller frees with g_free.
char *session_carried(const Session *session) G_GNUC_WARN_UNUSED_RESULT;

// The plan in force, with what the build added; NULL for the shop.
const Plan *session_plan(const Session *session);
// The build's entries (const Entry *), in order of seq.
const GPtrArray *session_entries(const Session *session);
const Shop *session_shop(const Session *session);
const PlanStep *session_step(const Session *session); // in hand, or NULL
// The build as it stands, judged anew only if something was entered. Belongs to the session, until
// the next line. NULL for the shop.
const Assessment *session_assessment(Session *session);
// What is left of it by that; good until the next line is taken.
Agenda session_agenda(Session *session);

// Takes in what others have entered since. TRUE if there was something, or FALSE; also FALSE, with
// an error, if the store cannot be read.
gboolean session_catch_up(Session *session, GError **error);
