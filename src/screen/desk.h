// What all views share: the store, the sessions on it, and what this terminal has in hand.
#pragma once
#include "unplaced.h"

#include <standbook/screen/screen.h>

typedef struct {
    const ScreenOptions *options;
    Book *book;           // NULL: there is no store yet
    GHashTable *sessions; // by build number: Session *; made when first asked for
    Session *shop;        // NULL without a store
    char *number;         // of the build in hand, NULL if none
    char *who;            // initials of who works here, NULL if nobody yet
    char *called;         // of whom was typed last to be among those with a digit; NULL for nobody
    Moment now;
    Moment latest;      // that the clock or an entry of the build in hand ever said
    guint latest_of;    // how many entries that build had then
    gboolean went_back; // the clock says less, and that was said
    gboolean ascii;
    gboolean typed;      // something stands in the field, as it is painted next
    gboolean big;        // the far view: what is in hand is read from the stand
    GPtrArray *unplaced; // Unplaced: bursts that came with no field open, oldest first
    char *last;          // what was done last here, in words; NULL if nothing
    Moment last_at;      // and when
    char *last_by;       // `08:54 MO` where that is the newest entry here; else NULL
    gint64 last_seq;     // this terminal's newest entry in the build in hand, 0 if none
    gint64 last_first;   // the first of those that came of one line with it; 0: it was recalled
    guint known;         // how many entries the build in hand had when it was first looked at here
    GArray *entered_since; // gint64: numbers of those that were entered here since
    guint seal_asked;    // how many entries the build in hand had when it was asked to be sealed
    guint new_asked;     // likewise, when a new bolt was asked for
    char *entered;       // that entry in words, as long as entered_seq is its number
    gint64 entered_seq;
    char *warning;      // what row 23 warns of until the next key; NULL for nothing
    guint warnings;     // how many there were
    GHashTable *tools;  // in hand: label by what it is needed for (toolbox.h)
    char *new_tool;     // entered just now, and not yet taken in hand; NULL for none
    char *known_tool;   // called by its number, likewise
    char *both_stand;   // the answer that two readings, in words, both stand; NULL for none
    GHashTable *drafts; // concessions and tools that were begun: GStrv of their lines by name
    GHashTable *not_yet; // what was to be laid and put off: `step`, a line feed, the consumable
    gint64 unseen;       // until then (µs) digits were meant for what stood there before
    gint64 version;     // of the store's data when last looked at
    char *clock;        // the line of the clock that counts (clock_line.h) of …
    const Session *clock_of;
    Moment clock_at; // … at that moment, with so many entries
    guint clock_known;
    const PlanStep *clock_step; // … in that step; NULL: in none
    GPtrArray *used; // const Entry *, the tools used in that build, the newest first (toolbox.h) …
    const Session *used_of;
    gint64 used_known; // … with so many entries of it and of the shop
    const Session *held_of; // the build in which that person's work was looked for last,
    guint held_known;       // with so many entries,
    gboolean held;          // and was in hand
    GHashTable *uses;  // of torque wrenches since their calibration, gint64 * by label (toolbox.h);
                       // forgotten with every entry
} Desk;

// FALSE with an error (STORE) if there is a store and it cannot be used.
gboolean desk_open(Desk *desk, const ScreenOptions *options, GError **error);
void desk_clear(Desk *desk);

// Opens this store in place of the one before, if any.
gboolean desk_open_store(Desk *desk, const char *path, GError **error);
void desk_close_store(Desk *desk);
// Reads the shop's ledger anew: a plan was kept, which no line of it did. FALSE with an error.
gboolean desk_read_shop(Desk *desk, GError **error);

// The session of a build; NULL with a warning if it cannot be opened. Belongs to the desk.
Session *desk_session(Desk *desk, const char *number);
// That of the build in hand, NULL if there is none.
Session *desk_build(Desk *desk);
void desk_take_up(Desk *desk, const char *number);
// Opens the next build, newest first, behind the first `*tried` of them; FALSE if there is none.
gboolean desk_open_next(Desk *desk, guint *tried);
// How many entries the builds have that are open by now: more once something was entered.
guint desk_entries_known(const Desk *desk);

// Takes a log line of the build in hand as the person who works here. TRUE once it is stored; else
// the warning says why. `answer` (may be NULL) is freed with g_free.
gboolean desk_line(Desk *desk, const char *line, char **answer);
// The same as another person, who need not be the one who types.
gboolean desk_line_as(Desk *desk, const char *who, const char *line);
// The same for a line of the shop.
gboolean desk_shop_line(Desk *desk, const char *line);

void desk_warn(Desk *desk, const char *format, ...) G_GNUC_PRINTF(2, 3);
void desk_warn_error(Desk *desk, GError *error); // takes the error
void desk_last(Desk *desk, const char *format, ...) G_GNUC_PRINTF(2, 3);
// The same of the newest entry here (last_seq), which who works here entered: without its clock and
// its verdict, which is told as it stands whenever row 23 is painted.
void desk_last_entry(Desk *desk, const char *format, ...) G_GNUC_PRINTF(2, 3);
// What was done last as row 23 has it: of an entry what is wrong with it now, the clock and the
// initials behind it, and the time since where that is some minutes; long words give way to these.
// The caller frees with g_free.
char *desk_last_words(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// Where nothing was entered here yet in the build in hand: the newest entry of who works here is
// what was done last, and what a strike takes back.
void desk_recall(Desk *desk);

// Where a build stands: the step picked up or put down last.
typedef struct {
    const PlanStep *step; // NULL if none was begun
    gboolean in_hand;     // picked up, and neither put down nor signed since
    gboolean closed;      // signed since, or nothing is left of it: nobody need go on with it
    const Entry *entry;   // that says so
} Standing;

Standing standing_of(Session *session);

// Nobody has pressed a key here for that many seconds: if the person who works here has work in
// hand and entered nothing meanwhile at another terminal either, it is put down, as an
// interruption.
void desk_fall_asleep(Desk *desk, Moment seconds);
// Whether the work that this person had in hand here, when it was asked last, was put down since:
// by that, or at another terminal.
gboolean desk_was_put_down(Desk *desk);

// Warns once when the clock says an earlier time than it or an entry of the build in hand did
// before: small boards have no battery for it. A step of a minute is none.
void desk_watch_clock(Desk *desk);

// Takes in what others have entered; TRUE if there was something.
gboolean desk_catch_up(Desk *desk);

// The build numbers (char *): those that this shop began, newest first, then those that came from
// another one. The caller frees with g_ptr_array_unref.
GPtrArray *desk_numbers(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// The build with the newest entry, NULL if there is none. The caller frees with g_free.
char *desk_latest(const Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// `TL-0412 Marigold  H23-4/01187`: the build and what it is of. The caller frees with g_free.
char *desk_title(const Desk *desk, const char *number) G_GNUC_WARN_UNUSED_RESULT;
// The engine that a build is of; NULL where the shop does not know it. It belongs to the shop.
const Entry *desk_engine(const Desk *desk, const char *number);
