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
    if (fitting->part->fit[place])
        judge_disturb(judge, fitting->entry, fitting->part->part, axes, judge_labels(axes, place));
    fitting->part->fit[place] = fitting->entry->seq;
}

static void fit_bolt(Judge *judge, guint place, gpointer user)
{
    const Fitting *fitting = user;
    BoltState *bolt = &fitting->set->bolt[place];
    (void)judge;
    bolt->fit = fitting->entry->seq;
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

// Work on a part, or on what a check measures, disturbs every reading there and what rests on it.
void walk_rework(Judge *judge, const Entry *entry)
{
    const char *name = entry_text(entry, "name");
    const PartState *part = judge_part(judge, name);
    const PlanCheck *check = part ? NULL : plan_check(judge->plan, name);
    const GPtrArray *axes = part ? part->part->axes : check ? check->axes : NULL;
    if (!axes)
        return;
    gsize count = entry_list_length(entry, "place");
    GStrv labels = count == axes->len && count ? g_new0(char *, count + 1) : NULL;
    for (gsize i = 0; labels && i < count; i++)
        labels[i] = g_strdup(entry_list_item(entry, "place", i));
    judge_disturb(judge, entry, part ? (const void *)part->part : (const void *)check, axes,
                  labels);
}

// The grade chosen where this part goes, if a check of the plan chooses along an axis that has the
// lot's grade among its labels; NULL if nothing was chosen.
static const char *grade_chosen(const Judge *judge, const PlanPart *part, guint place,
                                const char *grade)
{
    g_auto(GStrv) labels = judge_labels(part->axes, place);
    for (guint i = 0; i < judge->checks->len; i++) {
        const CheckState *state = g_ptr_array_index(judge->checks, i);
        const Axis *axis =
            state->check->choose ? plan_axis(judge->plan, state->check->choose) : NULL;
        if (!axis || axis_find(axis, grade) < 0)
            continue;
        for (guint j = 0; j < places_count(state->check->places); j++) {
            g_auto(GStrv) at = judge_labels(state->check->places, j);
            gboolean shared = part->axes->len && state->check->places->len;
            if (shared && state->chosen[j] >= 0 &&
                judge_places_meet(part->axes, (const char *const *)labels, state->check->places,
                                  (const char *const *)at))
                return axis_label(axis, (gsize)state->chosen[j]);
        }
    }
    return NULL;
}

static guint32 fit_doubt(const Judge *judge, const Entry *fit, gboolean new_needed)
{
    guint32 doubts = judge_lot_doubt(judge, fit);
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
    return entry_text(fit, "lot") || entry_text(fit, "label");
}

// A part that the plan wants tracked is not fitted until its lot or serial is said.
static void judge_fit(const Judge *judge, Requirement *made, gint64 seq, const char *track,
                      guint32 doubts)
{
    const Entry *fit = judge_entry(judge, seq);
    made->entry = seq;
    made->answer = fitted_words(fit);
    if (!is_tracked(fit, track)) {
        requirement_note(made, g_strdup_printf("fitted, but its %s is not said", track));
        return;
    }
    made->verdict = VERDICT_PASS;
    requirement_doubt(made, doubts);
}

static void judge_part_fits(Judge *judge, const PartState *state)
{
    for (guint i = 0; i < state->places; i++) {
        if (!state->fit[i])
            continue;
        const Entry *fit = judge_entry(judge, state->fit[i]);
        guint32 doubts = fit_doubt(judge, fit, state->part->new_needed);
        const char *grade = judge_lot_grade(judge, fit);
        const char *chosen = grade ? grade_chosen(judge, state->part, i, grade) : NULL;
        if (chosen && strcmp(chosen, grade) != 0)
            doubts |= reason_bit(REASON_PART);
        judge_fit(judge, judge_requirement(judge, state->requirement[i]), state->fit[i],
                  state->part->track, doubts);
    }
}

void judge_fits(Judge *judge)
{
    for (guint i = 0; i < judge->parts->len; i++)
        judge_part_fits(judge, g_ptr_array_index(judge->parts, i));
    for (guint i = 0; i < judge->sets->len; i++) {
        const SetState *set = g_ptr_array_index(judge->sets, i);
        const PlanGroup *group = set->group;
        for (guint j = 0; j < set->bolts; j++) {
            const BoltState *bolt = &set->bolt[j];
            if (!bolt->fit || bolt->requirement == G_MAXUINT)
                continue;
            guint32 doubts =
                fit_doubt(judge, judge_entry(judge, bolt->fit), group->new_needed || group->once);
            judge_fit(judge, judge_requirement(judge, bolt->requirement), bolt->fit, group->track,
                      doubts);
        }
    }
}
