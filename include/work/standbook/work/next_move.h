// What the adviser of the rules makes of the trials of a setting: the next move, and what to expect
// of it. Pure.
//
// The ledger is told to the adviser anew each time. What was struck is left out by the trials; left
// out here are readings that evidence puts in doubt: what was read tightened with a wrench found
// wrong, or with a gauge found wrong, what follows a struck move. An uphold brings them back.
#pragma once
#include <standbook/rules/setting.h>
#include <standbook/work/trials.h>

// Why one adjuster for all places cannot be advised.
typedef enum {
    NEXT_MOVE_SPEAKS,
    NEXT_MOVE_MANY_AIMS,      // its places have different limits
    NEXT_MOVE_MANY_ADJUSTERS, // a move names a place, so each seems to have its own
} NextMoveMute;

typedef struct {
    gboolean known; // FALSE: it cannot advise, and the rest but `mute` says nothing: there is no
                    // limit or no aim, or it is mute
    NextMoveMute mute;
    SettingAdvice advice; // values in base units of the check, moves in those of its setting
    gboolean banded;
    SettingBand band; // with `banded`: the loose readings at which to tighten after the move, or
                      // after the move just made
    SettingLearned learned;
    gboolean answered;  // what was read behind a move has told how it answers
    guint earlier;      // earlier settings that it started from: of builds, of other places
    guint told, tight;  // readings it was told, and those of them that were tightened
    guint doubted;      // tightened readings left out because they are in doubt
    Number *graduation; // of the gauge, base units: that of the newest reading
    GArray *places;     // with `banded`: double, what each place should read then, tightened
    gboolean loosest;   // the aim is that of the loosest place, not of the tightest
} NextMove;

// Works it out for trials that are judged. `earlier`: SettingLearned of earlier builds, or NULL.
// The caller clears it with next_move_clear.
NextMove next_move_of(const Trials *trials, const GArray *earlier);
void next_move_clear(NextMove *next);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(NextMove, next_move_clear)

// Where it aims, in base units of the check; NAN where no limit or no aim is known, or where places
// with limits of their own have each an aim. `loosest`: of the loosest place, not of the tightest.
double next_move_aim(const Trials *trials, gboolean *loosest);

// The standard deviation of the log of how much a setting answers, by the plan's word alone; NAN
// where it cannot be advised.
double next_move_supposed(const Trials *trials, const NextMove *next);

// What trials_next asks, led by the advice: a loose reading outside its band asks for a move before
// anything is tightened, and so does a try that passes though another move would bring it nearer to
// the aim that the plan names for places set together; where each place is set by itself, or the
// plan names no aim, what passes is done. One that is left in doubt by its gauge is read again,
// place by place.
TrialNext next_move_ask(const NextMove *next, const Trials *trials, TrialNext asked);

// What the adviser finds of a loose reading of a place that is needed, base units, were it read
// next: its tail, and whether it contradicts what went before. The advice on these trials is known.
SettingFinding next_move_finding(const Trials *trials, const GArray *earlier, guint place,
                                 double value);

// The place of the trials that the adviser knows by that number: it knows only those that are
// needed.
guint next_move_place(const Trials *trials, guint told);

// Whether it advises a move.
gboolean next_move_moves(const NextMove *next);

// Whether judged trials can teach the next build of their family, or a place the others: they have
// a tightened reading, and tell how the setting answers a move. One that was only read would give
// what was supposed of it as if it had been seen. `*learned` is what they teach.
gboolean next_move_teaches(const Trials *trials, SettingLearned *learned);
