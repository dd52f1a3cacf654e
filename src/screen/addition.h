// Work that the plan does not have, or other limits for one check: what is asked of each sort, one
// line each, and the log line that the answers come to.
#pragma once
#include <standbook/work/agenda.h>

enum { QUESTIONS_MOST = 6 };

typedef struct Addition Addition;

typedef struct {
    const char *label, *where; // among the answers; where it goes, before the step
    struct {
        const char *next, *hint;
        const char *sample;      // fits as long as the answer is not known
        const char *alone;       // what Enter alone answers; NULL: nothing
    } questions[QUESTIONS_MOST]; // up to the first without words
    guint why; // which one asks why it departs from the plan; QUESTIONS_MOST: none
    // As a log line for the build as it stands; freed by the caller.
    char *(*line)(const Addition *addition, const Agenda *agenda);
} Sort;

struct Addition {
    const Sort *sort; // NULL: still to be chosen
    char *step;
    char *target, *has; // the check in hand and what limits it has, in words; NULL if none is
    GPtrArray *answers; // char *
    gboolean card;      // a blank card: it has no plan to depart from, and no reason is asked
    gboolean named;     // begun where a check of a card is named
};

// The argument: the step; behind a line feed the check in hand, perhaps empty, and behind another
// what limits it has. The step alone: a check is named as it is measured, which only a blank card
// asks. Freed with addition_free.
Addition *addition_new(const char *argument, gboolean card) G_GNUC_WARN_UNUSED_RESULT;
void addition_free(Addition *addition);

// Where a check of a card is named, nothing else being answered yet.
gboolean addition_is_naming(const Addition *addition);
// Asks for the name of a check of a card.
void addition_begin_naming(Addition *addition);

// The check of the build that has the name just typed for a new one; NULL for none, or where more
// places are named.
const PlanCheck *addition_named_check(const Addition *addition, const Agenda *agenda);
// The step of that check, if it comes before this one and is read once more here, so that no limits
// are asked; else NULL.
const PlanStep *addition_reads_again(const Addition *addition, const Agenda *agenda);
// The step behind which a new one comes: this one, or where it is signed the last that is.
const PlanStep *addition_behind(const Addition *addition, const Agenda *agenda);

// The sort at that index; NULL behind the last that can be chosen here.
const Sort *addition_sort(const Addition *addition, guint index);
// The digit that chooses bolts, as addition_sort counts.
guint addition_digit_of_bolts(const Addition *addition);
// Whether a check is named, or limits are amended.
gboolean addition_is_check(const Addition *addition);
gboolean addition_amends(const Addition *addition);
// Whether the question that is open asks for the stages of bolts.
gboolean addition_asks_stages(const Addition *addition);
// Whether that question is the last one.
gboolean addition_ends(const Addition *addition, guint at);
// What was answered, else what would do; where no reason is asked, that there was none.
const char *addition_answer(const Addition *addition, guint index);
// What Enter alone answers to the question that is open; NULL: nothing. The caller frees with
// g_free.
char *addition_alone(const Addition *addition, const Agenda *agenda) G_GNUC_WARN_UNUSED_RESULT;
// The limits that a check just named takes over, where they are asked; NULL for none. Likewise.
char *addition_keeps(const Addition *addition, const Agenda *agenda) G_GNUC_WARN_UNUSED_RESULT;
// What was entered, in words: `bore glaze, at most 0.05 mm`. The caller frees with g_free.
char *addition_said(const Addition *addition) G_GNUC_WARN_UNUSED_RESULT;
