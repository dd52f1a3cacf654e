// The adviser of settings by trial: something is moved, read loose, tightened and read again;
// tightening shifts the reading, and only what is read tightened counts. From the moves and
// readings of one setting it works out the next move, the loose reading at which to tighten, what
// to expect, and when to leave it. Pure: the same entries give the same advice. Doubles serve here
// because no verdict depends on this: the limits are judged by decision.h alone.
//
// The model: given the slope (reading per unit moved), the loose level of each place, the shift of
// tightening, its repeat error and the share by which tight answers a move more than loose does are
// jointly normal, and each entry is an update of a Kalman filter (R. E. Kalman 1960, J. Basic Eng.
// 82, 35). The slope is a table of nodes with weights. A reading is a window, not a bell: a value
// rounded to a graduation cannot be half a graduation off; the two moments of the normal in the
// window replace it (moment matching; box for one reading, triangle for the difference of two). The
// tightest place is C. E. Clark's minimum of jointly normal values (1961, Oper. Res. 9, 145). The
// constants and their why stand in setting_state.h, what they come to in tests/bench/setting.
//
// The interval of the first trial is that of usual engines: nothing shows before it which engine
// is not. One that covers 97 % of usual engines covers 75 (fine gauge) to 93 % (coarse) of those
// whose shift repeats to 15 %, and 43 to 88 % of those that answer 10 % more tight (bench_setting,
// 1,000 engines a gauge, all intervals widened alike). A second set of nodes for rough engines
// covered a hundredth more, at twice the time.
//
// Units: all values (limits, aim, graduation, readings, shift) in any one unit; all moves (travel,
// steps, hand, positions) in any one other; the slope is values per move. Places count from 0.
#pragma once
#include <glib.h>

// What an earlier build of the family has shown, or this one so far.
typedef struct {
    double ln_slope, ln_slope_sd; // natural log of |reading per unit moved|, and its sd
    double shift, shift_sd;       // tightened minus loose
    double rises;                 // chance that the reading rises with the move
} SettingLearned;

// What is known before anything is read; NAN is "not known" or "none".
typedef struct {
    double least, most;               // limits; one may be NAN
    double aim;                       // of the tightest place; where wear closes, of the loosest
    gboolean closes;                  // wear closes
    double graduation;                // of the gauge, above 0
    gboolean difference;              // a value is the difference of two readings
    guint places;                     // at which it is read tightened, at least 1
    double geometry;                  // |reading per unit moved|, NAN not known
    double geometry_within;           // the factor that the geometry is good to, 1 for exact
    int direction;                    // 1: the reading rises with the move, -1: falls, 0: not known
    double direction_doubt;           // chance that a direction given is wrong after all
    double start;                     // position of the adjuster before the first move
    double travel_least, travel_most; // positions it can take, NAN not known
    double step;                      // the least named step, 0 for none
    const double *stock;              // the only positions there are (shims), or NULL
    gsize stock_count;
    double hand;                   // sd with which a move is made; 0 for a stock list
    double lost;                   // lost motion when the side of approach was not kept
    gboolean absolute;             // positions can be found again (marks, shims)
    gboolean loose;                // it is read loose, at place 0, before it is tightened
    int shift_sign;                // 1: tightening adds, -1: it takes away, 0: not known
    double floor;                  // no reading can be below (0 for a backlash), for showing only
    const SettingLearned *earlier; // earlier builds of the family
    gsize earlier_count;
} SettingModel;

// All unknown: one place, the hand 1/48 (of a turn), read loose; the geometry good to a
// factor 2, a direction wrong 1 in 100.
void setting_model_init(SettingModel *model);

typedef enum {
    SETTING_NOTHING,
    SETTING_SLIP,         // does not follow from the move: `was` expected, `is` read
    SETTING_SHIFT,        // `was` the shift before, `is` the shift seen
    SETTING_PLACE,        // `place` stands otherwise to the others: `was` expected, `is` read
    SETTING_WRONG_WAY,    // answers the other way: `is` the chance
    SETTING_SLOPE_OFF,    // `is` times the geometry
    SETTING_CANNOT,       // spread `was` and the gauge's `is` leave no room between the limits
    SETTING_COARSE,       // as near as the gauge can tell: `was` in 1; one of `is` would settle it
    SETTING_OUT_OF_REACH, // the adjuster ends before the aim: at its stop expect `is`
    SETTING_TOO_MANY,     // `is` moves: stop adjusting and look for a cause
    SETTING_FINDINGS      // how many kinds there are
} SettingFindingKind;

