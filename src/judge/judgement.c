#include <standbook/judge/choices.h>
#include <standbook/judge/judgement.h>

#include "judge.h"

#include <string.h>

struct Judgement {
    const Plan *plan;
    GPtrArray *entries; // const Entry *: the judge's are these, as far as it has come
    Judge judge;
    Assessment *assessment; // of the judge's requirements; NULL before the first
    GArray *changed;        // JudgementChange
};

// ANEW ------------------------------------------------------------------------------------------

static void change_clear(gpointer data)
{
    requirement_free((Requirement *)((JudgementChange *)data)->before);
}

static GArray *changes_new(void)
{
    GArray *changes = g_array_new(FALSE, FALSE, sizeof(JudgementChange));
    g_array_set_clear_func(changes, change_clear);
    return changes;
}

// Takes what was there before.
static void note_change(GArray *changes, guint index, Requirement *before)
{
    const JudgementChange change = {index, before};
    g_array_append_val(changes, change);
}

Judgement *judgement_new(const Plan *plan)
{
    Judgement *judgement = g_new0(Judgement, 1);
    judgement->plan = plan;
    judgement->entries = g_ptr_array_new();
    judgement->changed = changes_new();
    return judgement;
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
               NULL, 0, FALSE);
    judge_all(&judgement->judge);
    judgement->assessment = assessment_new(&judgement->judge);
    for (guint i = 0; before && i < before->requirements->len; i++)
        note_change(judgement->changed, i, requirement_ref(before->requirements->pdata[i]));
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

static void renew(Judgement *judgement, guint index, GArray *changes)
{
    Judge *judge = &judgement->judge;
    const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, index);
    Requirement *made = requirement_new(asked, judge_requirement(judge, index));
    note_change(changes, index, put(judgement, index, made));
    judge_mark(judge, index);
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

static void decide_touched(Judgement *judgement, GArray *changes)
{
    Judge *judge = &judgement->judge;
    judge_follow(judge);
    for (guint i = 0; i < judge->stale->len; i++)
        renew(judgement, g_array_index(judge->stale, guint, i), changes);
    judge_decide(judge);
}

static gboolean judge_next(Judgement *judgement)
{
    if (!judgement->assessment)
        return FALSE;
    judge_begin_touching(&judgement->judge);
    while (judgement->judge.count < judgement->entries->len)
        if (!walk_next(judgement))
            return FALSE;
    decide_touched(judgement, judgement->changed);
    assessment_count(judgement->assessment, &judgement->judge);
    return TRUE;
}

static void bring_up(Judgement *judgement)
{
    if (judgement->assessment && judgement->judge.count == judgement->entries->len)
        return;
    g_array_set_size(judgement->changed, 0);
    if (!judge_next(judgement))
        judge_whole(judgement);
}

// SUPPOSING -------------------------------------------------------------------------------------

// The answers that stood at one place before a supposed look.
typedef struct {
    LookState *at;
    LookState before;
} Looked;

// What a supposition did to the walk.
typedef struct {
    guint entries;  // how many it walked through
    guint readings; // how many there were before
    GArray *looked; // Looked
} Supposing;

// Whether the walk through an entry of that kind can be taken back.
static gboolean can_be_taken_back(const Entry *entry)
{
    static const char *const kinds[] = {"read",  "look", "take", "note",
                                        "photo", "cost", "zero", NULL};
    return !entry->after && g_strv_contains(kinds, entry->kind->name);
}

static void keep_looks(const Judge *judge, const Entry *entry, GArray *kept)
{
    if (strcmp(entry->kind->name, "look") != 0)
        return;
    const CheckState *state =
        judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    for (guint i = 0; state && i < places_count(state->check->places); i++) {
        const Looked looked = {&state->looks[i], state->looks[i]};
        if (looked.before.basis.ticks)
            g_array_ref(looked.before.basis.ticks);
        g_array_append_val(kept, looked);
    }
}

static void put_looks_back(const GArray *kept)
{
    for (guint i = kept->len; i-- > 0;) {
        const Looked *looked = &g_array_index(kept, Looked, i);
        basis_clear(&looked->at->basis);
        *looked->at = looked->before;
    }
}

