#include <standbook/judge/assess.h>

#include "judge.h"

#include <standbook/record/order.h>
#include <string.h>

// Counted for its own gate; gates_add_up carries it on to those behind.
static void count_gate(Assessment *assessment, const Requirement *made)
{
    if (made->gate >= assessment->gates->len)
        return;
    GateCount *gate = g_ptr_array_index(assessment->gates, made->gate);
    gate->counts[made->verdict]++;
    gate->left += requirement_is_left(made) ? 1 : 0;
}

static void gates_add_up(Assessment *assessment)
{
    for (guint i = 1; i < assessment->gates->len; i++) {
        const GateCount *before = g_ptr_array_index(assessment->gates, i - 1);
        GateCount *gate = g_ptr_array_index(assessment->gates, i);
        for (guint verdict = 0; verdict < VERDICTS; verdict++)
            gate->counts[verdict] += before->counts[verdict];
        gate->left += before->left;
    }
}

static void count_all(Assessment *assessment)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = g_ptr_array_index(assessment->requirements, i);
        if (made->added)
            assessment->added++;
        else
            assessment->planned++;
        if (made->withdrawn) {
            assessment->withdrawn++;
            continue;
        }
        assessment->counts[made->verdict]++;
        count_gate(assessment, made);
    }
    gates_add_up(assessment);
}

// What the seal says of a gate, held against what is judged of it today.
static void count_turned(GateCount *gate, const Judge *judge)
{
    static const Verdict left[] = {VERDICT_OPEN, VERDICT_FAIL, VERDICT_IN_DOUBT};
    const Entry *seal = gate->sealed ? judge_entry(judge, gate->sealed) : NULL;
    const json_t *then = seal ? json_object_get(seal->body, "counts") : NULL;
    for (guint i = 0; then && i < G_N_ELEMENTS(left); i++) {
        json_int_t sealed = json_integer_value(json_object_get(then, verdict_words(left[i])));
        json_int_t more = (json_int_t)gate->counts[left[i]] - sealed;
        gate->turned[left[i]] = more > 0 ? (guint)more : 0;
    }
}

static guint sum_of(const guint *counts)
{
    guint sum = 0;
    for (guint i = 0; i < VERDICTS; i++)
        sum += counts[i];
    return sum;
}

void assessment_count(Assessment *assessment, const Judge *judge)
{
    assessment->upto = (gint64)judge->count;
    assessment->planned = assessment->added = assessment->withdrawn = 0;
    memset(assessment->counts, 0, sizeof assessment->counts);
    for (guint i = 0; i < assessment->gates->len; i++) {
        GateCount *gate = g_ptr_array_index(assessment->gates, i);
        *gate = (GateCount){.name = judge->plan->gates->pdata[i],
                            .sealed = judge->sealed[i],
                            .since = judge_since(judge, i)};
    }
    count_all(assessment);
    for (guint i = 0; i < assessment->gates->len; i++)
        count_turned(assessment->gates->pdata[i], judge);
    g_assert(assessment->planned + assessment->added - assessment->withdrawn ==
             sum_of(assessment->counts));
}

Assessment *assessment_new(const Judge *judge)
{
    Assessment *assessment = g_new0(Assessment, 1);
    assessment->requirements = g_ptr_array_new_with_free_func(requirement_free);
    g_ptr_array_set_size(assessment->requirements, (gint)judge->made->len);
    memcpy(assessment->requirements->pdata, judge->made->pdata,
           judge->made->len * sizeof *judge->made->pdata);
    assessment->gates = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < judge->plan->gates->len; i++)
        g_ptr_array_add(assessment->gates, g_new0(GateCount, 1));
    assessment_count(assessment, judge);
    return assessment;
}

// Indexed by PlanAsked: each requirement by itself, out of what the walk has gathered.
static void (*const deciders[])(Judge *, guint) = {
    judge_check_requirement, judge_look_requirement, judge_bolt_requirement,
    judge_bolt_requirement,  judge_fit_requirement,  judge_sign_requirement,
};

// What is not needed keeps that verdict whatever else was entered about it.
static void keep_not_needed(Judge *judge)
{
    for (guint i = 0; i < judge->stale->len; i++) {
        guint index = g_array_index(judge->stale, guint, i);
        Requirement *made = judge_requirement(judge, index);
        if (!judge->not_needed[index])
            continue;
        made->verdict = made->value_verdict = VERDICT_NOT_NEEDED;
        made->reason = made->value_reason = REASON_NONE;
        made->doubts = 0;
        made->tool = made->redone = (ToolCause){0};
    }
}

void judge_decide(Judge *judge)
{
    for (guint i = 0; i < judge->stale->len; i++) {
        guint index = g_array_index(judge->stale, guint, i);
        deciders[g_array_index(judge->asked, PlanRequirement, index).asked](judge, index);
    }
    judge_uphold_rest(judge);
    keep_not_needed(judge);
    judge_settle(judge);
}