typedef struct {
    SettingFindingKind kind;
    guint event;    // of which entry: 1 for the first call of moved, tightened or read; 0 for none
    guint place;    // of a reading
    double tail;    // of a reading, two-sided, before it was used; 1 for the first
    double was, is; // see the kinds
} SettingFinding;

typedef struct _SettingAdviser SettingAdviser;

// NULL if the model cannot serve: no limit, no aim, limits without width, no graduation or no
// place. The model and its arrays are copied.
SettingAdviser *setting_adviser_new(const SettingModel *model);
void setting_adviser_free(SettingAdviser *adviser);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(SettingAdviser, setting_adviser_free)

// The entries, in their order. What is struck is left out, and all others are told again to a new
// adviser. A move by `move`, loosened if it was tight; `same_side`: the side of approach was kept.
// Before the first reading it says where the adjuster stands, and nothing of how it answers.
void setting_moved(SettingAdviser *adviser, double move, gboolean same_side);
void setting_moved_to(SettingAdviser *adviser, double position, gboolean same_side);
void setting_tightened(SettingAdviser *adviser);
// A reading; `tight` ones after setting_tightened. Returns its tail, and the kind of contradiction
// if it is one. An adviser goes on from a contradiction with less trust in what went before.
SettingFinding setting_read(SettingAdviser *adviser, guint place, double value, gboolean tight);
// No more places will be read tightened: a first one far outside is enough to move on.
void setting_read_enough(SettingAdviser *adviser);

typedef enum {
    SETTING_READ_LOOSE,     // nothing has been read since the move
    SETTING_READ_TIGHT,     // it is tightened and not all places are read
    SETTING_MOVE,           // `move`, then read loose (or tighten, where it is not read loose)
    SETTING_MOVE_DIRECTION, // `move`, to see which way it answers
    SETTING_TIGHTEN,        // tighten as it stands
    SETTING_READ_AGAIN,     // read all places again as they stand, before it is left
    SETTING_LEAVE,          // leave it as it stands, tightened
    SETTING_STOP,           // no move serves: see the findings
} SettingKind;

// A value to expect: its mean and the ends of its 95 % interval, for the value itself; what the
// gauge shows of them is the caller's rounding.
typedef struct {
    double mean, from, to;
} SettingExpected;

typedef struct {
    SettingKind kind;
    double move, to;      // by and to which position; 0 and the present one without a move
    long steps;           // the move in named steps; 0 where there are none
    gboolean safe_side;   // the move stops short, as the slope is hardly known
    gboolean leads_loose; // after the move it is read loose, not tightened at once
    double chance;        // that the tightest place ends where it is wanted, after the advice
    double as_it_is;      // the same for tightening now, or for leaving it once tightened
    double overrun;       // chance of being beyond the far limit after the advice
    double could;         // chance that nameable moves can come to, once the slope is known
    double spread;        // between the tightest and the loosest place, expected
    SettingExpected tightest, loosest; // tightened, after the advice (as it is, once tightened)
    guint finding_count;               // contradictions since the last move, and what holds now
    SettingFinding findings[2 * SETTING_FINDINGS];
} SettingAdvice;

SettingAdvice setting_advice(const SettingAdviser *adviser);

// The loose readings at place 0, in whole graduations, at which to tighten after the move of
// `advice`; what to expect, tightened, at the best of them, at place 0, at the tightest and at the
// loosest place.
typedef struct {
    double from, to, best;
    SettingExpected first, tightest, loosest;
} SettingBand;

// FALSE where the advice is no move that is then read loose, or no reading would do.
gboolean setting_band(const SettingAdviser *adviser, const SettingAdvice *advice,
                      SettingBand *band);

// What is expected of a place tightened, as it stands: with this tightening while it is tight,
// else with the next.
SettingExpected setting_expected(const SettingAdviser *adviser, guint place);

// The same as the gauge shows it: mean and both ends in whole graduations, the ends of a difference
// of two readings widened by half a graduation first; nothing below the floor.
SettingExpected setting_as_read(const SettingAdviser *adviser, SettingExpected expected);

SettingLearned setting_learned(const SettingAdviser *adviser);
