// What a bolt is pulled to by the way it is tightened, in bands, with what they assume; for a bolt
// of a plan and for the calculators of the command line. Pure.
#pragma once
#include <standbook/rules/preload.h>

// What is known of a bolt and its tightening. Newtons, metres, radians, N·m; a length of 0 and a
// band with the upper end 0 are not said, words may be NULL.
typedef struct {
    Thread thread;
    const char *strength;  // property class or grade
    const char *lubricant; // on thread and under the head
    Band friction;         // instead of the lubricant's
    double bearing;        // mean diameter of the ring under the head
    double clamped, shank; // length clamped, and how much of it the bolt has no thread in
    const char *material;  // of what is clamped, a gasket among it: `alloy, gasket`
    const char *gasket;    // the gasket between, by its name; NULL: none but in `material`
    Band torque;           // on the bolt
    Band snug, angle;      // the torque before the angle, and the angle behind it
    Band stretch;
} BoltAsked;

typedef enum { PULL_BY_TORQUE, PULL_BY_ANGLE, PULL_BY_STRETCH } PullWay;
enum { PULL_WAYS = PULL_BY_STRETCH + 1 };

typedef struct {
    double area;          // stress area, m²
    double proof;         // the proof load, N; 0 if the class is not known
    Band friction;        // as used
    Band pull[PULL_WAYS]; // preload of each way asked; upper end 0 of the others
    double usual_torque;  // that uses 90 % of the yield at the middle of the friction; 0 unknown
    GPtrArray *assumed;   // char *: sentences
    const char *lacking;  // the amount that is missing, by its option: `clamped`; NULL for none
} BoltEstimate;

// Shares by which what was typed alone is taken to differ: a wrench in order ±4 % (ISO
// 6789-1:2017), a stretch that is measured ±10 % (NASA-STD-5020B, table 3), an angle ±2° with its
// arm held (common practice, no published source).
Band bolt_torque_band(double torque);
Band bolt_stretch_band(double stretch);
Band bolt_angle_band(double angle);

// Works out all that is asked. FALSE with a sentence if something is missing for it, and
// estimate->lacking says what. On TRUE the caller clears *estimate.
gboolean bolt_estimate(const BoltAsked *asked, BoltEstimate *estimate, GError **error);
void bolt_estimate_clear(BoltEstimate *estimate);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(BoltEstimate, bolt_estimate_clear)

// `33.1 to 63.2 kN`; the caller frees with g_free.
char *preload_words(Band preload) G_GNUC_WARN_UNUSED_RESULT;
// `69 to 131 % of the proof load`; NULL if that is not known. The caller frees.
char *proof_share_words(const BoltEstimate *estimate, Band preload) G_GNUC_WARN_UNUSED_RESULT;
// The caution where the upper end lies above the proof load of a bolt that is not meant to yield;
// NULL if there is none. The caller frees.
char *proof_caution(const BoltEstimate *estimate, Band preload,
                    gboolean may_yield) G_GNUC_WARN_UNUSED_RESULT;
// How a substitute stands to what it stands for, in one sentence of two bands. The caller frees.
char *substitute_words(const char *substitute, Band has, const char *asked,
                       Band wanted) G_GNUC_WARN_UNUSED_RESULT;
