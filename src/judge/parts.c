#include "judge.h"

#include <string.h>

typedef struct {
    const Entry *entry;
    PartState *part;
    SetState *set;
} Fitting;

static void fit_part(Judge *judge, guint place, gpointer user)
{
    const Fitting *fitting = user;
    const GPtrArray *axes = fitting->part->part->axes;
    gint64 stood = fitting->part->fit[place];
    if (stood) {
        judge_disturb(judge, fitting->entry, fitting->part->part, axes, judge_labels(axes, place));
        judge_undo(judge, fitting->part->part->step, judge_rank(judge, stood),
                   judge_rank(judge, fitting->entry->seq));
    }
    fitting->part->fit[place] = fitting->entry->seq;
    judge_touch(judge, fitting->part->part);
}

static void fit_bolt(Judge *judge, guint place, gpointer user)
{
    const Fitting *fitting = user;
    BoltState *bolt = &fitting->set->bolt[place];
    if (bolt->fit && bolt->tight) // another one cannot come in without the first coming out
        judge_slacken_bolt(judge, fitting->set, place, fitting->entry);
    bolt->fit = fitting->entry->seq;
    judge_touch(judge, fitting->set->group);
    if (strcmp(entry_text(fitting->entry, "use"), "new") == 0)
        bolt->used_up = bolt->spent = FALSE;
}

void walk_fit(Judge *judge, const Entry *entry)
{
    const char *name = entry_text(entry, "part");
    Fitting fitting = {entry, judge_part(judge, name), judge_set(judge, name)};
    if (fitting.part)
        judge_each_place(judge, fitting.part->part->axes, entry, "place", fit_part, &fitting);
    else if (fitting.set)
        judge_each_place(judge, fitting.set->group->axes, entry, "place", fit_bolt, &fitting);
}

// Work on what a check measures disturbs every reading there and what rests on it; behind a formula
// stand the checks it uses.
static void rework_check(Judge *judge, const Entry *entry, const PlanCheck *check,
                         const GPtrArray *axes)
{
    judge_disturb(judge, entry, check, axes, entry_labels(entry, axes->len));
    for (gsize i = 0; check->formula && i < formula_name_count(check->formula); i++) {
        const PlanCheck *input = plan_check(judge->plan, formula_name(check->formula, i));
        if (input)
            rework_check(judge, entry, input, axes);
    }
}

void walk_rework(Judge *judge, const Entry *entry)
{
    const char *name = entry_text(entry, "name");
    const PartState *part = judge_part(judge, name);
    const PlanCheck *check = part ? NULL : plan_check(judge->plan, name);
    if (part)
        judge_disturb(judge, entry, part->part, part->part->axes,
                      entry_labels(entry, part->part->axes->len));
    else if (check)
        rework_check(judge, entry, check, check->places);
}

// The grade chosen where this part goes, if a check of the plan chooses along an axis that has the
// lot's grade among its labels; NULL if nothing was chosen.
static const char *grade_chosen(const Judge *judge, const PlanPart *part, guint place,
                                const char *grade, guint *evidence)
{
    g_autofree const char **labels = judge_labels(part->axes, place);
    for (guint i = 0; i < judge->checks->len; i++) {
        const CheckState *state = g_ptr_array_index(judge->checks, i);
        const Axis *axis =
            state->check->choose ? plan_axis(judge->plan, state->check->choose) : NULL;
        if (!axis || axis_find(axis, grade) < 0)
            continue;
        for (guint j = 0; j < places_count(state->check->places); j++) {
            g_autofree const char **at = judge_labels(state->check->places, j);
            gboolean shared = part->axes->len && state->check->places->len;
            if (!shared || state->chosen[j] < 0 ||
                !places_meet(part->axes, labels, state->check->places, at))
                continue;
            *evidence = MAX(*evidence, judge_rank(judge, state->chosen_by[j]));
            return axis_label(axis, (gsize)state->chosen[j]);
        }
    }
    return NULL;
}

