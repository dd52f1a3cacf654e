// What is asked at a place.
#include "agenda_inside.h"

#include <string.h>

void agenda_item_clear(AgendaItem *item)
{
    g_clear_pointer(&item->target, g_free);
    g_clear_pointer(&item->place, g_free);
    g_clear_pointer(&item->choices, g_strfreev);
    g_clear_pointer(&item->amount, number_free);
    g_clear_pointer(&item->amount_unit, unit_free);
    g_clear_pointer(&item->amount_words, g_free);
}

// PLACES ----------------------------------------------------------------------------------------

// The axes of a place; NULL for a wait or a signature.
static const GPtrArray *axes_of(const Agenda *agenda, const Requirement *made)
{
    if (made->check)
        return made->check->places;
    if (made->asked != ASKED_BOLT && made->asked != ASKED_FIT)
        return NULL;
    const PlanGroup *group = plan_group(agenda->plan, made->name);
    const PlanPart *part = group ? NULL : plan_part(agenda->plan, made->name);
    return group ? group->axes : part ? part->axes : NULL;
}

static gboolean is_shared(const GPtrArray *axes, const char *label)
{
    guint found = 0;
    for (guint i = 0; i < axes->len; i++)
        found += axis_find(axes->pdata[i], label) >= 0 ? 1 : 0;
    return found > 1;
}

// The labels with a comma between; an axis is named where `named` says so.
static char *place_text(const GPtrArray *axes, const Requirement *made,
                        gboolean (*named)(const GPtrArray *axes, guint axis, const char *label))
{
    GString *text = g_string_new(NULL);
    for (guint i = 0; axes && i < axes->len && made->labels[i]; i++) {
        gboolean name = named(axes, i, made->labels[i]);
        g_string_append_printf(text, "%s%s%s%s", i ? ", " : "",
                               name ? axis_name(axes->pdata[i]) : "", name ? " " : "",
                               made->labels[i]);
    }
    return g_string_free(text, FALSE);
}

static gboolean named_in_line(const GPtrArray *axes, guint axis, const char *label)
{
    (void)axis;
    return is_shared(axes, label);
}

// A number alone says nothing to people, and a bolt is called one.
static gboolean named_to_people(const GPtrArray *axes, guint axis, const char *label)
{
    return g_ascii_isdigit(*label) || is_shared(axes, label) ||
           strcmp(axis_name(axes->pdata[axis]), "bolt") == 0;
}

static char *target_of(const Agenda *agenda, const Requirement *made)
{
    if (made->asked == ASKED_SIGN)
        return g_strdup(made->name);
    g_autofree char *place = place_text(axes_of(agenda, made), made, named_in_line);
    return g_strdup_printf("%s%s%s%s in %s", made->name, *place ? "[" : "", place,
                           *place ? "]" : "", made->step->name);
}

// CHECKS ----------------------------------------------------------------------------------------

static const Limits *limits_of(const Requirement *made)
{
    const PlanLimit *limit = check_limit_at(made->check, (const char *const *)made->labels);
    return limit ? limit->limits : NULL;
}

static GStrv labels_of(const Axis *axis)
{
    GStrv labels = g_new0(char *, axis_size(axis) + 1);
    for (gsize i = 0; i < axis_size(axis); i++)
        labels[i] = g_strdup(axis_label(axis, i));
    return labels;
}

static gboolean is_yes_or_no(const char *const *choices)
{
    return g_strv_length((GStrv)choices) == 2 && g_strv_contains(choices, "yes") &&
           g_strv_contains(choices, "no");
}

static void fill_choice(AgendaItem *item, const char *const *choices)
{
    item->field = is_yes_or_no(choices) ? AGENDA_GO_NO_GO : AGENDA_CHOICE;
    item->choices = g_strdupv((GStrv)choices);
}

static void fill_check(const Agenda *agenda, AgendaItem *item)
{
    const PlanCheck *check = item->made->check;
    const Limits *limits = limits_of(item->made);
    LimitsForm asks = check->asks;
    item->gauge = check->gauge;
    item->set = check->setting;
    if (check->choose) {
        item->field = AGENDA_CHOICE;
        item->choices = labels_of(plan_axis(agenda->plan, check->choose));
    } else if (asks == LIMITS_ANSWER && limits) {
        fill_choice(item, limits_choices(limits));
    } else {
        item->field = asks == LIMITS_COUNT  ? AGENDA_COUNT
                      : asks == LIMITS_TEXT ? AGENDA_TEXT
                                            : AGENDA_VALUE;
        item->unit = item->field == AGENDA_VALUE && check->unit ? unit_text(check->unit) : NULL;
    }
}

// PARTS AND SIGNATURES --------------------------------------------------------------------------

