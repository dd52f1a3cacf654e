#include "bench_field.h"

#include "line_words.h"

#include <string.h>

void bench_field_clear(BenchField *field)
{
    g_free(field->unit);
    g_free(field->hint);
    g_free(field->prompt);
}

ToolNeed bench_need(const Requirement *made)
{
    return (ToolNeed){NEED_GAUGE, made->check ? made->check->gauge : NULL, NULL};
}

// LOOKS -----------------------------------------------------------------------------------------

static const Limits *look_limits(const Requirement *made)
{
    const GPtrArray *limits = made->check->limits;
    return limits->len ? ((const PlanLimit *)limits->pdata[0])->limits : NULL;
}

// The answers that can be given, numbered on the screen; NULL where words or a count are asked.
static const char *const *look_choices(const Requirement *made)
{
    const Limits *limits = look_limits(made);
    return limits && limits_form(limits) == LIMITS_ANSWER ? limits_choices(limits) : NULL;
}

static gboolean is_yes_no(const char *const *choices)
{
    return choices && choices[0] &&
           (strcmp(choices[0], "yes") == 0 || strcmp(choices[0], "no") == 0);
}

static char *choices_hint(const char *const *choices)
{
    GString *hint = g_string_new(NULL);
    for (guint i = 0; choices[i]; i++)
        g_string_append_printf(hint, "%s%u %s", i ? "   " : "", i + 1, choices[i]);
    return g_string_free(hint, FALSE);
}

static BenchField look_field(const Requirement *made)
{
    const char *const *choices = look_choices(made);
    if (is_yes_no(choices))
        return (BenchField){ASKS_NUMBER, g_strdup("1/0"), g_strdup("1 yes   0 no"), NULL};
    if (choices)
        return (BenchField){ASKS_NUMBER, g_strdup("no."), choices_hint(choices), NULL};
    if (look_limits(made) && limits_form(look_limits(made)) == LIMITS_COUNT)
        return (BenchField){ASKS_NUMBER, g_strdup("pcs"), NULL, NULL};
    return (BenchField){ASKS_TEXT, g_strdup(" "), g_strdup("in words"), NULL};
}

static char *look_answer(const Requirement *made, const char *typed)
{
    const char *const *choices = look_choices(made);
    if (is_yes_no(choices) && strlen(typed) == 1)
        return g_strdup(*typed == '1' ? "yes" : *typed == '0' ? "no" : typed);
    guint64 number = choices ? g_ascii_strtoull(typed, NULL, 10) : 0;
    for (guint i = 0; choices && choices[i]; i++)
        if (number == i + 1)
            return g_strdup(choices[i]);
    return made->check->asks == LIMITS_COUNT ? g_strdup(typed) : line_quoted(typed);
}

// PARTS -----------------------------------------------------------------------------------------

typedef struct {
    gboolean new_needed;
    const char *track; // `lot`, `serial`, or NULL
    guint count;
} PartAsked;

static PartAsked part_asked(const Plan *plan, const Requirement *made)
{
    const PlanGroup *group = plan_group(plan, made->name);
    const PlanPart *part = group ? NULL : plan_part(plan, made->name);
    return group  ? (PartAsked){group->new_needed || group->once, group->track, 1}
           : part ? (PartAsked){part->new_needed, part->track, part->count}
                  : (PartAsked){FALSE, NULL, 1};
}

static PartState state_of(const PartAsked *asked, PartState state)
{
    return state == STATE_ASKED && asked->new_needed ? STATE_NEW : state;
}

static BenchField part_field(const Plan *plan, const Requirement *made, PartState state)
{
    PartAsked asked = part_asked(plan, made);
    state = state_of(&asked, state);
    if (state == STATE_ASKED)
        return (BenchField){ASKS_DIGIT, g_strdup("1 to 3"),
                            g_strdup("1 new   2 used again   3 reworked"), g_strdup("fitted how?")};
    if (state != STATE_NEW)
        return (BenchField){ASKS_TEXT, g_strdup(" "),
                            g_strdup("why it may be used again, in words"),
                            g_strdup(state == STATE_REUSED ? "used again" : "reworked")};
    if (asked.track)
        return (BenchField){ASKS_TEXT, g_strdup(" "), g_strdup("as the packet says; scan or type"),
                            g_strdup_printf("new, %s", asked.track)};
    return (BenchField){ASKS_TICK, g_strdup("Enter = new"), NULL, g_strdup("fit new")};
}

static char *part_line(const Plan *plan, const Requirement *made, PartState state,
                       const char *typed)
{
    static const char *const words[] = {NULL, "new", "reused", "reworked"};
    PartAsked asked = part_asked(plan, made);
    state = state_of(&asked, state);
    if (state == STATE_ASKED || (!*typed && (asked.track || state != STATE_NEW)))
        return NULL;
    g_autofree char *target = line_target(plan, made);
    g_autofree char *quoted = line_quoted(typed);
    g_autofree char *count =
        asked.count > 1 ? g_strdup_printf(" count %u", asked.count) : g_strdup("");
    if (state != STATE_NEW)
        return g_strdup_printf("fit %s%s %s %s", target, count, words[state], quoted);
    if (asked.track)
        return g_strdup_printf("fit %s%s %s %s new", target, count, asked.track, quoted);
    return g_strdup_printf("fit %s%s new", target, count);
}

// ALL -------------------------------------------------------------------------------------------

BenchField bench_field(Desk *desk, const Requirement *made, PartState state)
{
    const Unit *unit = made->check ? made->check->unit : NULL;
    switch (made->asked) {
    case ASKED_READ:
        return (BenchField){ASKS_NUMBER, g_strdup(unit ? unit_text(unit) : ""), NULL, NULL};
    case ASKED_LOOK:
        return look_field(made);
    case ASKED_FIT:
        return part_field(session_plan(desk_build(desk)), made, state);
    default:
        return (BenchField){.field = ASKS_NOTHING};
    }
}

static char *read_line(Desk *desk, const Plan *plan, const Requirement *made, const char *typed)
{
    g_autofree char *target = line_target(plan, made);
    ToolNeed need = bench_need(made);
    const char *gauge = need.sort ? toolbox_for(desk, &need) : NULL;
    return g_strdup_printf("read %s %s%s%s", target, typed, gauge ? " with " : "",
                           gauge ? gauge : "");
}

char *bench_line(Desk *desk, const Requirement *made, PartState state, const char *typed)
{
    const Plan *plan = session_plan(desk_build(desk));
    if (made->asked == ASKED_FIT)
        return part_line(plan, made, state, typed);
    if (!*typed)
        return NULL;
    if (made->asked == ASKED_READ)
        return read_line(desk, plan, made, typed);
    if (made->asked != ASKED_LOOK)
        return NULL;
    g_autofree char *target = line_target(plan, made);
    g_autofree char *answer = look_answer(made, typed);
    return g_strdup_printf("look %s %s", target, answer);
}
