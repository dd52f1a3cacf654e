// Which requirements an entry means, and what people said of them before they are judged: not
// needed, withdrawn, added; and doubts argued away.
#include "judge.h"

#include <string.h>

// The sort of requirement an entry names by its word; -1 where it means a check.
static gint sort_of(const Entry *entry)
{
    const char *words = kind_field(entry->kind, "asked") ? entry_text(entry, "asked") : NULL;
    for (Asked asked = ASKED_READ; words && asked <= ASKED_SIGN; asked++)
        if (strcmp(asked_words(asked), words) == 0)
            return (gint)asked;
    return -1;
}

Said said_read(const Entry *entry, SaidKind kind)
{
    const char *field = kind_field(entry->kind, "name") ? "name" : "check";
    Said said = {.entry = entry,
                 .kind = kind,
                 .sort = sort_of(entry),
                 .name = entry_text(entry, field),
                 .step = kind_field(entry->kind, "step") ? entry_text(entry, "step") : NULL,
                 .stage = kind_field(entry->kind, "stage") ? entry_number(entry, "stage") : 0,
                 .count = entry_list_length(entry, "place")};
    said.labels = entry_labels(entry, said.count);
    return said;
}

static gboolean same_place(const Said *said, const Requirement *made)
{
    return said->count == 0 || g_strv_equal(said->labels, (const char *const *)made->labels);
}

// Where an entry does not say the step, it means a check in its own step, and a tightening in any.
static gboolean same_step(const Said *said, const PlanRequirement *asked)
{
    return said->step ? strcmp(said->step, asked->step->name) == 0 : !asked->again;
}

static gboolean same_sort(const Said *said, const Requirement *made)
{
    if (said->sort < 0)
        return made->asked == ASKED_READ || made->asked == ASKED_LOOK;
    return (gint)made->asked == said->sort;
}

static gboolean same_name(const Said *said, const Requirement *made)
{
    return g_strcmp0(said->name, made->name) == 0;
}

gboolean said_means(const Said *said, const PlanRequirement *asked, const Requirement *made)
{
    return same_sort(said, made) && same_name(said, made) && same_step(said, asked) &&
           same_place(said, made) && (said->stage == 0 || said->stage == made->stage);
}

// A whole step: `sign` of it without saying which signature.
static gboolean means_step(const Said *said, const Requirement *made)
{
    return said->sort == ASKED_SIGN && said->stage == 0 &&
           strcmp(said->name, made->step->name) == 0;
}

// Whether a name in an add entry is this one: of a check it may go on with its formula.
static gboolean is_named(const char *said, const char *name)
{
    gsize length = strlen(name);
    return strncmp(said, name, length) == 0 &&
           (said[length] == '\0' || g_str_has_prefix(said + length, " ="));
}

// Whether a requirement belongs to the step, check, tightening or part that was added or withdrawn.
static gboolean belongs_to(const Said *said, const PlanRequirement *asked, const Requirement *made)
{
    const char *what = entry_text(said->entry, "what");
    if (strcmp(what, "step") == 0)
        return strcmp(made->step->name, said->name) == 0;
    if (strcmp(what, "check") == 0)
        return asked->check && is_named(said->name, made->name);
    if (strcmp(what, "tightening") == 0)
        return (asked->tightening || asked->group) && same_name(said, made);
    return asked->part && same_name(said, made);
}

// Of a check that is read again in a later step that one alone, by its step.
static gboolean adds(const Said *said, const PlanRequirement *asked, const Requirement *made)
{
    const char *step = asked->check ? entry_text(said->entry, "step") : NULL;
    gboolean elsewhere = step && strcmp(entry_text(said->entry, "what"), "check") == 0 &&
                         strcmp(step, made->step->name) != 0;
    return belongs_to(said, asked, made) && !elsewhere;
}

static gboolean withdraws(const Said *said, const PlanRequirement *asked, const Requirement *made)
{
    return belongs_to(said, asked, made) && same_place(said, made);
}

static gboolean is_not_needed(const Said *said, const PlanRequirement *asked,
                              const Requirement *made)
{
    return said_means(said, asked, made) || means_step(said, made);
}

// Limits are amended for the whole build, wherever the check is asked for.
static gboolean amends(const Said *said, const PlanRequirement *asked, const Requirement *made)
{
    (void)asked;
    return same_sort(said, made) && same_name(said, made) && same_place(said, made);
}

