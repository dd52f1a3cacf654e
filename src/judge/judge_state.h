// What the walk through the entries gathers: of checks, bolts, parts, signatures, and the
// judgement.
#pragma once
#include <standbook/judge/assess.h>
#include <standbook/judge/other_gauge.h>
#include <standbook/plan/requirement.h>
#include <standbook/value/uncertainty.h>

typedef struct CheckState CheckState;
typedef struct SetState SetState;

// One tick that a reading was taken with.
typedef struct {
    guint tick;            // into Judge.ticks
    gboolean out_of_order; // as the bolts stood then
} BasisTick;

// What a reading or an answer was taken with.
typedef struct {
    GArray *ticks;  // BasisTick: of the bolts that its check is `with`; NULL for none
    gboolean slack; // one of them was not final, or a part not there
} Basis;

// One answer to a look.
typedef struct {
    gint64 seq;  // 0: none yet
    guint first; // rank of the first answer ever
    Basis basis;
} LookState;

// One check in one step: its own, or one that asks for it once more.
struct CheckState {
    const PlanCheck *check;
    const PlanStep *step;
    CheckState *again;  // in the next step that asks for it, or NULL
    guint places;       // of check->axes
    GArray **readings;  // for each place of a check that is read: guint into Judge.readings
    guint *requirement; // for each place of check->places: index of its requirement
    LookState *looks;   // for each place of check->places: the last answer
    gint64 *chosen_by;  // for each place of check->places: seq of the choice, 0 if none
    gssize *chosen;     // likewise: index of the label chosen, -1 if none
    guint *evidence;    // for each place of check->axes: rank that an uphold must stand behind
    gint64 *upheld;     // likewise: seq of the uphold that counts, 0 if none
    gint64 *argued;     // likewise: cause (cause.c) of what that argued away
    guint *meant;       // for each place of check->axes: rank up to which readings were meant for
                        // a trial whose move was struck, 0 if there is none
    Array *value;       // worked out once, NULL before
    gboolean working;
};

// One reading that is live and counts at all (not a loose one).
typedef struct {
    CheckState *state;
    guint place;
    gint64 seq;
    guint rank;
    Number *value; // base units
    Bound bound;
    ReadingDoubt doubt;
    Number *graduation;  // what `doubt` points to; the rest of it is the tool's
    Number *own;         // the ± typed with it (U, k = 2), independent of its gauge; NULL for none
    const Number *gauge; // u² of that tool's readings where it is calibrated, else NULL
    Number *variance;    // u² of it alone with its method's doubt, worked out once; NULL before
    guint32 doubts;      // of its own: tool, and basis of a struck move
    gint64 cause;        // of the doubt of its tool (cause.c)
    guint evidence;      // rank of what put its tool in doubt, or its own
    Basis basis;
} ReadingState;

// One bolt taken through one stage.
typedef struct {
    guint stage, bolt; // indexes, from 0
    guint turn;        // as which bolt of its entry, from 0
    gint64 seq;
    guint rank;
    // Ticks of one stage stand in one sequence if both agree: which time the bolt was done again
    // (0: its first at this stage), and how often it was ticked since, twice in a row counted once.
    guint episode, lap;
    gboolean behind;   // pulled once more behind its turn, without being slackened
    Reason fails;      // by what was shown, against what was asked then: it holds nothing
    guint32 doubts;    // of its own, without that of the order as it is now
    gint64 cause;      // of the doubt of its tool (cause.c)
    gint before;       // index of the tick before it at this stage, whatever came between; -1: none
    guint evidence;    // rank that an uphold must stand behind
    guint32 upheld;    // what was argued away of all that …
    gint64 upheld_by;  // … by this entry, 0 if none
    guint requirement; // its index
} TickState;

// One tightening of a set: for each stage and bolt the tick that counts, and how many there were.
typedef struct {
    const PlanTightening *tightening;
    gint *ticks;          // [stage * bolts + bolt]: index into Judge.ticks, -1 if none
    guint *laps;          // likewise: how often it was, so counted, since it was last slackened
    gint *newest;         // likewise: the last there ever was, counting or not, -1 if none
    gboolean *disordered; // likewise: whether out of order, worked out when asked for; NULL before
    guint *requirement;   // likewise: index of its requirement; a wait has it at bolt 0
    gint64 *waited;       // for each stage: seq of `waited`, 0 if none
} TighteningState;

typedef struct {
    gboolean tight;    // ticked since it was last slackened
    gboolean used_up;  // taken through a stage that uses up a single-use bolt
    gboolean spent;    // slackened after that, and nothing new fitted since
    guint force;       // index of the tightening in force
    guint episode;     // which time it was slackened last (SetState.episodes), 0: never
    guint slackened;   // rank of that
    gint64 fit;        // seq of what was last fitted there, 0 if nothing
    guint requirement; // index of its fit requirement, G_MAXUINT if none is asked
} BoltState;

