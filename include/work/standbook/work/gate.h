// What stands before a gate, in sums. Pure: everything comes in.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/shop.h>

// Gates are indexes in the plan's gates.

// Whether a gate asks for it: it belongs to that gate or one before, and was not withdrawn.
gboolean gate_asks(guint gate, const Requirement *made);

// The gate to be proved next: the first that is not sealed (gate_is_sealed), else the last.
guint gate_next(const Agenda *agenda);
// The step that ends it: the last of the plan that belongs to it; NULL if none does.
const PlanStep *gate_step(const Agenda *agenda, guint gate);
// Whether a step (NULL allowed) is of the phase that ends a gate: its last step, and what stands
// under the same heading. There each thing is told by itself (subjects_standing).
gboolean gate_is_last(const Agenda *agenda, guint gate, const PlanStep *step);

// How much of what is open may stay so: asked for, never needed. What is left is the rest, with
// what failed or is in doubt: left + optional = open + fail + in doubt.
guint gate_optional(const guint counts[VERDICTS], guint left);
// The same of all that a build asks for.
guint gate_all_optional(const Assessment *assessment);
// What is asked before a gate and not settled: `781 left before first start`. The caller frees with
// g_free.
char *gate_left_words(const GateCount *gate) G_GNUC_WARN_UNUSED_RESULT;

// Whether it is sealed and nothing was entered since that the seal does not cover.
gboolean gate_is_sealed(const GateCount *gate);
// `18 in doubt`: what is open, fails or is in doubt beyond what its seal recorded; where there is
// none of it `2 entries`, those that its seal does not cover, so that it is to be renewed; "" where
// it stands as sealed, or is not. The caller frees with g_free.
char *gate_since_words(const GateCount *gate) G_GNUC_WARN_UNUSED_RESULT;
// `sealed 30 Nov`, `sealed 30 Nov 2025, 18 in doubt since`: the day with its year where that is not
// the one of now (0: always), and what the words above say; "" where it is not sealed. The caller
// frees with g_free.
char *gate_seal_words(const GateCount *gate, const Entry *const *entries,
                      Moment now) G_GNUC_WARN_UNUSED_RESULT;

// What else a gate asks for, in sums of one sort: signatures, bolts and checks of all but its last
// phase, and all parts.
typedef struct {
    char *what; // `steps S01 to S36`, `bolts`, `checks`, `parts and lots`; freed with
                // g_free, as the next
    guint all, settled;
    char *said; // `36 signed, none left`, `96 fitted`
} GateSum;

// In turn, what is nought left out; the caller frees with g_array_unref.
GArray *gate_sums(const Agenda *agenda, guint gate) G_GNUC_WARN_UNUSED_RESULT;

// The lots of the shop that ran out while the build was on and were passed over: another of the
// same sort was laid since. `CP-12 past its date, not used`; NULL if there is none. The caller
// frees with g_free.
char *gate_lots(const Agenda *agenda, const Shop *shop) G_GNUC_WARN_UNUSED_RESULT;
