#include <standbook/judge/judgement.h>

#include "judge.h"

#include <string.h>

// The answers that stood at one place before a supposed look.
typedef struct {
    LookState *at;
    LookState before;
} Looked;

struct Judgement {
    const Plan *plan;
    GPtrArray *entries; // const Entry *: the judge's are these, as far as it has come
    Judge judge;
    Assessment *assessment; // of the judge's requirements; NULL before the first
    GArray *changed;        // JudgementChange
    GPtrArray *replaced;    // Requirement *: those of `changed`, where they are not in use
    guint supposed;         // how many of `entries` are only supposed
    guint readings;         // how many of the judge's are not
    GArray *looked;         // Looked
    Assessment *apart;      // of a supposition that was judged whole, or NULL
};

Judgement *judgement_new(const Plan *plan)
{
    Judgement *judgement = g_new0(Judgement, 1);
    judgement->plan = plan;
    judgement->entries = g_ptr_array_new();
    judgement->changed = g_array_new(FALSE, FALSE, sizeof(JudgementChange));
    judgement->replaced = g_ptr_array_new_with_free_func(requirement_free);
    judgement->looked = g_array_new(FALSE, FALSE, sizeof(Looked));
    return judgement;
}

// ANEW ------------------------------------------------------------------------------------------

static void note_change(Judgement *judgement, guint index, const Requirement *before)
{
    const JudgementChange change = {index, before};
    g_array_append_val(judgement->changed, change);
}

static void forget_changes(Judgement *judgement)
{
    g_array_set_size(judgement->changed, 0);
    g_ptr_array_set_size(judgement->replaced, 0);
}

static const Entry *const *entries_of(const Judgement *judgement)
{
    return (const Entry *const *)judgement->entries->pdata;
}

static void judge_whole(Judgement *judgement)
{
    Assessment *before = judgement->assessment;
    if (before)
        judge_clear(&judgement->judge);
    judge_init(&judgement->judge, judgement->plan, entries_of(judgement), judgement->entries->len,
               NULL, 0);
    judge_all(&judgement->judge);
    judgement->assessment = assessment_new(&judgement->judge);
    for (guint i = 0; before && i < before->requirements->len; i++) {
        note_change(judgement, i, before->requirements->pdata[i]);
        g_ptr_array_add(judgement->replaced, before->requirements->pdata[i]);
    }
    if (before)
        g_ptr_array_set_free_func(before->requirements, NULL);
    assessment_free(before);
}

// ONE ENTRY MORE --------------------------------------------------------------------------------

// Puts a requirement in the place of what stood there, which is handed back.
static Requirement *put(Judgement *judgement, guint index, Requirement *made)
{
    Requirement *before = judge_requirement(&judgement->judge, index);
    judgement->judge.made->pdata[index] = made;
    judgement->assessment->requirements->pdata[index] = made;
    return before;
}

static void renew(Judgement *judgement, guint index)
{
    Judge *judge = &judgement->judge;
    const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, index);
    Requirement *made = requirement_new(asked, judge_requirement(judge, index));
    Requirement *before = put(judgement, index, made);
    judge_mark(judge, index);
    note_change(judgement, index, before);
    g_ptr_array_add(judgement->replaced, before);
}

// Walks through the next entry of `entries`; FALSE if it cannot be walked through by itself.
static gboolean walk_next(Judgement *judgement)
{
    Judge *judge = &judgement->judge;
    const Entry *entry = judgement->entries->pdata[judge->count];
    if (!judge_goes_on(judge, entry))
        return FALSE;
    judge->entries = entries_of(judgement);
    judge_read_next(judge, entry);
    judge_walk_entry(judge, entry);
    return TRUE;
}

static void decide_touched(Judgement *judgement)
{
    Judge *judge = &judgement->judge;
    judge_follow(judge);
    for (guint i = 0; i < judge->stale->len; i++)
        renew(judgement, g_array_index(judge->stale, guint, i));
    judge_decide(judge);
    assessment_count(judgement->assessment, judge);
}

static gboolean judge_next(Judgement *judgement)
{
    if (!judgement->assessment)
        return FALSE;
    judge_begin_touching(&judgement->judge);
    while (judgement->judge.count < judgement->entries->len)
        if (!walk_next(judgement))
            return FALSE;
    decide_touched(judgement);
    return TRUE;
}

static void bring_up(Judgement *judgement)
{
    gboolean up = judgement->assessment && judgement->judge.count == judgement->entries->len;
    if (up)
        return;
    forget_changes(judgement);
    if (!judge_next(judgement))
        judge_whole(judgement);
}

// SUPPOSING -------------------------------------------------------------------------------------

// Whether the walk through an entry of that kind can be taken back.
static gboolean can_be_taken_back(const Entry *entry)
{
    static const char *const kinds[] = {"read", "look", "take", "note", "photo", "cost", NULL};
    return !entry->after && g_strv_contains(kinds, entry->kind->name);
}

