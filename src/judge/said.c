// Which requirements an entry means, and what people said of them before they are judged: not
// needed, withdrawn, added; and doubts argued away.
#include "judge.h"

#include <string.h>

static gboolean same_place(const Entry *entry, const Requirement *made)
{
    gsize count = entry_list_length(entry, "place");
    if (count == 0)
        return TRUE;
    if (count != g_strv_length(made->labels))
        return FALSE;
    for (gsize i = 0; i < count; i++)
        if (strcmp(entry_list_item(entry, "place", i), made->labels[i]) != 0)
            return FALSE;
    return TRUE;
}

// Where an entry does not say the step, it means a check in its own step, and a tightening in any.
static gboolean same_step(const Entry *entry, const PlanRequirement *asked)
{
    const char *step = entry_text(entry, "step");
    if (step)
        return strcmp(step, asked->step->name) == 0;
    return !asked->again;
}

static gboolean same_name(const Entry *entry, const Requirement *made)
{
    static const char *const fields[] = {"name", "check"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (kind_field(entry->kind, fields[i]))
            return g_strcmp0(entry_text(entry, fields[i]), made->name) == 0;
    return FALSE;
}

static gboolean same_sort(const Entry *entry, const Requirement *made)
{
    if (!kind_field(entry->kind, "asked"))
        return made->asked == ASKED_READ || made->asked == ASKED_LOOK;
    return strcmp(entry_text(entry, "asked"), asked_words(made->asked)) == 0;
}

gboolean entry_means(const Entry *entry, const PlanRequirement *asked, const Requirement *made)
{
    gint64 stage = kind_field(entry->kind, "stage") ? entry_number(entry, "stage") : 0;
    return same_sort(entry, made) && same_name(entry, made) && same_step(entry, asked) &&
           same_place(entry, made) && (stage == 0 || stage == made->stage);
}

// Limits are amended for the whole build, wherever the check is asked for.
gboolean entry_amends(const Entry *entry, const Requirement *made)
{
    return same_sort(entry, made) && same_name(entry, made) && same_place(entry, made);
}

// A whole step: `sign` of it without saying which signature.
static gboolean means_step(const Entry *entry, const Requirement *made)
{
    return strcmp(entry_text(entry, "asked"), "sign") == 0 && entry_number(entry, "stage") == 0 &&
           strcmp(entry_text(entry, "name"), made->step->name) == 0;
}

static gboolean is_about_requirements(const Entry *entry)
{
    static const char *const kinds[] = {"not needed", "withdraw", "add",     "uphold",
                                        "amend",      "decide",   "concede", NULL};
    return g_strv_contains(kinds, entry->kind->name);
}

void judge_gather_said(Judge *judge)
{
    judge->said = g_ptr_array_new();
    for (gsize i = 0; i < judge->count; i++) {
        const Entry *entry = judge_entry(judge, judge->ranked[i]);
        if (judge->live[entry->seq - 1] && is_about_requirements(entry))
            g_ptr_array_add(judge->said, (gpointer)entry);
    }
}

// Entries about requirements are few: each is compared with every requirement.
void judge_each_said(Judge *judge, const char *kind,
                     void (*said)(Judge *, const Entry *, const PlanRequirement *, Requirement *))
{
    for (guint i = 0; i < judge->said->len; i++) {
        const Entry *entry = g_ptr_array_index(judge->said, i);
        if (strcmp(entry->kind->name, kind) != 0)
            continue;
        for (guint j = 0; j < judge->made->len; j++)
            said(judge, entry, &g_array_index(judge->asked, PlanRequirement, j),
                 judge_requirement(judge, j));
    }
}

static void mark_not_needed(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                            Requirement *made)
{
    (void)judge;
    if (!entry_means(entry, asked, made) && !means_step(entry, made))
        return;
    made->verdict = VERDICT_NOT_NEEDED;
    made->entry = entry->seq;
}

// Whether a name in an add entry is this one: of a check it may go on with its formula.
static gboolean is_named(const char *said, const char *name)
{
    gsize length = strlen(name);
    return strncmp(said, name, length) == 0 &&
           (said[length] == '\0' || g_str_has_prefix(said + length, " ="));
}

// Whether a requirement belongs to the step, check, tightening or part that was added or withdrawn.
static gboolean belongs_to(const Entry *entry, const PlanRequirement *asked,
                           const Requirement *made)
{
    const char *what = entry_text(entry, "what"), *name = entry_text(entry, "name");
    if (strcmp(what, "step") == 0)
        return strcmp(made->step->name, name) == 0;
    if (strcmp(what, "check") == 0)
        return asked->check && is_named(name, made->name);
    if (strcmp(what, "tightening") == 0)
        return (asked->tightening || asked->group) && strcmp(made->name, name) == 0;
    return asked->part && strcmp(made->name, name) == 0;
}

static void mark_withdrawn(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                           Requirement *made)
{
    (void)judge;
    if (belongs_to(entry, asked, made) && same_place(entry, made))
        made->withdrawn = TRUE;
}

static void mark_added(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                       Requirement *made)
{
    (void)judge;
    if (belongs_to(entry, asked, made))
        made->added = TRUE;
}

void judge_mark(Judge *judge)
{
    judge_each_said(judge, "not needed", mark_not_needed);
    judge_each_said(judge, "withdraw", mark_withdrawn);
    judge_each_said(judge, "add", mark_added);
}

gboolean judge_is_left_out(const Requirement *made)
{
    return made->withdrawn || made->verdict == VERDICT_NOT_NEEDED;
}

const Entry *judge_said(const Judge *judge, const char *kind, const PlanRequirement *asked,
                        const Requirement *made)
{
    for (guint i = judge->said->len; i-- > 0;) {
        const Entry *entry = g_ptr_array_index(judge->said, i);
        if (strcmp(entry->kind->name, kind) == 0 && entry_means(entry, asked, made))
            return entry;
    }
    return NULL;
}

static guint32 doubt_upheld(const Entry *entry)
{
    return reason_bit(reason_of_words(entry_text(entry, "doubt")));
}

static TickState *tick_of(const Judge *judge, const PlanRequirement *asked)
{
    const SetState *set = g_hash_table_lookup(judge->state_of, asked->tightening->group);
    for (guint i = 0; i < set->tightenings->len; i++) {
        const TighteningState *state = &g_array_index(set->tightenings, TighteningState, i);
        gint tick = state->ticks[(asked->number - 1) * set->bolts + asked->place];
        if (state->tightening == asked->tightening)
            return tick < 0 ? NULL : &g_array_index(judge->ticks, TickState, (guint)tick);
    }
    return NULL;
}

static void uphold_bolt(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                        Requirement *made)
{
    TickState *tick =
        asked->asked == PLAN_BOLT && entry_means(entry, asked, made) ? tick_of(judge, asked) : NULL;
    if (!tick || judge_rank(judge, entry->seq) <= tick->evidence ||
        !(tick->doubts & doubt_upheld(entry)))
        return;
    tick->upheld |= doubt_upheld(entry);
    made->upheld = entry->seq;
}

void judge_uphold_bolts(Judge *judge)
{
    judge_each_said(judge, "uphold", uphold_bolt);
}

static gboolean upholds_place(const Entry *entry, const CheckState *state, const GPtrArray *axes,
                              guint place)
{
    const char *step = entry_text(entry, "step");
    gsize count = entry_list_length(entry, "place");
    if (g_strcmp0(entry_text(entry, "name"), state->check->name) != 0 ||
        strcmp(step ? step : state->check->step->name, state->step->name) != 0)
        return FALSE;
    if (count == 0)
        return TRUE;
    if (count != state->check->places->len)
        return FALSE;
    g_auto(GStrv) at = judge_labels(axes, place);
    g_autofree const char **labels = g_new0(const char *, count + 1);
    for (gsize i = 0; i < count; i++)
        labels[i] = entry_list_item(entry, "place", i);
    return judge_places_meet(state->check->places, labels, axes, (const char *const *)at);
}

// Whether the doubt came to this place after it was upheld: then it is a new one.
static gboolean came_later(Judge *judge, CheckState *state, guint place, const guint *evidence,
                           const Entry *entry)
{
    guint rank = judge_rank(judge, entry->seq);
    return rank <= evidence[place] ||
           (state->check->formula &&
            (judge_newer_doubts(judge, state, place, rank) & doubt_upheld(entry)));
}

static void uphold_places(Judge *judge, CheckState *state, Array *value, const guint *evidence,
                          const Entry *entry)
{
    for (guint i = 0; i < state->places && i < array_size(value); i++) {
        const Place *place = array_place(value, i);
        if (!(place->doubts & doubt_upheld(entry)) ||
            !upholds_place(entry, state, state->check->axes, i) ||
            came_later(judge, state, i, evidence, entry))
            continue;
        array_set_doubts(value, i, place->doubts & ~doubt_upheld(entry));
        state->upheld[i] = entry->seq;
    }
}

void judge_uphold_value(Judge *judge, CheckState *state, Array *value, const guint *evidence)
{
    for (guint i = 0; i < judge->said->len; i++) {
        const Entry *entry = g_ptr_array_index(judge->said, i);
        if (strcmp(entry->kind->name, "uphold") == 0)
            uphold_places(judge, state, value, evidence, entry);
    }
}

// Looks, fits, waits and signatures have no value to travel: the doubt is argued away where it
// stands.
static void uphold_rest(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                        Requirement *made)
{
    gboolean here = asked->asked != PLAN_READ && asked->asked != PLAN_BOLT;
    gsize index = (gsize)(asked - &g_array_index(judge->asked, PlanRequirement, 0));
    if (!here || !(made->doubts & doubt_upheld(entry)) || !entry_means(entry, asked, made) ||
        judge_rank(judge, entry->seq) <= judge->evidence[index])
        return;
    guint32 left = made->doubts & ~doubt_upheld(entry);
    made->verdict = made->value_verdict;
    made->reason = made->value_reason;
    made->upheld = entry->seq;
    requirement_doubt(made, left);
}

void judge_uphold_rest(Judge *judge)
{
    judge_each_said(judge, "uphold", uphold_rest);
}
