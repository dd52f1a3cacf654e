// A plan, read and found without fault. Everything in it stands in the order of the file, keeps
// its place there, and belongs to the plan; nothing changes once it is read.
#pragma once
#include <glib.h>
#include <standbook/plan/fault.h>
#include <standbook/plan/labels.h>
#include <standbook/plan/stage.h>
#include <standbook/plan/tree.h>
#include <standbook/value/limits.h>

typedef struct Plan Plan;
typedef struct PlanStep PlanStep;
typedef struct PlanCheck PlanCheck;
typedef struct PlanGroup PlanGroup;
typedef struct PlanPart PlanPart;

// How far reading has come with what a formula can name.
typedef enum { BINDING_NOT_YET, BINDING_NOW, BINDING_DONE, BINDING_FAULTY } PlanBinding;

// A name as a plan uses it, and what it names: exactly one of check, group and part. `main caps in
// Crank` names the tightening of a group in that step, `inlet lash in Retorque` the reading again
// of a check there; without a step, `step` is NULL.
typedef struct {
    const TreeNode *node; // its text and place
    const PlanCheck *check;
    const PlanGroup *group;
    const PlanPart *part; // in `with` and `rests on` only
    const PlanStep *step;
} PlanName;

// A constant: one formula, or a number for each label of an axis.
typedef struct {
    const char *name;
    const TreeNode *node; // a text, or a mapping of labels
    const Axis *axis;     // of the labels, NULL for one formula
    Kind kind;
    Array *value;      // its ± have sources below 0, unique in the plan
    PlanBinding state; // while reading
} PlanGiven;

typedef struct {
    const char *name;
    const char *kind;                             // NULL if it is not said
    Number *fit_within, *fluid_after, *run_after; // seconds, NULL if there is none
    const TreeNode *node;
} PlanConsumable;

struct PlanPart {
    const char *name;
    const PlanStep *step;
    GPtrArray *axes;     // const Axis *: its places; empty for one place
    guint count;         // how many are fitted at each place, at least 1
    gboolean new_needed; // use: new
    const char *track;   // `lot`, `serial`, or NULL
    const char *formerly;
    const TreeNode *node; // its value, or its name in a list
};

// What is asked of a check's place.
typedef struct {
    const char
        *label;   // a label of an axis of the check, or of several in order (`1, T`); NULL: all
    GStrv labels; // the same one by one; NULL likewise
    Limits *limits;
    const TreeNode *node;
} PlanLimit;

typedef enum {
    AIM_NONE,
    AIM_VALUE,    // `0.10`
    AIM_SMALLEST, // `smallest 0.10`: the least of all places
    AIM_LOW,      // 0.3 of the tolerance inside the minimum, at the smallest place
    AIM_HIGH,     // likewise inside the maximum
} PlanAim;

// What another person signs before the step is done.
typedef struct {
    const char *words;
    guint persons; // 1 (a second person) or 2
} PlanHold;

// A value set by adjusting and reading. Moves are in base units of `unit`; where the unit is a word
// of its own (`notch`), or none is said, they are pure numbers.
typedef struct {
    const char *move;      // what is moved
    const char *unit_text; // as written, NULL if not said
    Unit *unit;            // NULL if it is a word of its own or not said
    Number *least, *most;  // the range, NULL where it is open or not said
    Number *step;          // the smallest move, NULL if not said
    GPtrArray *stock; // Number *: the only positions there are (shims), by size; NULL if not said
    Number *gives;    // what one unit moved adds to the reading, in base units of the check: with
                      // its sign, or its size alone where `direction` is 0; NULL if not said
    gint direction;   // moving up makes the reading greater (1) or smaller (-1); 0: not said
    const char *zero; // where moves are counted from, NULL if not said
    gboolean loose;   // also read loose
    gboolean each;    // each place has an adjuster of its own and is set by itself
    GArray *inputs;   // PlanInput: what is read in a trial, in the order it is asked for
} PlanSetting;

// One reading that a place of a setting needs: the place itself, or where the setting is a formula,
// a place of a check that it uses, which is read in the same step and is neither a setting of its
// own nor a finding. What serves several places stands at each. None where one of an axis is
// chosen.
typedef struct {
    const PlanCheck *check;
    guint place; // of its axes
    guint of;    // the place of the setting
} PlanInput;

