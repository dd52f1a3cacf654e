#include "judge.h"

#include <string.h>

// What an entry does when judgement comes to it. Kinds that are not here change no verdict by
// themselves; decisions about a verdict (concede, uphold, decide, amend, not needed, withdraw) are
// read afterwards, by settle.c.
static const struct {
    const char *kind;
    void (*live)(Judge *judge, const Entry *entry);
    void (*struck)(Judge *judge, const Entry *entry);
} steps[] = {
    {"read", walk_read, NULL},
    {"look", walk_look, NULL},
    {"choose", walk_choose, NULL},
    {"tick", walk_tick, NULL},
    {"waited", walk_waited, NULL},
    {"slacken", walk_slacken, NULL},
    {"move", walk_move, walk_struck_move},
    {"fit", walk_fit, NULL},
    {"rework", walk_rework, NULL},
    {"laid", walk_laid, NULL},
    {"sign", walk_sign, NULL},
    {"reopen", walk_reopen, NULL},
};

void judge_walk(Judge *judge)
{
    for (gsize i = 0; i < judge->count; i++) {
        gint64 seq = judge->ranked[i];
        const Entry *entry = judge_entry(judge, seq);
        for (gsize j = 0; j < G_N_ELEMENTS(steps); j++) {
            if (strcmp(steps[j].kind, entry->kind->name) != 0)
                continue;
            if (judge->live[seq - 1])
                steps[j].live(judge, entry);
            else if (steps[j].struck)
                steps[j].struck(judge, entry);
        }
    }
}

// The step an entry was made in, by its index; the first where it does not say, so that it counts
// for every check.
static guint step_index(const Judge *judge, const Entry *entry)
{
    const char *name = entry_text(entry, "step");
    const PlanStep *step = name ? plan_step(judge->plan, name) : NULL;
    return step ? step->index : 0;
}

void judge_disturb(Judge *judge, const Entry *entry, const void *subject, const GPtrArray *axes,
                   GStrv labels)
{
    Disturbance one = {.subject = subject,
                       .axes = axes,
                       .labels = labels,
                       .rank = judge_rank(judge, entry->seq),
                       .step = step_index(judge, entry)};
    g_array_append_val(judge->disturbances, one);
}