static void keep_looks(Judgement *judgement, const Entry *entry)
{
    if (strcmp(entry->kind->name, "look") != 0)
        return;
    const CheckState *state =
        judge_check(&judgement->judge, entry_text(entry, "check"), entry_text(entry, "step"));
    for (guint i = 0; state && i < places_count(state->check->places); i++) {
        const Looked looked = {&state->looks[i], state->looks[i]};
        if (looked.before.basis.ticks)
            g_array_ref(looked.before.basis.ticks);
        g_array_append_val(judgement->looked, looked);
    }
}

static void put_looks_back(Judgement *judgement)
{
    for (guint i = judgement->looked->len; i-- > 0;) {
        const Looked *looked = &g_array_index(judgement->looked, Looked, i);
        basis_clear(&looked->at->basis);
        *looked->at = looked->before;
    }
    g_array_set_size(judgement->looked, 0);
}

static void put_requirements_back(Judgement *judgement)
{
    g_ptr_array_set_free_func(judgement->replaced, NULL);
    for (guint i = 0; i < judgement->replaced->len; i++) {
        guint index = g_array_index(judgement->changed, JudgementChange, i).index;
        requirement_free(put(judgement, index, judgement->replaced->pdata[i]));
    }
    g_ptr_array_set_size(judgement->replaced, 0);
    g_ptr_array_set_free_func(judgement->replaced, requirement_free);
}

// Undoes what judgement_suppose did.
static void take_back(Judgement *judgement)
{
    Judge *judge = &judgement->judge;
    if (!judgement->supposed && !judgement->apart)
        return;
    g_clear_pointer(&judgement->apart, assessment_free);
    put_requirements_back(judgement);
    forget_changes(judgement);
    put_looks_back(judgement);
    judge_drop_readings(judge, judgement->readings);
    judge_forget_touched(judge);
    for (; judgement->supposed; judgement->supposed--) {
        judge_unread_last(judge);
        g_ptr_array_set_size(judgement->entries, (gint)judgement->entries->len - 1);
    }
    assessment_count(judgement->assessment, judge);
}

// Walks through what is supposed as far as that can be taken back; FALSE if that is not to its end.
static gboolean walk_supposed(Judgement *judgement, const Entry *const *entries, gsize count)
{
    judgement->readings = judgement->judge.readings->len;
    for (gsize i = 0; i < count; i++)
        if (!can_be_taken_back(entries[i]))
            return FALSE;
    judge_begin_touching(&judgement->judge);
    for (gsize i = 0; i < count; i++) {
        g_ptr_array_add(judgement->entries, (gpointer)entries[i]);
        keep_looks(judgement, entries[i]);
        if (!walk_next(judgement)) {
            g_ptr_array_set_size(judgement->entries, (gint)judgement->entries->len - 1);
            return FALSE;
        }
        judgement->supposed++;
    }
    return TRUE;
}

static void judge_apart(Judgement *judgement, const Entry *const *entries, gsize count)
{
    g_autoptr(GPtrArray) all = g_ptr_array_copy(judgement->entries, NULL, NULL);
    for (gsize i = 0; i < count; i++)
        g_ptr_array_add(all, (gpointer)entries[i]);
    judgement->apart = assess(judgement->plan, (const Entry *const *)all->pdata, all->len, 0, NULL);
    for (guint i = 0; i < judgement->assessment->requirements->len; i++)
        note_change(judgement, i, judgement->assessment->requirements->pdata[i]);
}

const Assessment *judgement_suppose(Judgement *judgement, const Entry *const *entries, gsize count)
{
    take_back(judgement);
    bring_up(judgement);
    forget_changes(judgement);
    if (walk_supposed(judgement, entries, count)) {
        decide_touched(judgement);
        return judgement->assessment;
    }
    take_back(judgement);
    judge_apart(judgement, entries, count);
    return judgement->apart;
}

// WHAT IS ASKED ---------------------------------------------------------------------------------

void judgement_add(Judgement *judgement, const Entry *entry)
{
    take_back(judgement);
    g_ptr_array_add(judgement->entries, (gpointer)entry);
}

gsize judgement_entries(const Judgement *judgement)
{
    return judgement->entries->len - judgement->supposed;
}

const Assessment *judgement_now(Judgement *judgement)
{
    take_back(judgement);
    bring_up(judgement);
    return judgement->assessment;
}

const GArray *judgement_changed(const Judgement *judgement)
{
    return judgement->changed;
}

void judgement_free(Judgement *judgement)
{
    if (!judgement)
        return;
    take_back(judgement);
    if (judgement->assessment)
        judge_clear(&judgement->judge);
    assessment_free(judgement->assessment);
    g_ptr_array_unref(judgement->entries);
    g_array_unref(judgement->changed);
    g_ptr_array_unref(judgement->replaced);
    g_array_unref(judgement->looked);
    g_free(judgement);
}