struct PlanCheck {
    const char *name;
    const PlanStep *step;
    const char *formula_text; // as written, NULL for a check that is read
    Formula *formula;         // likewise
    gboolean by_plan;         // it is a formula of the constants of the plan alone
    gint first_doubt;         // for FormulaContext: the source of its first ±
    guint line, column;       // of the name
    guint formula_column;     // of the formula, in the same line
    GPtrArray *axes;   // const Axis *: its places, of a formula those of its result; empty for one
    GPtrArray *places; // const Axis *: the axes along which it is judged: without the one chosen
    LimitsForm asks;   // what a reading is: LIMITS_VALUE also where it has no limits
    GPtrArray *limits; // PlanLimit *: empty without limits, one, or one for each label
    Kind kind;         // of its value
    Unit *unit;        // in which it is read and shown; NULL for a pure number or an answer
    guint decimals;    // shown behind the point: the plan's, else the most of its limits
    gboolean decimals_said; // the plan says them, and no value is shown with more
    Number *wear;           // the service limit in base units, NULL if there is none
    gboolean wear_above;    // wear opens: the service limit lies above the limits
    Number *doubt;          // U (k = 2) of its method in base units, NULL if there is none
    PlanAim aim;
    Number *aim_value;          // of AIM_VALUE and AIM_SMALLEST, in base units
    const char *gauge, *source; // the nearest said: by itself, its step, the plan; or NULL
    const char *choose;         // the axis, NULL if nothing is chosen
    PlanSetting *setting;
    GPtrArray *moved_by; // const PlanCheck *: the settings whose moves disturb it: itself, or those
                         // whose inputs it has; a formula only where nothing is read for it
    GPtrArray *with, *settled_by; // PlanName *
    GPtrArray *rests_on; // PlanName *: what is said, and of a setting what it is read with that is
                         // tightened first in its step, to stay, and that no `rests on` names
    gboolean by_decision;                    // settled by: decision
    gboolean finding;                        // has `settled by`
    gboolean optional;
    const char *feature; // the check's name if nothing is said
    const char *formerly;
    const TreeNode *node; // its value; its key has its place
    PlanBinding state;    // while reading
    gboolean used;        // by a formula, a limit or a stage
};

// The physical bolts, and how they are first tightened.
struct PlanGroup {
    const char *name;
    const PlanStep *step;
    GPtrArray *axes; // const Axis *: positions; one axis `bolt` where plain labels are written
    const TreeNode *layout, *thread, *strength, *clamps, *adapter, *source; // as written, or NULL
    Number *length, *ceiling, *instead_of; // in base units, NULL if not said
    GPtrArray *lubricants;                 // PlanLubricant *
    gboolean new_needed;                   // use: new
    gboolean once;                         // use: once
    const char *track;                     // `lot`, `serial`, or NULL
    GPtrArray *with_new;                   // const char *
    gboolean then_off;                     // a mock-up taken down again
    gboolean as_group;                     // log: group
    gboolean mark;                         // asks for a witness mark
    const char *formerly;
    const TreeNode *node; // its value; its key has its place
};

typedef struct {
    const char *words;
    gboolean *positions; // one for each position of the group: whether it has this one
} PlanLubricant;

// Ordered stages over a group's bolts in one step.
typedef struct {
    const PlanGroup *group;
    const PlanStep *step;
    GPtrArray *stages;         // Stage *
    const TreeNode *stages_at; // where they are written
    gboolean again;            // a retighten
    guint *order;              // positions in the order asked, as many as the group has
    guint *each;               // for each position the run it belongs to (0 for all without `each`)
    guint line, column;        // of its name
} PlanTightening;

struct PlanStep {
    const char *name;
    guint index;     // in the plan, from 0
    guint64 *before; // bits by index: the steps that must come before it
    guint gate;      // in the plan's gates, from 0
    const char *phase;
    guint minutes;                     // 0 if not said
    GPtrArray *dos, *cautions, *hides; // const char *
    GPtrArray *after;                  // PlanStep *
    GPtrArray *closes, *read_again;    // PlanName *
    GPtrArray *holds;                  // PlanHold *
    GPtrArray *uses;                   // PlanConsumable *
    const char *begins;                // `fluid`, `run` or NULL
    GPtrArray *parts;                  // PlanPart *
    GPtrArray *checks;                 // PlanCheck *
    GPtrArray *tightenings;            // PlanTightening *: fasteners, then retighten
    const char *formerly;
    const TreeNode *node; // its value; its key has its place
};

