// What stands behind one value at the bench: the terms it is worked out from, whether it stands
// apart from the others, what was struck in its place. Pure.
#pragma once
#include <standbook/value/formula.h>
#include <standbook/work/agenda.h>

// One term of a value that is worked out as a sum.
typedef struct {
    gboolean subtracted;
    char *words;   // as the plan writes it: `pick-up depth`
    Number *value; // at this place, in base units; NULL: not known yet
    const Requirement
        *from; // the one place of a check that it is; NULL if it is more, or a constant
} WorkingTerm;

// The terms (WorkingTerm) of what is worked out at this place, two at least; none for what is read
// or is no sum. The caller frees with g_array_unref.
GArray *working_terms(const Agenda *agenda, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// `90.026 - 89.940`; NULL where there are no terms, or one has no value yet. The caller frees.
char *working_words(const Agenda *agenda, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
// The same with the terms named: `smallest main bore 59.786 - largest main journal 59.745`.
char *working_named_words(const Agenda *agenda, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
// The terms by name alone: `smallest main bore - largest main journal`. The caller frees.
char *working_formula(const Formula *formula) G_GNUC_WARN_UNUSED_RESULT;

// `bore 4, T, mid is 0.021 above the other 3; they agree within 0.003.`, of a value that stands
// apart from those of its check in that step that differ only in their first label; NULL if it does
// not, or there are fewer than three of them. It stands apart where its modified z-score is an
// outlier's (slip_is_outlier of rules/slip.h, one unit of the last place shown as the least MAD)
// and it lies more than twice their range away from their median; that last is a rule of our own.
// The caller frees.
char *working_apart(const Agenda *agenda, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// A reading that was struck, at a place where no reading stands now.
typedef struct {
    guint index;        // of the requirement
    char *figure;       // as it was typed
    const char *reason; // `typo`
} StruckReading;

// Those of a step (StruckReading), of each place the one struck last. The caller frees with
// g_array_unref.
GArray *working_struck(const Agenda *agenda, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;

// The places (const Requirement *) of its check in that step that differ from it only in their
// first label, itself among them, in the plan's order; it alone where it has no label. The caller
// frees.
GPtrArray *working_beside(const Agenda *agenda, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// A window that holds all their values, its ends on whole steps of a power of ten so that it has at
// most ten: *from < *to, in base units. FALSE if none has a value. The caller frees both.
gboolean working_window(const GPtrArray *beside, Number **from, Number **to);

// The last time that tool (its id) was set to zero in this build and that was not struck; NULL for
// never.
const Entry *working_zero(const Agenda *agenda, const char *tool);

// What is said of it behind the gauge's name: `, zeroed in G02`, `, zeroed on 90.000 mm`, with the
// day where that was not today; "" if it never was. The caller frees with g_free.
char *working_zero_words(const Agenda *agenda, const char *tool,
                         Moment now) G_GNUC_WARN_UNUSED_RESULT;
