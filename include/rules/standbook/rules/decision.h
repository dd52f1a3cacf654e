// The decision rule: does a value with a doubt lie inside its limits? Everything is rational; no
// root is taken, nothing is rounded, so no answer depends on floating point. All numbers of one
// call are in one unit (squares in that unit squared) and are only read.
#pragma once
#include <glib.h>
#include <gmp.h>

typedef enum {
    DECISION_PASS,
    DECISION_FAIL_LOW,
    DECISION_FAIL_HIGH,
    DECISION_BEYOND_WEAR,    // surely past the service limit as well
    DECISION_IN_DOUBT_GAUGE, // this gauge, or this bound, cannot tell
    DECISION_NO_LIMIT,       // neither limit is known: nothing to decide
} Decision;

// Words for a decision, as a sheet prints them: "pass", "fail low", … Never NULL.
const char *decision_words(Decision decision);

// A value is read, or known only as a bound: `<0.03` (the thinnest leaf does not enter), `>0.25`
// (it clicked, so at least). The bound itself is excluded.
typedef enum { READ_AS_IS, READ_LESS_THAN, READ_MORE_THAN } DecisionReading;

// Limits belong to what they bound; an unknown one is NULL; lower <= upper. `wear`, the service
// limit, lies beyond one of them; which one decides whether wear opens or closes.
typedef struct {
    mpq_srcptr lower, upper, wear;
} DecisionLimits;

typedef enum { WEAR_NONE, WEAR_BELOW, WEAR_ABOVE, WEAR_INSIDE } DecisionWear;

// On which side of the limits the wear limit lies. A wear limit equal to a limit is beyond it.
// WEAR_NONE: not known, or no limit to stand beside. WEAR_INSIDE: it contradicts the limits, and
// `decide` leaves it out (a plan check refuses it).
DecisionWear decision_wear_side(const DecisionLimits *limits);

// Decides. `u_squared` >= 0 is the squared standard uncertainty of the value.
// - Both limits known and T² >= 256 u², T = upper - lower (that is Cm = T/(4u) >= 4, the
//   measurement capability index of JCGM 106:2012): judged as read, limits included.
// - Otherwise, and always with one limit, by a guard band of 1.65 u (ISO 14253-1:2017, 95 %
//   conformance probability): with d the distance inside a limit, negative outside, pass when
//   every d >= 0 and d² >= (33/20)² u²; fail when some d < 0 and d² >= (33/20)² u²; else in doubt.
// - A fail that is also past the wear limit by the same rule is DECISION_BEYOND_WEAR.
// - A bound is decided only where every value it allows would be decided alike: `<x` passes an
//   upper limit where x does and fails a lower limit where x does (or lies on it); it never passes
//   a lower limit.
Decision decide(DecisionReading reading, mpq_srcptr value, mpq_srcptr u_squared,
                const DecisionLimits *limits);

// FALSE when no value read with this doubt can pass a tolerance of this width (T < 3.3 u: the two
// guard bands meet). `width` >= 0.
gboolean decision_can_ever_pass(mpq_srcptr width, mpq_srcptr u_squared);

// TRUE when two readings of one place differ by more than their doubts allow:
// d² > 4 (u_a² + u_b²), that is by more than U (k = 2) of the difference, readings independent.
gboolean decision_disagree(mpq_srcptr difference, mpq_srcptr u_a_squared, mpq_srcptr u_b_squared);

// How fine a gauge is against a tolerance: the capability index Cm = T/(4u) = T/(2U) of
// JCGM 106:2012. The bounds 4 and 2 are common practice.
typedef enum {
    FITNESS_GOOD,   // Cm >= 4: believed as read
    FITNESS_USABLE, // 2 <= Cm < 4: decides away from the limits; say so
    FITNESS_POOR,   // Cm < 2, but some value can still pass
    FITNESS_NEVER,  // T < 3.3 u: can never pass this
} DecisionFitness;

DecisionFitness decision_fitness(mpq_srcptr width, mpq_srcptr u_squared);

// The index for showing: tenths of Cm, a half rounded up, at most 9999; 9999 also without doubt
// (u = 0). 27 means 2.7.
guint decision_fitness_tenths(mpq_srcptr width, mpq_srcptr u_squared);
