#include <standbook/plan/requirement.h>

// Where requirements go: into a list, or only into a count.
typedef struct {
    GArray *list; // NULL to count only
    guint64 count;
} Asking;

// Adds one requirement for each of `places` places.
static void ask(Asking *asking, PlanRequirement requirement, guint places)
{
    asking->count += places;
    for (guint i = 0; asking->list && i < places; i++) {
        requirement.place = i;
        g_array_append_val(asking->list, requirement);
    }
}

static void ask_check(Asking *asking, const PlanStep *step, const PlanCheck *check)
{
    gboolean value = check->asks == LIMITS_VALUE || check->asks == LIMITS_ANY;
    ask(asking,
        (PlanRequirement){.asked = value ? PLAN_READ : PLAN_LOOK,
                          .step = step,
                          .check = check,
                          .again = check->step != step},
        places_count(check->places));
}

static void ask_checks(Asking *asking, const PlanStep *step)
{
    for (guint i = 0; i < step->checks->len; i++)
        ask_check(asking, step, g_ptr_array_index(step->checks, i));
}

static void ask_again(Asking *asking, const PlanStep *step)
{
    for (guint i = 0; i < step->read_again->len; i++)
        ask_check(asking, step, ((const PlanName *)step->read_again->pdata[i])->check);
}

static void ask_parts(Asking *asking, const PlanStep *step)
{
    for (guint i = 0; i < step->parts->len; i++) {
        const PlanPart *part = g_ptr_array_index(step->parts, i);
        ask(asking, (PlanRequirement){.asked = PLAN_FIT, .step = step, .part = part},
            places_count(part->axes));
    }
}

// One stage over the bolts of one run, in the order asked.
static void ask_bolts(Asking *asking, PlanRequirement requirement, guint run)
{
    const PlanTightening *tightening = requirement.tightening;
    for (guint i = 0; i < places_count(tightening->group->axes); i++) {
        requirement.place = tightening->order[i];
        if (tightening->each[requirement.place] != run)
            continue;
        g_array_append_val(asking->list, requirement);
    }
}

// All stages of one run. A wait of the whole group stands once, in its last run.
static void ask_run(Asking *asking, const PlanTightening *tightening, guint run, gboolean last)
{
    for (guint i = 0; i < tightening->stages->len; i++) {
        const Stage *stage = g_ptr_array_index(tightening->stages, i);
        PlanRequirement requirement = {.asked = stage->kind == STAGE_WAIT ? PLAN_WAIT : PLAN_BOLT,
                                       .step = tightening->step,
                                       .tightening = tightening,
                                       .number = i + 1};
        if (stage->kind != STAGE_WAIT)
            ask_bolts(asking, requirement, run);
        else if (last)
            g_array_append_val(asking->list, requirement);
    }
}

static guint64 tightening_count(const PlanTightening *tightening)
{
    guint64 count = 0;
    for (guint i = 0; i < tightening->stages->len; i++) {
        const Stage *stage = g_ptr_array_index(tightening->stages, i);
        count += stage->kind == STAGE_WAIT ? 1 : places_count(tightening->group->axes);
    }
    return count;
}

// `each` takes one run through all stages before the next, in order of its first bolt.
static void ask_tightening(Asking *asking, const PlanTightening *tightening)
{
    asking->count += tightening_count(tightening);
    if (!asking->list)
        return;
    guint bolts = places_count(tightening->group->axes);
    g_autoptr(GHashTable) seen = g_hash_table_new(NULL, NULL);
    g_autoptr(GArray) runs = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < bolts; i++) {
        guint run = tightening->each[tightening->order[i]];
        if (g_hash_table_add(seen, GUINT_TO_POINTER(run)))
            g_array_append_val(runs, run);
    }
    for (guint i = 0; i < runs->len; i++)
        ask_run(asking, tightening, g_array_index(runs, guint, i), i + 1 == runs->len);
}

