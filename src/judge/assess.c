#include <standbook/judge/assess.h>

#include "judge.h"

#include <string.h>

void requirement_free(gpointer data)
{
    Requirement *made = data;
    g_strfreev(made->labels);
    g_free(made->place);
    g_free(made->answer);
    number_free(made->value);
    number_free(made->variance);
    number_free(made->lower);
    number_free(made->upper);
    number_free(made->wear);
    number_free(made->plan_lower);
    number_free(made->plan_upper);
    number_free(made->plan_wear);
    g_ptr_array_unref(made->notes);
    g_free(made);
}

// What is not needed keeps that verdict whatever else was entered about it.
static void keep_not_needed(Judge *judge, const GArray *not_needed)
{
    for (guint i = 0; i < not_needed->len; i++) {
        Requirement *made = judge_requirement(judge, g_array_index(not_needed, guint, i));
        made->verdict = made->value_verdict = VERDICT_NOT_NEEDED;
        made->reason = made->value_reason = REASON_NONE;
        made->doubts = 0;
    }
}

static GArray *those_not_needed(const Judge *judge)
{
    GArray *not_needed = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < judge->made->len; i++)
        if (judge_requirement(judge, i)->verdict == VERDICT_NOT_NEEDED)
            g_array_append_val(not_needed, i);
    return not_needed;
}

static gint64 sealed_at(const Judge *judge, const char *gate)
{
    for (gsize i = judge->count; i-- > 0;) {
        const Entry *entry = judge->entries[i];
        if (judge->live[i] && strcmp(entry->kind->name, "seal") == 0 &&
            g_strcmp0(entry_text(entry, "gate"), gate) == 0)
            return entry->seq;
    }
    return 0;
}

static void count_gate(Assessment *assessment, const Requirement *made)
{
    for (guint i = made->gate; i < assessment->gates->len; i++) {
        GateCount *gate = g_ptr_array_index(assessment->gates, i);
        gate->counts[made->verdict]++;
        gate->left += requirement_is_left(made) ? 1 : 0;
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
}

static guint sum_of(const guint *counts)
{
    guint sum = 0;
    for (guint i = 0; i < VERDICTS; i++)
        sum += counts[i];
    return sum;
}

static Assessment *assessment_new(const Judge *judge, gint64 upto)
{
    Assessment *assessment = g_new0(Assessment, 1);
    assessment->upto = upto;
    assessment->requirements = g_ptr_array_new_with_free_func(requirement_free);
    for (guint i = 0; i < judge->made->len; i++)
        g_ptr_array_add(assessment->requirements, judge_requirement(judge, i));
    assessment->gates = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < judge->plan->gates->len; i++) {
        GateCount *gate = g_new0(GateCount, 1);
        gate->name = judge->plan->gates->pdata[i];
        gate->sealed = sealed_at(judge, gate->name);
        g_ptr_array_add(assessment->gates, gate);
    }
    count_all(assessment);
    g_assert(assessment->planned + assessment->added - assessment->withdrawn ==
             sum_of(assessment->counts));
    return assessment;
}

static void judge_all(Judge *judge)
{
    judge_mark(judge);
    g_autoptr(GArray) not_needed = those_not_needed(judge);
    judge_walk(judge);
    judge_order(judge);
    judge_uphold_bolts(judge);
    judge_bolts(judge);
    judge_checks(judge);
    judge_looks(judge);
    judge_fits(judge);
    judge_signs(judge);
    judge_uphold_rest(judge);
    keep_not_needed(judge, not_needed);
    judge_settle(judge);
}

static Verdict *verdicts_before(const Judge *judge, guint rank)
{
    Judge then;
    judge_init(&then, judge->plan, judge->entries, judge->count, judge->hypothesis, rank);
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
    judge_init(&judge, plan, entries, count, hypothesis, 0);
    judge_all(&judge);
    Assessment *assessment = assessment_new(&judge, (gint64)count);
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

static const char *step_words(const Requirement *made)
{
    gboolean bolted = made->asked == ASKED_BOLT || made->asked == ASKED_WAIT;
    gboolean again = made->check && made->check->step != made->step;
    return bolted || again ? made->step->name : NULL;
}

char *requirement_name(const Requirement *made)
{
    GString *name = g_string_new(asked_words(made->asked));
    gboolean bolted = made->asked == ASKED_BOLT || made->asked == ASKED_WAIT;
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