void judge_all(Judge *judge)
{
    judge_walk(judge);
    judge_follow(judge);
    judge_decide(judge);
}

static Verdict *verdicts_before(const Judge *judge, guint rank)
{
    Judge then;
    judge_init(&then, judge->plan, judge->entries, judge->count, judge->hypothesis, rank, FALSE);
    then.before = g_hash_table_ref(judge->before);
    judge_all(&then);
    Verdict *verdicts = g_new(Verdict, then.made->len + 1);
    for (guint i = 0; i < then.made->len; i++) {
        const Requirement *made = judge_requirement(&then, i);
        verdicts[i] = made->finding ? made->own_verdict : made->verdict;
    }
    g_ptr_array_set_free_func(then.made, requirement_free);
    judge_clear(&then);
    return verdicts;
}

Verdict judge_verdict_before(Judge *judge, guint requirement, guint rank)
{
    if (!judge->before)
        judge->before = g_hash_table_new_full(NULL, NULL, NULL, g_free);
    Verdict *verdicts = g_hash_table_lookup(judge->before, GUINT_TO_POINTER(rank));
    if (!verdicts) {
        verdicts = verdicts_before(judge, rank);
        g_hash_table_insert(judge->before, GUINT_TO_POINTER(rank), verdicts);
    }
    return verdicts[requirement];
}

Assessment *assess(const Plan *plan, const Entry *const *entries, gsize count, gint64 upto,
                   const Hypothesis *hypothesis)
{
    Judge judge;
    if (upto > 0 && (gsize)upto < count)
        count = (gsize)upto;
    judge_init(&judge, plan, entries, count, hypothesis, 0, FALSE);
    judge_all(&judge);
    Assessment *assessment = assessment_new(&judge);
    judge_clear(&judge);
    return assessment;
}

static guint rank_of(const Entry *const *entries, gsize count, gint64 seq)
{
    g_autofree gint64 *ranked = g_new(gint64, count + 1);
    guint rank = 0;
    rank_order(entries, count, ranked);
    while (rank < count && ranked[rank] != seq)
        rank++;
    return rank + 1;
}

Assessment *assess_before(const Plan *plan, const Entry *const *entries, gsize count, gint64 seq)
{
    Judge judge;
    judge_init(&judge, plan, entries, count, NULL, rank_of(entries, count, seq), TRUE);
    judge_all(&judge);
    Assessment *assessment = assessment_new(&judge);
    judge_clear(&judge);
    return assessment;
}

void assessment_free(Assessment *assessment)
{
    if (!assessment)
        return;
    g_ptr_array_unref(assessment->requirements);
    g_ptr_array_unref(assessment->gates);
    g_free(assessment);
}

gboolean requirement_is_bolted(const Requirement *made)
{
    return made->asked == ASKED_BOLT || made->asked == ASKED_WAIT;
}

gboolean requirement_is_by_plan(const Requirement *made)
{
    return made->check && made->check->by_plan && made->value && !made->entry;
}

const char *requirement_by_plan_said(const Requirement *made)
{
    return requirement_is_by_plan(made) ? "Worked out from the plan alone: not measured." : NULL;
}

const char *requirement_pulled_said(void)
{
    return "pulled once more after it was turned, without being loosened: how far it is turned now "
           "is not known";
}

const char *requirement_undone_said(void)
{
    return "what it was signed for was undone, or done again, since";
}

char *requirement_title(const Requirement *made)
{
    return g_strconcat(made->name, *made->place ? " " : "", made->place, NULL);
}

static const char *step_words(const Requirement *made)
{
    gboolean bolted = requirement_is_bolted(made);
    gboolean again = made->check && made->check->step != made->step;
    return bolted || again ? made->step->name : NULL;
}

char *requirement_name(const Requirement *made)
{
    GString *name = g_string_new(asked_words(made->asked));
    gboolean bolted = requirement_is_bolted(made);
    const char *step = step_words(made);
    g_autofree char *labels = g_strjoinv(", ", made->labels);
    g_string_append_printf(name, " %s", made->name);
    if (step)
        g_string_append_printf(name, " in %s", step);
    if (*labels)
        g_string_append_printf(name, "[%s]", labels);
    if (made->stage)
        g_string_append_printf(name, bolted ? ", stage %u" : ", %u", made->stage);
    return g_string_free(name, FALSE);
}

const Requirement *requirement_of_name(const Assessment *assessment, const char *name)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        g_autofree char *each = strstr(name, made->name) ? requirement_name(made) : NULL;
        if (g_strcmp0(each, name) == 0)
            return made;
    }
    return NULL;
}