struct Plan {
    const char *name, *revision, *family, *source; // NULL if not said, but the name
    GPtrArray *units;       // Unit *: one of a kind; the first for bare numbers
    GPtrArray *gates;       // const char *, at least one
    GPtrArray *axes;        // Axis *
    GPtrArray *given;       // PlanGiven *
    GPtrArray *consumables; // PlanConsumable *
    GPtrArray *steps;       // PlanStep *
    GHashTable *checks;     // by name
    GHashTable *groups;     // by name
    GHashTable *parts;      // by name
    TreeNode *tree;         // as written
    GStringChunk *words;    // texts taken out of longer ones
    GPtrArray *pairs;       // Axis *: axes written in place
    gint next_doubt;        // the source of the next ±, below 0
    guint places;           // of all axes written in place
    guint added;            // additions of a build among its nodes (extend.h); 0 as read
    Faults *notices;        // what is right but worth a look: places that a formula drops
    guint excused;          // faults by rules made since it was taken, which are notices too
};

// Reads a plan file. Returns the plan, or NULL with at least one fault added; all faults of the
// file are found in one run, sorted by place, and a faulty name, formula or group still counts as
// defined. The caller frees with plan_free.
Plan *plan_read(const char *bytes, gsize length, Faults *faults) G_GNUC_WARN_UNUSED_RESULT;

// The same of a plan that was read without fault once and is kept since: it stays readable, so what
// rules made later find wrong with it is only a notice.
Plan *plan_read_kept(const char *bytes, gsize length, Faults *faults) G_GNUC_WARN_UNUSED_RESULT;
void plan_free(Plan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Plan, plan_free)

// By name; NULL if there is none.
const Axis *plan_axis(const Plan *plan, const char *name);
const PlanStep *plan_step(const Plan *plan, const char *name);
const PlanCheck *plan_check(const Plan *plan, const char *name);
const PlanGroup *plan_group(const Plan *plan, const char *name);
const PlanPart *plan_part(const Plan *plan, const char *name);
// Whether two plans are for engines of one family: they name the same; plans that name none are of
// one family only if they are called the same.
gboolean plan_is_family(const Plan *one, const Plan *other);
// Whether a step asks once more for a check of an earlier one.
gboolean plan_reads_again(const PlanStep *step, const PlanCheck *check);
// How the group of that name is tightened in a step; NULL if it is not.
const PlanTightening *plan_tightening(const PlanStep *step, const char *group);
// What is asked at a place of these labels, one for each axis: the first limits whose own stand
// among them in this order; NULL where there are none. They belong to the check.
const PlanLimit *check_limit_at(const PlanCheck *check, const char *const *labels);
// `0.31`: a value of the check (base units), or a difference of two, with the check's decimals and
// without its unit. Where the plan says no decimals, a value that was read has up to six more, so
// that no digit typed is hidden, and so has one worked out that has no limits. The caller frees
// with g_free.
char *check_value_words(const PlanCheck *check, const Number *value) G_GNUC_WARN_UNUSED_RESULT;
// The same of a value that was typed with so many decimals, which are shown where the plan does not
// say how many: `80.00`.
char *check_typed_words(const PlanCheck *check, const Number *value,
                        guint typed) G_GNUC_WARN_UNUSED_RESULT;
// `80.00 mm`: the same with the unit.
char *check_typed_shown(const PlanCheck *check, const Number *value,
                        guint typed) G_GNUC_WARN_UNUSED_RESULT;
