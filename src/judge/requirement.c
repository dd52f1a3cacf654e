// One requirement with nothing done yet.
#include "judge.h"

#include <string.h>

static const char *requirement_subject(const PlanRequirement *asked)
{
    if (asked->check)
        return asked->check->name;
    if (asked->tightening)
        return asked->tightening->group->name;
    if (asked->part)
        return asked->part->name;
    return asked->group ? asked->group->name : asked->step->name;
}

// The labels of a place and behind them, in the same block, its words: one for all that is made of
// the same requirement.
static GStrv place_words(const PlanRequirement *asked)
{
    const GPtrArray *axes = plan_requirement_axes(asked);
    gsize count = axes ? axes->len : 0, length = 1;
    g_autofree const char **labels = axes ? judge_labels(axes, asked->place) : NULL;
    for (gsize i = 0; i < count; i++)
        length += strlen(labels[i]) + strlen(", ");
    char **block = g_rc_box_alloc((count + 1) * sizeof *block + length);
    char *words = (char *)(block + count + 1);
    *words = '\0';
    for (gsize i = 0; i < count; i++) {
        block[i] = (char *)labels[i];
        words = g_stpcpy(i ? g_stpcpy(words, ", ") : words, labels[i]);
    }
    block[count] = NULL;
    return block;
}

Requirement *requirement_new(const PlanRequirement *asked, const Requirement *like)
{
    Requirement *made = g_rc_box_new0(Requirement);
    made->asked = (Asked)asked->asked;
    made->name = requirement_subject(asked);
    made->step = asked->step;
    made->labels = like ? g_rc_box_acquire(like->labels) : place_words(asked);
    made->place = (char *)(made->labels + g_strv_length(made->labels) + 1);
    made->stage = asked->number;
    made->gate = asked->step->gate;
    made->optional = asked->check && asked->check->optional;
    made->finding = asked->check && asked->check->finding;
    made->check = asked->check;
    made->notes = g_ptr_array_new_with_free_func(g_free);
    return made;
}

Requirement *requirement_ref(Requirement *made)
{
    return g_rc_box_acquire(made);
}

static void clear(gpointer data)
{
    Requirement *made = data;
    g_rc_box_release(made->labels);
    g_free(made->answer);
    number_free(made->value);
    number_free(made->variance);
    number_free(made->lower);
    number_free(made->upper);
    number_free(made->wear);
    number_free(made->plan_lower);
    number_free(made->plan_upper);
    number_free(made->plan_wear);
    if (made->beside)
        g_array_unref(made->beside);
    g_ptr_array_unref(made->notes);
}

void requirement_free(gpointer made)
{
    g_rc_box_release_full(made, clear);
}
