// What the files of the adviser share. Inside, all values are in widths of the tolerance T, and
// mirrored where wear closes, so that the least value is always the tightest.
#pragma once
#include <gsl/gsl_integration.h>
#include <standbook/rules/setting.h>

// The constants, lengths in T. Simulation showed them flat: half or twice any of the thresholds
// moves the mean number of trials by less than 3 %.
typedef struct {
    double geometry_edge, geometry_flat; // ln slope: sd beyond what it is good to; 5 % flat
    double exact;                        // geometry exact: sd of what is of a move, and its doubt
    double slope_off;                    // ln slope beyond what it is good to: something is wrong
    double blind_reach;                  // no geometry: flat to a factor 4
    double level, own;                   // sd of the level of all places, and of each
    double shift, shift_signed;          // sd of the shift: uniform to ± T has 0.58; sign known
    double repeat_least, repeat;         // a shift repeats to about 5 %
    double curve;                        // of a move: slope changes by 10 % over the travel
    double ratio, drift;                 // tight unlike loose: of all moves together, of each alone
    double family_slope, family_shift;   // engine to engine, until a family has four builds
    double family_weight;                // the rest stays with the geometry
    double far_cap, far_cap_read;        // chance of overrunning allowed; read before tightening
    double worth_turning, worth_again, worth_tightening; // gains in chance
    double left_at_once;  // chance at which it is left without being read twice
    double miss;          // weight of the distance from the aim against the chance
    double passing;       // weight of overrunning against the chance
    double contradiction; // tail of a reading
    double smoothing;     // in ln slope, after a contradiction
    double sure;          // chance at which a finding is said
} SettingConstants;

extern const SettingConstants setting_constants;

// Given the slope all else is jointly normal, in this order: the loose level at each place, then
// the shift, the repeat error of this tightening, the share by which tight answers more than loose
// and, where positions can be found again, how far the hand is off here.
typedef struct {
    double lambda;    // ln of |slope| over the geometry
    double slope;     // T per unit moved, with its sign
    double ln_weight; // not normalised
    double *mean;     // size
    double *cov;      // size rows of size
} SettingNode;

// Gauss-Legendre of 8 points for pieces at most two sd wide, of 20 for others: both to 1e-9.
typedef struct {
    gsl_integration_glfixed_table *narrow, *wide;
} SettingQuadrature;

typedef struct {
    guint places, size, count;
    gboolean absolute;
    const SettingConstants *constants;
    double *numbers; // of all nodes
    SettingNode *nodes;
    SettingQuadrature quadrature;
} SettingState;

enum { SETTING_HERE = 16 };

static inline guint setting_shift_at(const SettingState *state)
{
    return state->places;
}

static inline guint setting_repeat_at(const SettingState *state)
{
    return state->places + 1;
}

static inline guint setting_ratio_at(const SettingState *state)
{
    return state->places + 2;
}

static inline guint setting_hand_at(const SettingState *state)
{
    return state->places + 3;
}

struct _SettingAdviser {
    SettingModel model;
    const SettingConstants *constants; // they are `own`
    SettingConstants own;
    double width, sign;       // T in values; -1 where wear closes
    double lo, hi, aim, half; // inside; lo and hi may be infinite; half the window, T/4
    double graduation;        // inside
    double geometry;          // inside, T per unit moved, of λ = 0
    SettingState *state;
    double position;
    guint events;
    guint turns;       // moves since it was last tight
    guint moves;       // trials that began with a move
    guint trials;      // tightenings with at least one reading
    guint loose_reads; // since the last move or tightening
    gboolean started;  // something has been read
    gboolean tight;
    gboolean loose_odd; // the last loose reading was a contradiction
    gboolean *read;     // places read since it was tightened
    guint read_count;
    gboolean read_enough;           // though not at all places
    guint tight_reads;              // since it was tightened, twice read ones included
    double tight_least, tight_most; // read since it was tightened last
    guint here_count;               // contradictions since the last move
    SettingFinding here[SETTING_HERE];
};

// A normal of a mixture.
typedef struct {
    double weight, mean, variance;
} SettingPart;

// setting_slopes.c
// The nodes with their prior weights and an empty normal part.
SettingState *setting_state_new(const SettingAdviser *adviser);
SettingState *setting_state_copy(const SettingState *state);
void setting_state_free(SettingState *state);
// Levels before the first reading `value`; shift, repeat and hand.
void setting_state_start(SettingAdviser *adviser, double value);
// The weights, normalised; `count` of the state. The caller frees.
double *setting_weights(const SettingState *state) G_GNUC_WARN_UNUSED_RESULT;
// Spreads the weights over the slopes nearby, those given up included.
void setting_smooth(SettingState *state);
gboolean setting_is_given_up(const SettingNode *node);
// Gives up slopes with less than e⁻⁶⁰ of the likeliest one's weight: they are followed no more.
void setting_give_up(SettingState *state);
typedef struct {
    double mean, sd, rises; // of λ, and the weight of slopes above 0
    double outside;         // weight of |λ| beyond what the geometry is good to
} SettingSlopes;
SettingSlopes setting_slopes(const SettingAdviser *adviser);