static void fill_part(const Agenda *agenda, AgendaItem *item)
{
    const PlanGroup *group = plan_group(agenda->plan, item->made->name);
    const PlanPart *part = group ? NULL : plan_part(agenda->plan, item->made->name);
    item->field = AGENDA_PART;
    item->pieces = part ? part->count : 1;
    item->new_needed = group ? group->new_needed || group->once : part && part->new_needed;
    item->track = group ? group->track : part ? part->track : NULL;
}

// The first signature is the builder's; each hold has as many behind it as persons sign it.
static void fill_signature(AgendaItem *item)
{
    const GPtrArray *holds = item->made->step->holds;
    guint behind = item->made->stage - 1;
    item->field = AGENDA_SIGNATURE;
    for (guint i = 0; behind && i < holds->len && !item->hold; i++) {
        const PlanHold *hold = holds->pdata[i];
        if (behind <= hold->persons)
            item->hold = hold->words;
        else
            behind -= hold->persons;
    }
}

// BOLTS -----------------------------------------------------------------------------------------

// The position of the bolt among those of its set; -1 for a wait.
static gssize position_of(const GPtrArray *axes, const Requirement *made)
{
    gsize position = 0;
    if (made->asked == ASKED_WAIT)
        return -1;
    for (guint i = 0; i < axes->len; i++) {
        gssize label = axis_find(axes->pdata[i], made->labels[i]);
        if (label < 0)
            return -1;
        position = position * axis_size(axes->pdata[i]) + (gsize)label;
    }
    return (gssize)position;
}

static gboolean is_of_stage(const Requirement *made, const Requirement *other)
{
    return made->asked == ASKED_BOLT && made->step == other->step && made->stage == other->stage &&
           !made->withdrawn && made->verdict != VERDICT_NOT_NEEDED &&
           strcmp(made->name, other->name) == 0;
}

// Which one it is of the needed bolts of its run; they stand in the order asked.
static void count_turns(const Agenda *agenda, AgendaItem *item, guint position)
{
    const GPtrArray *all = agenda->assessment->requirements;
    const guint *each = item->tightening->each;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        gssize other =
            is_of_stage(made, item->made) ? position_of(item->tightening->group->axes, made) : -1;
        if (other < 0 || each[other] != each[position])
            continue;
        item->turns++;
        item->turn += i <= item->index ? 1 : 0;
    }
}

static void fill_lubricant(const Agenda *agenda, AgendaItem *item, guint position)
{
    const GPtrArray *lubricants = item->tightening->group->lubricants;
    for (guint i = 0; i < lubricants->len; i++) {
        const PlanLubricant *lubricant = lubricants->pdata[i];
        if (!lubricant->positions[position])
            continue;
        item->lubricant = lubricant->words;
        item->consumed = plan_consumable(agenda->plan, lubricant->words) ? lubricant->words : NULL;
    }
}

static void fill_bolt(const Agenda *agenda, AgendaItem *item)
{
    item->field = AGENDA_TICK;
    item->tightening = plan_tightening(item->made->step, item->made->name);
    if (!item->tightening)
        return;
    const Stage *stage = item->tightening->stages->pdata[item->made->stage - 1];
    gssize position = position_of(item->tightening->group->axes, item->made);
    item->stage = stage;
    item->position = position;
    item->amount_unit = agenda_amount_unit(agenda->plan, stage);
    g_autoptr(Number) base = agenda_amount(agenda, item->made, item->tightening, stage);
    item->amount = base ? unit_from_base(item->amount_unit, base) : NULL;
    if (!base)
        g_clear_pointer(&item->amount_unit, unit_free);
    item->amount_words = agenda_amount_words(stage, base, item->amount_unit);
    item->all_at_once = item->tightening->group->as_group &&
                        (stage->kind == STAGE_TORQUE || stage->kind == STAGE_SNUG);
    if (position < 0)
        return;
    count_turns(agenda, item, (guint)position);
    fill_lubricant(agenda, item, (guint)position);
}

// ALL -------------------------------------------------------------------------------------------

AgendaItem agenda_item(const Agenda *agenda, guint index)
{
    const Requirement *made = agenda->assessment->requirements->pdata[index];
    AgendaItem item = {
        .index = index,
        .made = made,
        .again = made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT,
        .target = target_of(agenda, made),
        .place = place_text(axes_of(agenda, made), made, named_to_people),
    };
    if (made->check)
        fill_check(agenda, &item);
    else if (made->asked == ASKED_FIT)
        fill_part(agenda, &item);
    else if (made->asked == ASKED_SIGN)
        fill_signature(&item);
    else
        fill_bolt(agenda, &item);
    return item;
}