struct SetState {
    const PlanGroup *group;
    guint bolts;
    GArray *tightenings; // TighteningState, in the plan's order
    BoltState *bolt;
    gint64 laid;    // seq of the consumable laid for the tightening to come, 0 if none
    guint episodes; // how often bolts were slackened together
};

typedef struct {
    const PlanPart *part;
    guint places;
    gint64 *fit;        // for each place: seq of what is fitted, 0 if nothing
    guint *requirement; // likewise
    gint64 laid;        // seq of the consumable laid on it last, 0 if none
} PartState;

// A signature of a step, as it stands.
typedef struct {
    gint64 seq;   // 0: none yet
    guint undone; // rank of the newest that undid, or did again, what it was given for; 0 if none
} Signature;

// Something slackened, replaced, moved or reworked: readings that rest on it fall.
typedef struct {
    const void *subject; // PlanGroup, PlanPart or PlanCheck
    const GPtrArray *axes;
    const char **labels; // in the order of `axes`; NULL for all places
    guint rank;
    const PlanStep *step; // in which it happened; NULL if the entry does not say
    gboolean moved;       // by a move: what is read for the setting falls, not its formula
} Disturbance;

// What a requirement is judged from: exactly one of them, none for a signature.
typedef struct {
    CheckState *check;
    SetState *set;
    PartState *part;
    guint tightening; // index in the set
} Owner;

// An entry about requirements, and those that it means.
typedef enum {
    SAID_NOT_NEEDED,
    SAID_WITHDRAW,
    SAID_ADD,
    SAID_UPHOLD,
    SAID_AMEND,
    SAID_DECIDE,
    SAID_CONCEDE,
} SaidKind;

typedef struct {
    const Entry *entry;
    SaidKind kind;
    gint sort;           // an Asked; -1: a read or look
    const char *name;    // of the check, bolt set, part or step
    const char *step;    // NULL if it does not say
    gint64 stage;        // likewise 0
    const char **labels; // of its place, `count` of them; NULL if it does not say
    gsize count;
} Said;

typedef struct Links Links;
typedef struct OtherGauge OtherGauge;

typedef struct {
    const Plan *plan;
    const Entry *const *entries;
    gsize count;
    gsize room; // for how many there is space in what follows
    const Hypothesis *hypothesis;
    gboolean *live;
    guint *rank;            // by seq - 1: place in the order of judgement, from 1
    gint64 *ranked;         // seqs in that order
    Moment *at;             // by seq - 1
    Moment *done;           // by seq - 1: when it was done
    GArray *asked;          // PlanRequirement
    Owner *owners;          // one for each of `asked`
    GPtrArray *made;        // Requirement *, likewise
    gboolean *not_needed;   // likewise: an entry says so
    GPtrArray *touched;     // what entries touched since all was decided; NULL: everything
    GHashTable *is_touched; // the same as a set; NULL likewise
    GArray *stale;          // guint: the requirements to be decided, in order
    Links *links;           // what rests on what, in the plan; NULL until it is asked for
    gboolean walking;       // the entries are being walked through
    gint64 *sealed;         // by gate: seq of its newest seal, 0 if none
    GPtrArray *checks, *sets, *parts;
    GHashTable *state_of;     // of a PlanCheck, PlanGroup or PlanPart
    GArray *readings, *ticks; // ReadingState, TickState
    GArray *disturbances;     // Disturbance, by rank
    GArray *said;             // Said: live ones, by rank
    GArray **said_of;         // by requirement: guint into `said`; NULL for none
    GHashTable *consulted;    // ids of tools, lots and consumables that were asked about
    GHashTable *known;        // by id: GPtrArray of Entry *, `take` and `news` about it
    GHashTable *tools;        // by id: what evidence.c made of `known`
    GHashTable *units;        // by their words: Unit *
    GHashTable *signatures;   // PlanStep → GArray of Signature, by number
    guint *evidence;          // by requirement: rank that an uphold of it must stand behind
    gint methods;             // ± of formulas' methods given out so far
    GHashTable *before;       // by rank: Verdict array of everything as it stood just before
} Judge;

// A formula at one place.
typedef struct {
    PlaceState state;
    Number *value; // base units; NULL unless state is PLACE_VALUE
    guint32 doubts;
    gint64 cause;
} AtPlace;

// What a formula is worked out with: the judgement, the step from which it looks, and whether it
// sees inputs as they were found. With `newer`, only doubts that came after that rank stand.
typedef struct {
    Judge *judge;
    const PlanStep *step;
    gboolean as_found;
    guint newer;
    OtherGauge *other; // what is read is, or was, read with this gauge; NULL: with its own
} View;
