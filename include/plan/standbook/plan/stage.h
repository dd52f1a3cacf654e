// The stages of a tightening, as a plan writes them with > between: `30 > +60°`.
#pragma once
#include <glib.h>
#include <standbook/value/formula.h>

enum { STAGES_MOST = 64 };

typedef enum {
    STAGE_TORQUE,  // `75`, `60 + run-down torque`: to this torque
    STAGE_SNUG,    // `snug`: seated, by feel
    STAGE_TURN,    // `+90°`: by this angle from where it stands
    STAGE_ANGLE,   // `90° from snug`: to this angle, counted from the stage before the first angle
    STAGE_SLACKEN, // `slacken`, `slacken 1/4 turn`: back by this angle, or quite loose
    STAGE_DRAW,    // `draw 1 turn`: in rounds of this angle each, until it is down
    STAGE_UNTIL,   // `until CHECK`: until this check passes, below the ceiling
    STAGE_WAIT,    // `wait 10 min`
    STAGE_CHECK,   // `check 75`: pulled at this torque to see that it does not move
    STAGE_SLOT,    // `to slot`, `to slot within 30°`: on to the next slot for the pin, never back
} StageKind;

// Whether a torque wrench is set to the amount of such a stage.
gboolean stage_is_torque(StageKind kind);
// Whether such a stage turns by, or to, an angle that an angle gauge shows.
gboolean stage_is_angle(StageKind kind);

struct PlanCheck;

typedef struct {
    StageKind kind;
    char *text;          // the stage as written
    char *amount;        // torque, angle or time as written, or the check's name; NULL where none
    gsize offset;        // of the stage in the whole text, in characters
    gsize amount_offset; // of the amount likewise
    // Filled when the plan is read whole:
    Formula *formula;              // torque, angle or time; NULL where none is said
    char *bare;                    // the first figure of its torque without a unit, which has the
                                   // plan's; NULL for none
    gsize bare_offset;             // of that, in the whole text, in characters
    gint first_doubt;              // for FormulaContext: the source of its first ±
    const struct PlanCheck *until; // of STAGE_UNTIL
} Stage;

// Reads stages. Returns an array of Stage * that the caller frees with g_ptr_array_unref. NULL: an
// empty stage, an angle that does not say from where, `from snug` with nothing before it, more than
// STAGES_MOST; STANDBOOK_ERROR_MISUSE, and `offset` says where, in characters.
GPtrArray *stages_read(const char *text, gsize *offset, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Whether a bolt that has been through the stage `done`, and was not loosened since, tells nothing
// any more by being pulled at `stage` (indexes): a turn counts from where the bolt stands, so that
// once more turns it on; a torque before an angle is passed long ago. An angle from snug may be
// pulled to again. Common practice, no published source.
gboolean stages_turn_past(const GPtrArray *stages, guint done, guint stage);