static guint32 fit_doubt(const Judge *judge, const Entry *fit, gboolean new_needed, guint *evidence)
{
    guint32 doubts = judge_lot_doubt(judge, fit, evidence);
    if (new_needed && g_strcmp0(entry_text(fit, "use"), "new") != 0)
        doubts |= reason_bit(REASON_PART);
    return doubts;
}

// What was fitted, for the sheets: its lot or serial, or else its description.
static char *fitted_words(const Entry *fit)
{
    static const char *const fields[] = {"serial", "label", "description"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (entry_text(fit, fields[i]))
            return g_strdup(entry_text(fit, fields[i]));
    return g_strdup(entry_text(fit, "use"));
}

static gboolean is_tracked(const Entry *fit, const char *track)
{
    if (!track)
        return TRUE;
    if (strcmp(track, "serial") == 0)
        return entry_text(fit, "serial") != NULL;
    gboolean fresh = g_strcmp0(entry_text(fit, "use"), "new") == 0;
    return !fresh || entry_text(fit, "lot") || entry_text(fit, "label");
}

// A part that the plan wants tracked is not fitted until its lot or serial is said. What is used
// again has no packet any more: why it may be stands for the lot, not for the serial on it.
static void judge_fit(const Judge *judge, guint index, gint64 seq, const char *track,
                      guint32 doubts, guint evidence)
{
    Requirement *made = judge_requirement(judge, index);
    const Entry *fit = judge_entry(judge, seq);
    made->entry = seq;
    made->answer = fitted_words(fit);
    judge->evidence[index] = MAX(evidence, judge_rank(judge, seq));
    if (!is_tracked(fit, track)) {
        requirement_note(made, g_strdup_printf("fitted, but its %s is not said", track));
        return;
    }
    made->verdict = made->value_verdict = VERDICT_PASS;
    requirement_doubt(made, doubts);
}

// What was laid on a part: too old, or the part came too late.
static guint32 part_laid_doubt(const Judge *judge, const PartState *state, const Entry *fit,
                               guint *evidence)
{
    if (!state->laid)
        return 0;
    const Entry *laid = judge_entry(judge, state->laid);
    const PlanConsumable *consumable = plan_consumable(judge->plan, entry_text(laid, "consumable"));
    guint32 doubts = judge_lot_doubt(judge, laid, evidence);
    *evidence = MAX(*evidence, judge_rank(judge, laid->seq));
    if (consumable && consumable->fit_within &&
        judge_rank(judge, fit->seq) > judge_rank(judge, laid->seq))
        doubts |= judge_window(judge, laid->seq, fit->seq, TRUE, consumable->fit_within);
    return doubts;
}

static void judge_part_fit(const Judge *judge, guint index, const PartState *state, guint place)
{
    if (!state->fit[place])
        return;
    const Entry *fit = judge_entry(judge, state->fit[place]);
    guint evidence = 0;
    guint32 doubts = fit_doubt(judge, fit, state->part->new_needed, &evidence) |
                     part_laid_doubt(judge, state, fit, &evidence);
    const char *grade = judge_lot_grade(judge, fit);
    const char *chosen = grade ? grade_chosen(judge, state->part, place, grade, &evidence) : NULL;
    if (chosen && strcmp(chosen, grade) != 0)
        doubts |= reason_bit(REASON_PART);
    judge_fit(judge, index, fit->seq, state->part->track, doubts, evidence);
}

static void judge_bolt_fit(const Judge *judge, guint index, const SetState *set, guint place)
{
    const PlanGroup *group = set->group;
    gint64 fit = set->bolt[place].fit;
    guint evidence = 0;
    judge_requirement(judge, index)->spent = set->bolt[place].spent;
    if (!fit)
        return;
    guint32 doubts =
        fit_doubt(judge, judge_entry(judge, fit), group->new_needed || group->once, &evidence);
    judge_fit(judge, index, fit, group->track, doubts, evidence);
}

void judge_fit_requirement(Judge *judge, guint index)
{
    guint place = g_array_index(judge->asked, PlanRequirement, index).place;
    const Owner *owner = &judge->owners[index];
    if (owner->part)
        judge_part_fit(judge, index, owner->part, place);
    else
        judge_bolt_fit(judge, index, owner->set, place);
}
