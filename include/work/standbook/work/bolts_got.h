// What bolts really got from a wrench that was found wrong, by what its calibration says it gave.
// Pure: everything comes in.
#pragma once
#include <standbook/work/agenda.h>

// What stands in place of the figure where a wrench was used through an adapter and nobody knows
// what it was set to: what the bolt got is then not known either.
extern const char bolt_got_unknown[];

// What the bolt (a place of a bolt set at one stage) got from that tick of it, by the body of a
// calibration: `91 of 100`, `29.6 of 30.5` (as exact as a wrench is set, and as what was asked),
// the figure behind `of` being what the wrench showed if that was typed, else what the stage asks
// for; in *unit the unit of both, that of the wrench's range or else of the stage, which the caller
// frees. A calibration speaks of the wrench's own scale: through an adapter what it gave is looked
// up at its setting there, and both figures are those at the bolt
// (`unknown of 100` where the setting is not known). NULL, and NULL in *unit: the stage is no
// torque, or the calibration does not say. The caller frees.
char *bolt_got(const Agenda *agenda, const Requirement *made, const Entry *tick,
               const json_t *calibration, Unit **unit) G_GNUC_WARN_UNUSED_RESULT;

// Bolts of one set in one step that got the same and stand the same today.
typedef struct {
    const Requirement *made; // one of them: its set and step
    GString *bolts;          // `1, 2, 5`
    GString *stages;         // those it was used at: `1, 2, 3`
    GString *got;            // at each of them: `36 of 40, 68 of 75, 91 of 100`
    char *unit;              // `N·m`
    const char *stands;      // static: `in doubt`, `upheld`, `done again`, `open`, …
    gint64 entry;            // seq of the first tick
} BoltsGot;

// All that a tool (by id) tightened in the build from `since` on (`2025-03-13`, NULL: ever) and
// that stands or stood in doubt because it was found wrong, where its calibration says what it
// gave; BoltsGot, in the order of the work. Struck ticks do not count, and of several at one stage
// of a bolt the last does. Freed with g_ptr_array_unref.
GPtrArray *bolts_got(const Agenda *agenda, const char *tool,
                     const char *since) G_GNUC_WARN_UNUSED_RESULT;
