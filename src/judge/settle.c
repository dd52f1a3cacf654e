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
static void each_said(Judge *judge, const char *kind,
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

// The sorts of `what` in add and withdraw, and whether a requirement belongs to that thing.
static gboolean belongs_to(const Entry *entry, const PlanRequirement *asked,
                           const Requirement *made)
{
    const char *what = entry_text(entry, "what"), *name = entry_text(entry, "name");
    if (strcmp(what, "step") == 0)
        return strcmp(made->step->name, name) == 0;
    if (strcmp(what, "check") == 0)
        return asked->check && strcmp(made->name, name) == 0;
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
    each_said(judge, "not needed", mark_not_needed);
    each_said(judge, "withdraw", mark_withdrawn);
    each_said(judge, "add", mark_added);
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
    each_said(judge, "uphold", uphold_bolt);
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

static void uphold_places(const Judge *judge, CheckState *state, Array *value, const Entry *entry)
{
    for (guint i = 0; i < state->places && i < array_size(value); i++) {
        const Place *place = array_place(value, i);
        if (!(place->doubts & doubt_upheld(entry)) ||
            judge_rank(judge, entry->seq) <= state->evidence[i] ||
            !upholds_place(entry, state, state->check->axes, i))
            continue;
        array_set_doubts(value, i, place->doubts & ~doubt_upheld(entry));
        state->upheld[i] = entry->seq;
    }
}

void judge_uphold_value(const Judge *judge, CheckState *state, Array *value)
{
    for (guint i = 0; i < judge->said->len; i++) {
        const Entry *entry = g_ptr_array_index(judge->said, i);
        if (strcmp(entry->kind->name, "uphold") == 0)
            uphold_places(judge, state, value, entry);
    }
}

// Fits, waits and signatures have no value to travel: the doubt is argued away where it stands.
static void uphold_rest(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                        Requirement *made)
{
    gboolean here =
        asked->asked == PLAN_FIT || asked->asked == PLAN_WAIT || asked->asked == PLAN_SIGN;
    if (!here || made->verdict != VERDICT_IN_DOUBT || !entry_means(entry, asked, made) ||
        judge_rank(judge, entry->seq) <= judge_rank(judge, made->entry) ||
        !(made->doubts & doubt_upheld(entry)))
        return;
    guint32 left = made->doubts & ~doubt_upheld(entry);
    made->verdict = VERDICT_PASS;
    made->reason = REASON_NONE;
    made->upheld = entry->seq;
    requirement_doubt(made, left);
}

// Whether every reason for which the requirement does not pass is among those conceded.
static gboolean reasons_conceded(const Entry *entry, const Requirement *made)
{
    guint32 conceded = 0;
    for (gsize i = 0; i < entry_list_length(entry, "reasons"); i++)
        conceded |= reason_bit(reason_of_words(entry_list_item(entry, "reasons", i)));
    guint32 standing = made->doubts | reason_bit(made->reason);
    return (standing & ~conceded) == 0;
}

// Whether the value lies no further out than what was conceded; without a bound nothing more is
// asked.
static gboolean within_bound(const Entry *entry, const Requirement *made)
{
    const char *text = entry_value(entry, "bound", "value");
    const char *words = entry_value(entry, "bound", "unit");
    g_autoptr(Number) number = text ? number_from_text(text, NULL) : NULL;
    if (!number || !made->value)
        return TRUE;
    g_autoptr(Unit) unit = words && *words ? unit_parse(words, NULL) : NULL;
    g_autoptr(Number) bound = unit_to_base(unit, number);
    gint order = number_compare(made->value, bound);
    return g_strcmp0(entry_text(entry, "side"), "low") == 0 ? order >= 0 : order <= 0;
}

static void concede(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                    Requirement *made)
{
    (void)judge;
    if ((made->verdict != VERDICT_FAIL && made->verdict != VERDICT_IN_DOUBT) ||
        !entry_means(entry, asked, made) || !reasons_conceded(entry, made) ||
        !within_bound(entry, made))
        return;
    made->verdict = VERDICT_CONCEDED;
    made->conceded = entry->seq;
}

static void keep_own(Judge *judge)
{
    for (guint i = 0; i < judge->made->len; i++) {
        Requirement *made = judge_requirement(judge, i);
        made->own_verdict = made->verdict;
        made->own_reason = made->reason;
    }
}

// "look closer" answers nothing yet.
static void decide_finding(Judge *judge, const Entry *entry, const PlanRequirement *asked,
                           Requirement *made)
{
    if (!made->finding || made->own_verdict == VERDICT_OPEN || !entry_means(entry, asked, made) ||
        judge_rank(judge, entry->seq) < judge_rank(judge, MAX(made->entry, 1)))
        return;
    made->decided = g_strcmp0(entry_text(entry, "decision"), "look closer") == 0 ? 0 : entry->seq;
}

static gboolean has_ended(const Requirement *made)
{
    return made->verdict == VERDICT_PASS || made->verdict == VERDICT_CONCEDED;
}

// Whether what a finding's `settled by` names has ended well, where the places meet.
static gboolean name_has_ended(const Judge *judge, const PlanName *name, const Requirement *found)
{
    gboolean any = FALSE;
    for (guint i = 0; i < judge->made->len; i++) {
        const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, i);
        const Requirement *made = judge_requirement(judge, i);
        gboolean named = name->check ? asked->check == name->check
                                     : asked->tightening && asked->tightening->group == name->group;
        gboolean step = name->step ? asked->step == name->step : !asked->again;
        if (!named || !step || made->withdrawn)
            continue;
        const GPtrArray *axes = plan_requirement_axes(asked);
        if (axes && !judge_places_meet(axes, (const char *const *)made->labels,
                                       found->check->places, (const char *const *)found->labels))
            continue;
        if (!has_ended(made) && made->verdict != VERDICT_NOT_NEEDED)
            return FALSE;
        any = TRUE;
    }
    return any;
}

static gboolean is_settled(const Judge *judge, const Requirement *found)
{
    const GPtrArray *names = found->check->settled_by;
    for (guint i = 0; i < names->len; i++)
        if (!name_has_ended(judge, g_ptr_array_index(names, i), found))
            return FALSE;
    return names->len > 0;
}

// A finding outside its limits is open until it is answered, then noted.
static void settle_findings(Judge *judge)
{
    for (guint i = 0; i < judge->made->len; i++) {
        Requirement *made = judge_requirement(judge, i);
        if (!made->finding ||
            (made->own_verdict != VERDICT_FAIL && made->own_verdict != VERDICT_IN_DOUBT))
            continue;
        gboolean answered = made->decided || is_settled(judge, made);
        made->verdict = answered ? VERDICT_NOTED : VERDICT_OPEN;
        made->reason = REASON_NONE;
    }
}

static void settle_again(Judge *judge)
{
    for (guint i = 0; i < judge->checks->len; i++) {
        const CheckState *state = g_ptr_array_index(judge->checks, i);
        for (guint j = 0; state->again && j < places_count(state->check->places); j++) {
            Requirement *made = judge_requirement(judge, state->requirement[j]);
            const Requirement *later = judge_requirement(judge, state->again->requirement[j]);
            if (made->verdict == VERDICT_OPEN || later->verdict != VERDICT_PASS)
                continue;
            made->verdict = VERDICT_NOTED;
            made->reason = REASON_NONE;
        }
    }
}

void judge_settle(Judge *judge)
{
    each_said(judge, "uphold", uphold_rest);
    keep_own(judge);
    each_said(judge, "decide", decide_finding);
    each_said(judge, "concede", concede);
    settle_again(judge);
    settle_findings(judge);
}

void requirement_doubt(Requirement *made, guint32 doubts)
{
    static const Reason order[] = {REASON_TOOL, REASON_ORDER,  REASON_BASIS,    REASON_SPENT,
                                   REASON_PART, REASON_WINDOW, REASON_DISAGREE, REASON_CLOCK};
    made->doubts = doubts;
    for (gsize i = 0; i < G_N_ELEMENTS(order); i++) {
        if (!(doubts & reason_bit(order[i])))
            continue;
        made->verdict = VERDICT_IN_DOUBT;
        made->reason = order[i];
        return;
    }
}

void requirement_note(Requirement *made, char *note)
{
    g_ptr_array_add(made->notes, note);
}