// Which requirements an entry of a kind means.
static const struct {
    const char *kind;
    gboolean (*means)(const Said *said, const PlanRequirement *asked, const Requirement *made);
} sayings[] = {
    [SAID_NOT_NEEDED] = {"not needed", is_not_needed},
    [SAID_WITHDRAW] = {"withdraw", withdraws},
    [SAID_ADD] = {"add", adds},
    [SAID_UPHOLD] = {"uphold", said_means},
    [SAID_AMEND] = {"amend", amends},
    [SAID_DECIDE] = {"decide", said_means},
    [SAID_CONCEDE] = {"concede", said_means},
};

static void say_of(Judge *judge, guint requirement, guint said)
{
    GArray **of = &judge->said_of[requirement];
    if (!*of)
        *of = g_array_new(FALSE, FALSE, sizeof(guint));
    g_array_append_val(*of, said);
}

// Requirements of one name, and of one step, stand together: names are compared once for each.
static void say(Judge *judge, const Said *said, guint index)
{
    const char *name = NULL, *step = NULL;
    gboolean named = FALSE, in_step = FALSE;
    for (guint i = 0; said->name && i < judge->made->len; i++) {
        const Requirement *made = judge_requirement(judge, i);
        if (made->name != name)
            named = is_named(said->name, made->name);
        if (made->step->name != step)
            in_step = strcmp(said->name, made->step->name) == 0;
        name = made->name;
        step = made->step->name;
        if ((named || in_step) &&
            sayings[said->kind].means(said, &g_array_index(judge->asked, PlanRequirement, i), made))
            say_of(judge, i, index);
    }
}

void judge_gather_said(Judge *judge)
{
    judge->said = g_array_new(FALSE, FALSE, sizeof(Said));
    for (gsize i = 0; i < judge->count; i++) {
        const Entry *entry = judge_entry(judge, judge->ranked[i]);
        for (guint kind = 0; judge->live[entry->seq - 1] && kind < G_N_ELEMENTS(sayings); kind++) {
            if (strcmp(entry->kind->name, sayings[kind].kind) != 0)
                continue;
            const Said said = said_read(entry, (SaidKind)kind);
            say(judge, &said, judge->said->len);
            g_array_append_val(judge->said, said);
        }
    }
}

void judge_said_clear(Judge *judge)
{
    for (guint i = 0; i < judge->made->len; i++)
        g_clear_pointer(&judge->said_of[i], g_array_unref);
    for (guint i = 0; i < judge->said->len; i++)
        g_free(g_array_index(judge->said, Said, i).labels);
    g_free(judge->said_of);
    g_array_unref(judge->said);
}

// What the `at`-th entry about a requirement says; NULL if it is of another kind.
static const Entry *said_at(const Judge *judge, guint index, guint at, SaidKind kind)
{
    guint said = g_array_index(judge->said_of[index], guint, at);
    const Said *one = &g_array_index(judge->said, Said, said);
    return one->kind == kind ? one->entry : NULL;
}

static guint said_count(const Judge *judge, guint index)
{
    return judge->said_of[index] ? judge->said_of[index]->len : 0;
}

const Entry *judge_said_next(const Judge *judge, guint index, SaidKind kind, guint *at)
{
    const Entry *entry = NULL;
    while (!entry && *at < said_count(judge, index))
        entry = said_at(judge, index, (*at)++, kind);
    return entry;
}

static void each_said_of(Judge *judge, guint index, SaidKind kind, SaidVisitor visit)
{
    const Entry *entry;
    for (guint at = 0; (entry = judge_said_next(judge, index, kind, &at));)
        visit(judge, entry, index);
}

void judge_each_said(Judge *judge, SaidKind kind, SaidVisitor visit)
{
    for (guint i = 0; i < judge->stale->len; i++)
        each_said_of(judge, g_array_index(judge->stale, guint, i), kind, visit);
}

const Entry *judge_said_last(const Judge *judge, guint index, SaidKind kind, const char *field)
{
    for (guint i = said_count(judge, index); i-- > 0;) {
        const Entry *entry = said_at(judge, index, i, kind);
        if (entry && entry_text(entry, field))
            return entry;
    }
    return NULL;
}

