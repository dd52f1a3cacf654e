// One tightening in its order: which bolt of which stage is next. Pure.
#pragma once
#include <standbook/judge/assess.h>

// One turn of the work: a bolt at a stage, or a stage's wait.
typedef struct {
    const Requirement *made;
    guint stage;    // from 1
    guint position; // of the bolt, in the order of the set's axes; of a wait 0
    guint turn;     // from 1, in its stage
    const char *by; // initials of another person who did it, where the view says so; else NULL
} Turn;

typedef struct {
    const PlanTightening *plan;
    char *torque; // the unit of a bare torque
    char *at;     // `1, in`: only the bolts at this place of a check are left (tightening_keep_at)
    guint bolts, stages;
    GArray *turns; // Turn, in the order of the work
    gint64 mends;  // seq up to which bolts in doubt for `reason` are done again; 0: none is
    Reason reason;
} Tightening;

// The tightening of a bolt set in a step; NULL if the plan has none. The plan and the
// assessment outlive it.
// The caller frees with tightening_free.
Tightening *tightening_new(const Plan *plan, const Assessment *assessment, const PlanStep *step,
                           const char *set) G_GNUC_WARN_UNUSED_RESULT;
// Leaves only the turns of the bolts at that place of a check, and waits.
void tightening_keep_at(Tightening *tightening, const PlanCheck *check, guint place);
void tightening_free(Tightening *tightening); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Tightening, tightening_free)

const Stage *tightening_stage(const Tightening *tightening, guint stage);
const Turn *tightening_turn(const Tightening *tightening, guint index); // NULL behind the last

// The first turn that is open, from that one on; behind the last if there is none.
guint tightening_next(const Tightening *tightening, guint from);

// Whether the bolt of a turn is in doubt as those that are done again, and was not done since.
gboolean tightening_to_mend(const Tightening *tightening, const Turn *turn);
// The first turn that is open, else the first to mend; behind the last if there is none.
guint tightening_in_hand(const Tightening *tightening);
// Whether any turn but those `count` from `here` on, which are in hand, is in doubt.
gboolean tightening_has_doubt(const Tightening *tightening, guint here, guint count);

// The turn in front of one at the same stage that was done; NULL if there is none.
const Turn *tightening_before(const Tightening *tightening, guint here);

// Where the stage of a turn begins again: its first turn, if that was done, and a second pull does
// no harm: to a torque, all bolts stage by stage, and no stage behind it was begun. NULL if it does
// not.
const Turn *tightening_again(const Tightening *tightening, guint here);

// The first turn of a stage, in its order, whose newest entry is not behind that one (`seq`);
// behind the last if there is none.
guint tightening_older(const Tightening *tightening, guint stage, gint64 seq);

// The first turn that fails, from that index on; NULL if none does.
const Turn *tightening_failed(const Tightening *tightening, guint from);
// Whether a bolt that was through this turn may be pulled once more without being loosened: to a
// torque that was not passed, as long as no stage behind it was begun on that bolt.
gboolean tightening_may_pull_again(const Tightening *tightening, const Turn *turn);

// Of a bolt that was pulled to the torque of this turn already, and is asked for it again: the turn
// behind it that left it tighter, so that a wrench would only click there. NULL if none did.
const Turn *tightening_above(const Tightening *tightening, const Turn *turn);

// How many bolts have been through a stage, of so many that are needed; a wait counts as one.
guint tightening_done(const Tightening *tightening, guint stage);
guint tightening_asked(const Tightening *tightening, guint stage);

// Behind a stage in a row of them: `▼` or `▲` where a bolt fails at it (low, high), else `?` where
// a bolt is in doubt at it, `√` where it is whole; "" as long as bolts are left. Static.
const char *tightening_mark(const Tightening *tightening, guint stage);

// `75 N·m`, `+90°`, `snug`, `wait 10 min`: a stage, from 1, as it is said at the bolt; a bare
// torque is in the plan's unit. The caller frees.
char *tightening_words(const Tightening *tightening, guint stage) G_GNUC_WARN_UNUSED_RESULT;

// The unit of the torque that a stage is written with: its own, as in `20 lbf ft`, of several the
// first, else the plan's.
// The caller frees.
char *tightening_unit(const Tightening *tightening, guint stage) G_GNUC_WARN_UNUSED_RESULT;

// The stages that come back to the set in later steps: `75 (S40)`, one after the other; "" for
// none. The caller frees.
char *tightening_later(const Tightening *tightening, const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;
