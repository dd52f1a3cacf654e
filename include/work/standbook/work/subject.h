// What is asked for, told subject by subject: before a step closes what cannot be seen afterwards,
// and before a gate. Pure: everything comes in.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/entry_words.h>

// One line: one place that is not settled, or what is open or settled of one check, bolt set, part
// or step over its places.
typedef struct {
    GArray *places; // guint: indexes in the assessment, at least one, in turn
    Verdict verdict;
    Reason reason;
    gboolean left; // not settled
    char *name;    // `main clearance 1 2 3`, `bore, 24 places`, `Crank` of a signature
    char *said;    // of bolts how many are through: `6 at 100 N·m, W3`; else NULL
    char *note;    // `upheld 11 Mar, MO JT`, `conceded 26 Feb, EV`, `W2 is wrong`, `low,
                   // waits for evenness warm` of a finding; else NULL
} Subject;

typedef struct {
    const Agenda *agenda;
    const Taken *taken; // of its entries
    Moment now;
} Telling;

// What the step closes and what it asks for itself, signatures apart: what is not settled in front,
// each by itself (what was never done once for all places of a check), then what is settled, in one
// line over its places. Subjects; the caller frees with g_array_unref.
GArray *subjects_closed(const Telling *telling, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;

// The same of what it closes alone and what is asked for before a place of it (work/closing.h).
GArray *subjects_at_stake(const Telling *telling, const PlanStep *step,
                          guint place) G_GNUC_WARN_UNUSED_RESULT;

// What keeps a gate (index in the plan's gates) from being complete, in the order of the work.
// Subjects; the caller frees with g_array_unref.
GArray *subjects_missing(const Telling *telling, guint gate) G_GNUC_WARN_UNUSED_RESULT;

// What stands at a gate and is worth a line of its own: what was conceded, place by place, and the
// checks and bolts of the gate's last phase. Subjects; the caller frees with g_array_unref.
GArray *subjects_standing(const Telling *telling, guint gate) G_GNUC_WARN_UNUSED_RESULT;

// The tool that was found wrong later and puts a place in doubt: the newest news of it. NULL if
// that is not why.
const Entry *wrong_tool(const Agenda *agenda, guint index);
// Its label: `W2`.
const char *wrong_tool_label(const Taken *taken, const Entry *news);
// `W2: set 100 gives 91 (KF-118, 11 Mar).` The caller frees with g_free.
char *wrong_tool_words(const Taken *taken, const Entry *news, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// Of a place that is in doubt for its tool though nobody found that wrong: why, and behind a line
// feed what settles it: `W3 was due 15 Oct 2025: …`. NULL if that is not why. The caller frees with
// g_free.
char *late_tool_words(const Agenda *agenda, const Taken *taken, guint index,
                      Moment now) G_GNUC_WARN_UNUSED_RESULT;
