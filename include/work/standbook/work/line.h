// A log line (standbook-log(5)) turned into entries. A line is taken whole or refused whole; what
// carries forward from line to line (date, time, initials, the step in hand) is kept here. Pure: no
// store, no clock, no file but through what is handed in.
#pragma once
#include <standbook/base/moment.h>
#include <standbook/judge/assess.h>
#include <standbook/plan/plan.h>
#include <standbook/record/entry.h>
#include <standbook/work/shop.h>

// What the taker asks of its caller. `user` is handed back.
typedef struct {
    // A new UUID in lower case, freed with g_free.
    char *(*new_id)(gpointer user);
    // The ids of the builds whose ledgers hold a `take` of this kind and id, NULL-terminated, freed
    // with g_strfreev; NULL for none. As a function NULL: there are no other builds.
    GStrv (*builds_with)(const char *what, const char *id, gpointer user);
    // The SHA-256 of a file in lower-case hexadecimal, freed with g_free; NULL with an error. As a
    // function NULL: a digest must then be written.
    char *(*file_digest)(const char *name, gpointer user, GError **error);
    // The build as it stands now, judged with the taker's plan and entries; it belongs to the
    // caller and is looked at before the next line. As a function NULL: nothing can be conceded,
    // upheld or sealed.
    const Assessment *(*assessment)(gpointer user);
    // How many bolts a tool was used on since a calibration (ids), over all builds; as a function
    // NULL: nobody counts.
    gint64 (*uses)(const char *tool, const char *calibration, gpointer user);
    // The name that is kept beside the ledgers for the person or owner of that id, freed with
    // g_free; NULL for none. As a function NULL: only names of lines taken before are known.
    char *(*name)(const char *id, gpointer user);
    gpointer user;
} LineHelp;

typedef struct LineTaker LineTaker;

// A taker for the build whose ledger has the id `build`, or for the shop alone (`build` and `plan`
// NULL). `shop_ledger` is the id of the shop's ledger. Plan, shop and `help` outlive the taker. The
// caller frees with line_taker_free.
LineTaker *line_taker_new(const Plan *plan, Shop *shop, const char *shop_ledger, const char *build,
                          const LineHelp *help) G_GNUC_WARN_UNUSED_RESULT;
void line_taker_free(LineTaker *taker); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(LineTaker, line_taker_free)

// Adds an entry of the build's ledger that is there already, in turn; the taker owns it from then
// on. FALSE with an error (NO) if it is out of turn.
gboolean line_taker_add(LineTaker *taker, Entry *entry, GError **error);

// The build's entries so far (Entry *), in order of seq; they belong to the taker.
const GPtrArray *line_taker_entries(const LineTaker *taker);

// Another plan in force: with what the build added to it. It outlives the taker.
void line_taker_set_plan(LineTaker *taker, const Plan *plan);

// If TRUE, `at` is the line's own date and time where it has one: for logs that were kept in time.
// A line from paper keeps the latest time typed before, if that is later.
void line_taker_trust_times(LineTaker *taker, gboolean trust);

// The date, time and initials that hold for the next line, as a line of their own sets them:
// `2025-03-04 10:05 MO`; "" where none was written yet. The caller frees with g_free.
char *line_taker_carried(const LineTaker *taker) G_GNUC_WARN_UNUSED_RESULT;

// The step in hand, NULL if there is none.
const PlanStep *line_taker_step(const LineTaker *taker);

// A name that stands outside the chain, for the person or owner of that id.
typedef struct {
    char *id, *name;
} LineName;

typedef struct LineCarry LineCarry;

// What a line comes to.
typedef struct {
    GPtrArray *entries; // Entry *, in the order to be put: of this build, of the shop, and `news`
                        // for other builds, whose seq (0) the caller sets behind their last
    GPtrArray *names;   // LineName *
    GPtrArray *remarks; // char *: sentences without a full stop, in clean text, that the answer
                        // adds to what the line changed
    GBytes *kept;       // the assessment that a seal names by its digest, NULL without a seal
    LineCarry *carry;
} LineTaken;

// Reads one line (without line feed), typed at `at`. NULL with an error (MISUSE), its sentence
// begins with the column, and nothing has changed. Empty lines and comments give no entries.
LineTaken *line_take(LineTaker *taker, const char *text, Moment at,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Makes what was taken part of the build and the shop, once it is stored, and frees it.
void line_keep(LineTaker *taker, LineTaken *taken);

// Frees what was taken and not kept; NULL is allowed.
void line_taken_free(LineTaken *taken);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(LineTaken, line_taken_free)