static void mark_not_needed(Judge *judge, const Entry *entry, guint index)
{
    Requirement *made = judge_requirement(judge, index);
    made->verdict = VERDICT_NOT_NEEDED;
    made->entry = entry->seq;
    judge->not_needed[index] = TRUE;
}

static void mark_withdrawn(Judge *judge, const Entry *entry, guint index)
{
    (void)entry;
    judge_requirement(judge, index)->withdrawn = TRUE;
}

static void mark_added(Judge *judge, const Entry *entry, guint index)
{
    (void)entry;
    judge_requirement(judge, index)->added = TRUE;
}

void judge_mark(Judge *judge, guint index)
{
    each_said_of(judge, index, SAID_NOT_NEEDED, mark_not_needed);
    each_said_of(judge, index, SAID_WITHDRAW, mark_withdrawn);
    each_said_of(judge, index, SAID_ADD, mark_added);
}

gboolean judge_is_left_out(const Judge *judge, guint index)
{
    return judge->not_needed[index] || judge_requirement(judge, index)->withdrawn;
}

guint32 doubt_upheld(const Entry *entry)
{
    return reason_bit(reason_of_words(entry_text(entry, "doubt")));
}

// The bolt of this stage that stood when an uphold was entered; a reading may lean on it still,
// even if the bolt was done again since. NULL if there is none.
static TickState *tick_before(const Judge *judge, guint requirement, guint rank)
{
    TickState *found = NULL;
    for (guint i = 0; i < judge->ticks->len && tick_at(judge, i)->rank < rank; i++)
        if (tick_at(judge, i)->requirement == requirement)
            found = tick_at(judge, i);
    return found;
}

static void uphold_tick(Judge *judge, const Entry *entry, guint index)
{
    guint rank = judge_rank(judge, entry->seq);
    gboolean bolt = g_array_index(judge->asked, PlanRequirement, index).asked == PLAN_BOLT;
    TickState *tick = bolt ? tick_before(judge, index, rank) : NULL;
    if (!tick || rank <= tick->evidence)
        return;
    tick->upheld |= doubt_upheld(entry);
    tick->upheld_by = entry->seq;
}

void judge_uphold_ticks(Judge *judge)
{
    for (guint i = 0; judge->said->len && i < judge->made->len; i++)
        each_said_of(judge, i, SAID_UPHOLD, uphold_tick);
}

static gboolean upholds_check(const Said *said, const CheckState *state)
{
    return g_strcmp0(said->name, state->check->name) == 0 &&
           strcmp(said->step ? said->step : state->check->step->name, state->step->name) == 0;
}

static gboolean upholds_place(const Said *said, const CheckState *state, guint place)
{
    if (said->count == 0)
        return TRUE;
    if (said->count != state->check->places->len)
        return FALSE;
    g_autofree const char **at = judge_labels(state->check->axes, place);
    return places_meet(state->check->places, said->labels, state->check->axes, at);
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
                          const Said *said)
{
    guint32 upheld = doubt_upheld(said->entry);
    for (guint i = 0; i < state->places && i < array_size(value); i++) {
        const Place *place = array_place(value, i);
        if (!(place->doubts & upheld) || !upholds_place(said, state, i) ||
            came_later(judge, state, i, evidence, said->entry))
            continue;
        array_set_doubts(value, i, place->doubts & ~upheld);
        state->upheld[i] = said->entry->seq;
        if (place->doubts & (reason_bit(REASON_TOOL) | reason_bit(REASON_BASIS)))
            continue;
        state->argued[i] = MAX(state->argued[i], place->cause);
        array_set_cause(value, i, 0);
    }
}

void judge_uphold_value(Judge *judge, CheckState *state, Array *value, const guint *evidence)
{
    for (guint i = 0; i < judge->said->len; i++) {
        const Said *said = &g_array_index(judge->said, Said, i);
        if (said->kind == SAID_UPHOLD && upholds_check(said, state))
            uphold_places(judge, state, value, evidence, said);
    }
}

// Looks, fits, waits and signatures have no value to travel: the doubt is argued away where it
// stands.
static void uphold_rest(Judge *judge, const Entry *entry, guint index)
{
    Requirement *made = judge_requirement(judge, index);
    gboolean here = made->asked != ASKED_READ && made->asked != ASKED_BOLT;
    if (!here || !(made->doubts & doubt_upheld(entry)) ||
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
    judge_each_said(judge, SAID_UPHOLD, uphold_rest);
}