static void ask_tightenings(Asking *asking, const PlanStep *step, gboolean again)
{
    for (guint i = 0; i < step->tightenings->len; i++) {
        const PlanTightening *tightening = g_ptr_array_index(step->tightenings, i);
        const PlanGroup *group = tightening->group;
        if (tightening->again != again)
            continue;
        if (!again && (group->new_needed || group->once || group->track))
            ask(asking, (PlanRequirement){.asked = PLAN_FIT, .step = step, .group = group},
                places_count(group->axes));
        ask_tightening(asking, tightening);
    }
}

static void ask_fasteners(Asking *asking, const PlanStep *step)
{
    ask_tightenings(asking, step, FALSE);
}

static void ask_retightens(Asking *asking, const PlanStep *step)
{
    ask_tightenings(asking, step, TRUE);
}

static void ask_signatures(Asking *asking, const PlanStep *step)
{
    PlanRequirement requirement = {.asked = PLAN_SIGN, .step = step, .number = 1};
    ask(asking, requirement, 1);
    for (guint i = 0; i < step->holds->len; i++) {
        requirement.hold = g_ptr_array_index(step->holds, i);
        for (guint j = 0; j < requirement.hold->persons; j++) {
            requirement.number++;
            ask(asking, requirement, 1);
        }
    }
}

// The keys of a step that ask for something.
static const struct {
    const char *key;
    void (*ask)(Asking *asking, const PlanStep *step);
} work[] = {
    {"fit", ask_parts},           {"checks", ask_checks},
    {"fasteners", ask_fasteners}, {"retighten", ask_retightens},
    {"read again", ask_again},
};

static void ask_step(Asking *asking, const PlanStep *step)
{
    for (guint i = 0; i < tree_count(step->node); i++)
        for (gsize j = 0; j < G_N_ELEMENTS(work); j++)
            if (g_str_equal(tree_at(step->node, i)->key->text, work[j].key))
                work[j].ask(asking, step);
    ask_signatures(asking, step);
}

static guint64 ask_plan(const Plan *plan, GArray *list)
{
    Asking asking = {.list = list};
    for (guint i = 0; i < plan->steps->len; i++)
        ask_step(&asking, g_ptr_array_index(plan->steps, i));
    return asking.count;
}

GArray *plan_requirements(const Plan *plan)
{
    GArray *list = g_array_new(FALSE, FALSE, sizeof(PlanRequirement));
    guint64 count = ask_plan(plan, list);
    g_assert(count == list->len);
    return list;
}

guint64 plan_requirement_count(const Plan *plan)
{
    return ask_plan(plan, NULL);
}

const GPtrArray *plan_requirement_axes(const PlanRequirement *requirement)
{
    switch (requirement->asked) {
    case PLAN_READ:
    case PLAN_LOOK:
        return requirement->check->places;
    case PLAN_BOLT:
        return requirement->tightening ? requirement->tightening->group->axes : NULL;
    case PLAN_FIT:
        return requirement->part ? requirement->part->axes : requirement->group->axes;
    case PLAN_WAIT:
    case PLAN_SIGN:
        break;
    }
    return NULL;
}

static const char *asked_name(const PlanRequirement *requirement)
{
    if (requirement->check)
        return requirement->check->name;
    if (requirement->tightening)
        return requirement->tightening->group->name;
    if (requirement->part)
        return requirement->part->name;
    return requirement->group ? requirement->group->name : requirement->step->name;
}

char *plan_requirement_name(const PlanRequirement *requirement)
{
    static const char *const words[] = {"read", "look", "bolt", "wait", "fit", "sign"};
    GString *name = g_string_new(words[requirement->asked]);
    g_string_append_printf(name, " %s", asked_name(requirement));
    if (requirement->tightening || requirement->again)
        g_string_append_printf(name, " in %s", requirement->step->name);
    const GPtrArray *axes = plan_requirement_axes(requirement);
    if (axes && axes->len) {
        g_autofree char *place = places_label(axes, requirement->place);
        g_string_append_printf(name, "[%s]", place);
    }
    if (requirement->number)
        g_string_append_printf(name, requirement->tightening ? ", stage %u" : ", %u",
                               requirement->number);
    return g_string_free(name, FALSE);
}