char *check_width_words(const PlanCheck *check, const Number *width) G_GNUC_WARN_UNUSED_RESULT;
// `.005`: the size of a doubt (U in base units, above 0) in the check's decimals, rounded up since
// it must not look smaller than it is, without a leading 0. One that would not reach the last
// decimal has up to three more, so that it is not blown up either. The caller frees with g_free.
char *check_doubt_words(const PlanCheck *check, const Number *doubt) G_GNUC_WARN_UNUSED_RESULT;
// The same beside a value that was typed with so many decimals (check_typed_words): with as many
// decimals as the value is shown with, at most five unless the check has more. `.125` beside 2.625.
char *check_doubt_beside(const PlanCheck *check, const Number *value, guint typed,
                         const Number *doubt) G_GNUC_WARN_UNUSED_RESULT;
// Values (base units) in that many decimals more than the check's. The caller frees with g_free.
char *check_words_finer(const PlanCheck *check, const Number *value,
                        guint more) G_GNUC_WARN_UNUSED_RESULT;
// A value that somebody else states (base units), the difference to one, and the size of a doubt
// beside a stated one: with the check's decimals, or as many more as the figure, or `stated`, needs
// to be whole, up to six. The caller frees with g_free.
char *check_stated_words(const PlanCheck *check, const Number *value) G_GNUC_WARN_UNUSED_RESULT;
char *check_stated_width(const PlanCheck *check, const Number *width) G_GNUC_WARN_UNUSED_RESULT;
char *check_stated_doubt(const PlanCheck *check, const Number *doubt,
                         const Number *stated) G_GNUC_WARN_UNUSED_RESULT;
// `1.6875`: a limit of the check (base units), and how far a value lies outside one: with the
// check's decimals, or as many more as it needs to be whole, so that nothing seems to pass or fail
// by rounding: up to six decimals, or three more than the check has. What has no end is cut there
// at three more. The caller frees with g_free.
char *check_limit_words(const PlanCheck *check, const Number *limit) G_GNUC_WARN_UNUSED_RESULT;
char *check_excess_words(const PlanCheck *check, const Number *excess) G_GNUC_WARN_UNUSED_RESULT;
// `2 17/32 -.00035`: a value of a check read in inches as the nearest 64th and what is over, with all
// the digits it has; `2 5/8` where nothing is over that the check's decimals, and three at least,
// would show. NULL for other units, and for
// what lies nearer to 0 than to 1/64. The caller frees with g_free.
char *check_inch_words(const PlanCheck *check, const Number *value) G_GNUC_WARN_UNUSED_RESULT;
// One unit of the last place that the check shows, in base units. The caller frees.
Number *check_step(const PlanCheck *check) G_GNUC_WARN_UNUSED_RESULT;
const PlanConsumable *plan_consumable(const Plan *plan, const char *name);
// Whether it sets: a time runs from when it was laid.
gboolean consumable_has_clock(const PlanConsumable *consumable);
// Whether a setting can stand there (base units) by its stock; TRUE where the plan says none.
gboolean setting_has_stock(const PlanSetting *setting, const Number *position);

// The unit out of the plan's `units` that measures this kind; NULL if none does. It belongs to the
// plan.
const Unit *plan_unit(const Plan *plan, Kind kind);

// The unit in which bare torques of the plan stand, in stages, ceilings and what a wrench shows:
// the plan's unit of torque, N·m where `units` has none. The caller frees with unit_free.
Unit *plan_torque_unit(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;

// Whether `earlier` must come before `later` by `after`, directly or over others.
gboolean plan_step_follows(const PlanStep *later, const PlanStep *earlier);

// The number of places of some axes (const Axis *): 1 without axes.
guint places_count(const GPtrArray *axes);

// Whether two places agree on every axis they share, by name and label. Labels stand in the order
// of their axes; NULL for all places.
gboolean places_meet(const GPtrArray *axes, const char *const *labels, const GPtrArray *others,
                     const char *const *other_labels);

// The place at `index`, the last axis running fastest, by its labels: `3, front`; empty without
// axes. The caller frees with g_free.
char *places_label(const GPtrArray *axes, guint index) G_GNUC_WARN_UNUSED_RESULT;

// Places by their labels (const char *, as places_label has them, in any order), by position and in
// runs: `1 to 3, 5`, with several axes `1, front; 2, rear`. The caller frees with g_free.
char *places_runs(const GPtrArray *axes, const GPtrArray *labels) G_GNUC_WARN_UNUSED_RESULT;