// setting_update.c
void setting_state_move(SettingState *state, double move, double hand, double lost);
void setting_state_tighten(SettingState *state);
// What the repeat error of the next tightening varies by.
double setting_repeat_variance(const SettingState *state, const SettingNode *node);
// The places, rows and columns that are trusted less by a variance of 1 (T²) after a contradiction.
void setting_state_doubt(SettingState *state, SettingFindingKind kind, guint place);
// What a reading is expected to be: `tail` of `value` and the mean, over all slopes.
typedef struct {
    double tail, mean;
} SettingForecast;
SettingForecast setting_state_forecast(const SettingAdviser *adviser, guint place, gboolean tight,
                                       double value);
// Takes a reading; FALSE if it lies outside the window of every slope.
gboolean setting_state_read(const SettingAdviser *adviser, guint place, gboolean tight,
                            double value);
// Mean and variance of a place, loose or tightened as it stands, at one node.
SettingPart setting_node_value(const SettingState *state, const SettingNode *node, guint place,
                               gboolean tight);

// setting_window.c
SettingQuadrature setting_quadrature_new(void);
void setting_quadrature_free(SettingQuadrature quadrature);
// The normal (mean, variance) in the window of a reading: its moments there and ln of its weight.
// `missed`: it lies so far outside that a normal window is put in its place.
typedef struct {
    double mean, variance, ln_weight;
    gboolean missed;
} SettingWindow;
SettingWindow setting_window(const SettingQuadrature *quadrature, double mean, double variance,
                             double value, double graduation, gboolean difference);
// The variance of the window itself.
double setting_window_variance(double graduation, gboolean difference);

// setting_smallest.c
// Clark's minimum of `count` jointly normal values (the first rows of a covariance with `size`
// columns), taken in order, times `sign` (-1: minus the greatest); and its covariance with each of
// the `size` columns.
typedef struct {
    double mean, variance;
} SettingSmallest;
SettingSmallest setting_smallest(const double *mean, const double *cov, guint count, guint size,
                                 double sign, double *with);

// setting_mixture.c
double setting_normal(double x);         // the cumulative normal distribution
double setting_normal_density(double x); // and its density
// Mean and 2.5 and 97.5 % quantiles of a mixture of normals.
SettingExpected setting_mixture(const SettingPart *parts, guint count);

// setting_outlook.c
// The tightest place at the nodes that have weight: as it stands tightened (`now`), tightened anew
// without a move (`next`) and after a move, to which the move's own share is added (`moved`).
typedef struct {
    double weight, slope, lambda;
    double now_mean, now_variance, next_mean, next_variance, moved_mean, moved_variance;
    double ratio, ratio_variance, ratio_with; // and its covariance with the value moved by 0
} SettingView;

typedef struct {
    SettingView *views;
    guint count;
    double hand, noise;  // sd of the hand, in moves; what the path of a move adds, of its square
    double lo, hi, aim;  // of the values
    double from, to;     // the window of the tightest place
    double spread, mean; // expected; `mean` of the tightest place moved by 0
    double ln_slope, ln_slope_sd; // of |slope|, T per unit moved
} SettingOutlook;

typedef enum { SETTING_NOW, SETTING_NEXT, SETTING_MOVED } SettingWhen;

// The caller clears it with setting_outlook_clear.
SettingOutlook setting_outlook(const SettingAdviser *adviser);
void setting_outlook_clear(SettingOutlook *outlook);
// Chance of the window, of overrunning, of being beyond either limit, and mean distance from the
// aim; `move` for SETTING_MOVED.
typedef struct {
    double inside, overrun, outside, miss;
} SettingChance;
SettingChance setting_chance(const SettingOutlook *outlook, SettingWhen when, double move);
double setting_could(const SettingAdviser *adviser, const SettingOutlook *outlook);
// The chance of the window less what being beyond a limit weighs beside it.
double setting_merit(const SettingAdviser *adviser, SettingChance chance);

// setting_choice.c
typedef struct {
    double move;
    SettingChance chance;
    gboolean at_end; // of the travel
} SettingChoice;
// The best move there is, its chance of overrunning at most `cap` if that can be.
SettingChoice setting_choice(const SettingAdviser *adviser, const SettingOutlook *outlook,
                             double cap);
// The nearest move there is to `move`, not nought if that can be.
double setting_choice_near(const SettingAdviser *adviser, double move);
// How far the adjuster can be moved from where it is; infinite where not known.
void setting_travel(const SettingAdviser *adviser, double *least, double *most);

// setting_advice.c
// Whether the rule says to tighten as it stands after a loose reading; *chance is P0.
gboolean setting_says_tighten(const SettingAdviser *adviser, double *chance);
// What is expected, tightened: the first, the tightest (0) or the loosest (1) place.
SettingExpected setting_expect_end(const SettingAdviser *adviser, const SettingOutlook *outlook,
                                   SettingWhen when, double move, gboolean loosest);

// setting.c
// An adviser by other constants than the usual ones, which are copied.
SettingAdviser *setting_adviser_new_by(const SettingModel *model,
                                       const SettingConstants *constants);
double setting_outward(const SettingAdviser *adviser, double inside);
SettingExpected setting_expected_outward(const SettingAdviser *adviser, SettingExpected inside);
