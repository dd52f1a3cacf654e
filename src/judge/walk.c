#include "judge.h"

#include <string.h>

// Of several seals of a gate the newest counts, whatever its rank.
static void walk_seal(Judge *judge, const Entry *entry)
{
    gint gate = plan_gate(judge->plan, entry_text(entry, "gate"));
    if (gate >= 0)
        judge->sealed[gate] = MAX(judge->sealed[gate], entry->seq);
}

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
    {"seal", walk_seal, NULL},
};

void judge_walk_entry(Judge *judge, const Entry *entry)
{
    judge->walking = TRUE;
    for (gsize j = 0; j < G_N_ELEMENTS(steps); j++) {
        if (strcmp(steps[j].kind, entry->kind->name) != 0)
            continue;
        if (judge->live[entry->seq - 1])
            steps[j].live(judge, entry);
        else if (steps[j].struck)
            steps[j].struck(judge, entry);
    }
    judge->walking = FALSE;
}

void judge_walk(Judge *judge)
{
    for (gsize i = 0; i < judge->count; i++)
        judge_walk_entry(judge, judge_entry(judge, judge->ranked[i]));
}

void judge_disturb(Judge *judge, const Entry *entry, const void *subject, const GPtrArray *axes,
                   const char **labels)
{
    const char *step = entry_text(entry, "step");
    Disturbance one = {.subject = subject,
                       .axes = axes,
                       .labels = labels,
                       .rank = judge_rank(judge, entry->seq),
                       .step = step ? plan_step(judge->plan, step) : NULL,
                       .moved = strcmp(entry->kind->name, "move") == 0};
    g_array_append_val(judge->disturbances, one);
    judge_touch_resting(judge, subject);
    judge_touch(judge, one.step); // its signatures
}
