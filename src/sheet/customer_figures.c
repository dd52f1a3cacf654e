// Which figures the customer's sheet prints: those of the engine as it was left, in groups.
#include "measured.h"
#include "sections.h"

#include <string.h>

static const Requirement *requirement_at(const SheetSource *source, guint index)
{
    return g_ptr_array_index(source->assessment->requirements, index);
}

// The last requirement of a check's place in the order of the work: a check read again, or moved to
// a later step, is printed as it was left.
static gboolean is_last(const SheetSource *source, guint index)
{
    const Requirement *one = requirement_at(source, index);
    for (guint i = index + 1; i < source->assessment->requirements->len; i++) {
        const Requirement *other = requirement_at(source, i);
        if (other->asked == one->asked && !other->withdrawn && other->value &&
            strcmp(other->name, one->name) == 0 && strcmp(other->place, one->place) == 0)
            return FALSE;
    }
    return TRUE;
}

// Whether bolts of a mock-up, taken down again since, were tightened until this check passed.
static gboolean is_mock_up(const SheetSource *source, const PlanCheck *check)
{
    gboolean mock_up = FALSE;
    for (guint s = 0; s < source->plan->steps->len; s++) {
        const PlanStep *step = g_ptr_array_index(source->plan->steps, s);
        for (guint t = 0; t < step->tightenings->len; t++) {
            const PlanTightening *each = g_ptr_array_index(step->tightenings, t);
            for (guint i = 0; i < each->stages->len; i++) {
                const Stage *stage = g_ptr_array_index(each->stages, i);
                if (stage->until == check && (each->again || !each->group->then_off))
                    return FALSE;
                mock_up = mock_up || stage->until == check;
            }
        }
    }
    return mock_up;
}

gboolean is_as_left(const SheetSource *source, guint index)
{
    const Requirement *requirement = requirement_at(source, index);
    return requirement->asked == ASKED_READ && !requirement->finding && !requirement->withdrawn &&
           requirement->value && requirement->verdict != VERDICT_NOT_NEEDED &&
           !is_mock_up(source, requirement->check) && is_last(source, index);
}

// Whether a formula that has a value uses it.
static gboolean is_input(const SheetSource *source, const Requirement *requirement)
{
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        const Requirement *each = requirement_at(source, i);
        if (each->check && each->check->formula && each->value && !each->withdrawn &&
            formula_uses(each->check->formula, requirement->name))
            return TRUE;
    }
    return FALSE;
}

// A figure without limits that is there for what is worked out of it is printed by that.
static Printed printed_as(const SheetSource *source, guint index)
{
    const Requirement *requirement = requirement_at(source, index);
    gboolean limits = requirement->lower || requirement->upper;
    if (!is_as_left(source, index) || (!limits && is_input(source, requirement)))
        return ON_RECORD_ALONE;
    return requirement_is_by_plan(requirement) ? BY_PLAN : limits ? WITH_LIMITS : WITHOUT_LIMITS;
}

GPtrArray *measured_groups(const SheetSource *source, Printed printed)
{
    GPtrArray *groups = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    const Requirement *before = NULL;
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        Requirement *each = g_ptr_array_index(source->assessment->requirements, i);
        if (printed_as(source, i) != printed)
            continue;
        if (!before || strcmp(before->name, each->name) != 0 || before->step != each->step)
            g_ptr_array_add(groups, g_ptr_array_new());
        g_ptr_array_add(g_ptr_array_index(groups, groups->len - 1), each);
        before = each;
    }
    return groups;
}

char *measured_elsewhere(const SheetSource *source)
{
    guint count = 0;
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        const Requirement *each = requirement_at(source, i);
        gboolean read = each->asked == ASKED_READ && each->value && !each->check->formula;
        count += read && printed_as(source, i) == ON_RECORD_ALONE ? 1 : 0;
    }
    if (count == 0)
        return NULL;
    return g_strdup_printf("%u more reading%s on the workshop's record.", count,
                           count == 1 ? " is" : "s are");
}
