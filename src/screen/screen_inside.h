// What the files of the loop share: its state, and what one asks of another.
#pragma once
#include <standbook/screen/screen.h>

#include "term.h"
#include "view.h"

#include <standbook/book/aside.h>

typedef struct {
    const ViewOps *ops;
    gpointer state;
    char *before; // the build in hand that comes back when it closes; NULL: the one in hand stays
    char *typed;  // what waits till then to stand in the field again; NULL: nothing
} Opened;

// What a page asks, to be told from what the next one asks.
typedef struct {
    gconstpointer view; // its state
    char *next;         // its row 21
    Asks field;         // what is typed is for
    guint known;        // how many entries the builds had
} Painted;

typedef struct {
    Term *term;
    Desk desk;
    GArray *views; // Opened, the uppermost last
    Typing typing;
    Asks field;      // of the page that was painted last
    gboolean opened; // a view that was not painted yet
    guint rung;      // the number of the warning that the bell was rung for last
    gboolean brief;  // that one came together with a question, whose answers are to be seen
    Painted painted; // last
    gboolean stale;  // what is painted; to be painted again
    gboolean leave;
    gboolean parking;  // digits meant for what stood there before are the newest unplaced
    gint digit;        // the one that was parked alone at a question; -1: none
    gint tried;        // the one that was pressed last and answered nothing; -1: none
    gboolean wished;   // the key pressed last asked for what is painted next
    gboolean other;    // the page painted last asks what the one before did not
    gint64 answered;   // when a question was answered last, µs
    guint told_left;   // how many bursts unplaced it was said of that they are left here
    gint64 went_up;    // when the last key that goes up one screen was pressed, µs
    gint64 told_first; // when that key was told last that this is the first screen, µs
    Moment looked;     // when the clocks of all builds were last looked at
    guint known;       // how many entries stood in them then
    char *soonest;     // the clock that runs out first, in words; NULL if none runs
    Moment idled;      // when the views were last asked what they do by themselves
    gint64 caught_up;  // when others' entries were looked for last, µs
    gint64 pressed;    // when the last key was, µs
    Moment typed_at;   // and by the clock on the wall
    Aside *aside;      // keeps what is typed and not entered
    gint64 dozed;      // when work was put down for want of keys, or not, last, µs
} Screen;

// VIEWS

// The view so many below the uppermost.
Opened *screen_upper(const Screen *screen, guint below);
void screen_open(Screen *screen, ViewName view, const char *argument);
// Goes where a view says; the argument is taken.
void screen_go(Screen *screen, Go there);
// Closes the uppermost until so many are left.
void screen_close_to(Screen *screen, guint count);
// Opens what the uppermost view cannot go on without.
void screen_settle(Screen *screen);
// Give the uppermost view what was pressed, and go where it says.
void screen_act(Screen *screen, Action action);
void screen_enter(Screen *screen);
void screen_answer(Screen *screen, guint digit);
void screen_move(Screen *screen, gint direction);

// KEYS

// Does what a key says, and whatever comes with it.
void screen_take_keys(Screen *screen, Key key);
// The key, and whatever comes with it faster than a finger: Key, freed by the caller.
GArray *screen_gather(Screen *screen, Key key);
// Leaves the lines of a burst unplaced.
void screen_park(Screen *screen, const GArray *keys);
// Puts the work down if nobody has pressed a key for ten minutes.
void screen_fall_asleep(Screen *screen);
// Asks who picks up what was put down meanwhile, here or at another terminal; TRUE if it was.
gboolean screen_ask_who(Screen *screen);

// WHAT IS NOT ENTERED

// Takes up what programs that have ended left beside the store, and says so.
void screen_take_up(Screen *screen);
// Keeps beside the store what stands in fields, what is unplaced and what was begun.
void screen_keep(Screen *screen);
// What stands in the field is unplaced from now on, where a burst would be.
void screen_park_typed(Screen *screen);
// Likewise what waits under a question.
void screen_park_waiting(Screen *screen);
// The program ends: what was pressed, and did nothing yet, is typed or unplaced.
void screen_save_keys(Screen *screen, const GArray *keys);

// PAINTING

void screen_paint(Screen *screen);