static gboolean walk_supposed(Judgement *judgement, const Entry *const *entries, gsize count,
                              Supposing *supposing)
{
    for (gsize i = 0; i < count; i++)
        if (!can_be_taken_back(entries[i]))
            return FALSE;
    judge_begin_touching(&judgement->judge);
    for (gsize i = 0; i < count; i++) {
        keep_looks(&judgement->judge, entries[i], supposing->looked);
        g_ptr_array_add(judgement->entries, (gpointer)entries[i]);
        gboolean walked = walk_next(judgement);
        supposing->entries += walked ? 1 : 0;
        if (!walked) {
            g_ptr_array_set_size(judgement->entries, (gint)judgement->entries->len - 1);
            return FALSE;
        }
    }
    return TRUE;
}

static void walk_back(Judgement *judgement, const Supposing *supposing)
{
    Judge *judge = &judgement->judge;
    put_looks_back(supposing->looked);
    judge_drop_readings(judge, supposing->readings);
    judge_forget_touched(judge);
    for (guint i = 0; i < supposing->entries; i++) {
        judge_unread_last(judge);
        g_ptr_array_set_size(judgement->entries, (gint)judgement->entries->len - 1);
    }
}

// Of what was walked through; the judge's requirements are afterwards those of before.
static Assessment *assess_supposed(Judgement *judgement)
{
    g_autoptr(GArray) changes = changes_new();
    decide_touched(judgement, changes);
    Assessment *supposed = assessment_new(&judgement->judge);
    for (guint i = 0; i < supposed->requirements->len; i++)
        requirement_ref(supposed->requirements->pdata[i]);
    for (guint i = 0; i < changes->len; i++) {
        JudgementChange *change = &g_array_index(changes, JudgementChange, i);
        change->before = put(judgement, change->index, (Requirement *)change->before);
    }
    return supposed;
}

static Assessment *assess_apart(const Judgement *judgement, const Entry *const *entries,
                                gsize count)
{
    g_autoptr(GPtrArray) all = g_ptr_array_copy(judgement->entries, NULL, NULL);
    for (gsize i = 0; i < count; i++)
        g_ptr_array_add(all, (gpointer)entries[i]);
    return assess(judgement->plan, (const Entry *const *)all->pdata, all->len, 0, NULL);
}

Assessment *judgement_suppose(Judgement *judgement, const Entry *const *entries, gsize count)
{
    bring_up(judgement);
    g_autoptr(GArray) looked = g_array_new(FALSE, FALSE, sizeof(Looked));
    Supposing supposing = {0, judgement->judge.readings->len, looked};
    gboolean walked = walk_supposed(judgement, entries, count, &supposing);
    Assessment *supposed = walked ? assess_supposed(judgement) : NULL;
    walk_back(judgement, &supposing);
    return walked ? supposed : assess_apart(judgement, entries, count);
}

// WHAT IS ASKED ---------------------------------------------------------------------------------

void judgement_add(Judgement *judgement, const Entry *entry)
{
    g_ptr_array_add(judgement->entries, (gpointer)entry);
}

gsize judgement_entries(const Judgement *judgement)
{
    return judgement->entries->len;
}

const Assessment *judgement_now(Judgement *judgement)
{
    bring_up(judgement);
    return judgement->assessment;
}

Number *judgement_variance_with(Judgement *judgement, guint index, const GaugeTrial *trial,
                                gboolean *whole)
{
    bring_up(judgement);
    return judge_variance_with(&judgement->judge, index, trial, whole);
}

GArray *judgement_choices(Judgement *judgement, guint index)
{
    bring_up(judgement);
    return judge_choices(&judgement->judge, index);
}

const GArray *judgement_changed(const Judgement *judgement)
{
    return judgement->changed;
}

void judgement_free(Judgement *judgement)
{
    if (!judgement)
        return;
    if (judgement->assessment)
        judge_clear(&judgement->judge);
    assessment_free(judgement->assessment);
    g_ptr_array_unref(judgement->entries);
    g_array_unref(judgement->changed);
    g_free(judgement);
}
