#include "bench_field.h"

#include "line_words.h"

#include <standbook/work/part_lots.h>
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

static gboolean is_by_lot(const PartAsked *asked, PartState state)
{
    return state_of(asked, state) == STATE_NEW && g_strcmp0(asked->track, "lot") == 0;
}

static Agenda agenda_of(Desk *desk)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session_entries(session);
    return (Agenda){session_plan(session), session_assessment(session),
                    (const Entry *const *)entries->pdata, entries->len};
}

static guint index_of(const Agenda *agenda, const Requirement *made)
{
    guint index = 0;
    g_ptr_array_find(agenda->assessment->requirements, made, &index);
    return index;
}

static PartPacket packet_of(Desk *desk, const Requirement *made)
{
    const Agenda agenda = agenda_of(desk);
    return part_packet(&agenda, index_of(&agenda, made));
}

char *bench_place(Desk *desk, const Requirement *made, PartState state)
{
    PartAsked asked = part_asked(session_plan(desk_build(desk)), made);
    if (made->asked != ASKED_FIT || !is_by_lot(&asked, state))
        return *made->place ? g_strdup_printf("%s %s", made->name, made->place)
                            : g_strdup(made->name);
    g_auto(PartPacket) packet = packet_of(desk, made);
    return g_strdup_printf("%s%s%s", made->name, *packet.place ? " " : "", packet.place);
}

enum { LINES_MOST = 9 };

char *bench_lots(Desk *desk, const Requirement *made, PartState state)
{
    Session *session = desk_build(desk);
    PartAsked asked = part_asked(session_plan(session), made);
    if (made->asked != ASKED_FIT || !is_by_lot(&asked, state))
        return NULL;
    const Agenda agenda = agenda_of(desk);
    g_autoptr(GPtrArray) lots = part_lots(session_shop(session), made->name);
    g_autoptr(GString) lines = g_string_new(lots->len ? "lots that fit, the newest first" : NULL);
    for (guint i = 0; i < lots->len && i < LINES_MOST; i++) {
        g_autofree char *words = part_lot_words(lots->pdata[i]);
        g_autofree char *doubt =
            part_lot_doubt(session, desk->who, index_of(&agenda, made), lots->pdata[i], desk->now);
        g_string_append_printf(lines, "\n%2u  %-12s  %s%s%s", i + 1, shop_label(lots->pdata[i]),
                               doubt ? "! " : "", doubt ? doubt : "", doubt ? " · " : "");
        g_string_append(lines, words);
    }
    return lines->len ? g_strdup(lines->str) : NULL;
}

// `upper, lower: scan, or 1 RB-1182-B`
static char *lots_hint(Desk *desk, const Requirement *made)
{
    g_autoptr(GPtrArray) lots = part_lots(session_shop(desk_build(desk)), made->name);
    g_auto(PartPacket) packet = packet_of(desk, made);
    g_autoptr(GString) hint = g_string_new(packet.shared);
    g_string_append_printf(hint, "%s%s", packet.shared ? ": " : "",
                           lots->len ? "scan, or " : "as the packet says; scan or type");
    for (guint i = 0; i < lots->len && i < LINES_MOST; i++)
        g_string_append_printf(hint, "%u %s   ", i + 1, shop_label(lots->pdata[i]));
    return g_strdup(g_strchomp(hint->str));
}

static BenchField lot_field(Desk *desk, const Requirement *made)
{
    return (BenchField){ASKS_TEXT, g_strdup(" "), lots_hint(desk, made), g_strdup("new, lot")};
}

static BenchField part_field(Desk *desk, const Requirement *made, PartState state)
{
    PartAsked asked = part_asked(session_plan(desk_build(desk)), made);
    if (is_by_lot(&asked, state))
        return lot_field(desk, made);
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

// A lot, said by its line in the list or as the packet has it.
static char *lot_line(Desk *desk, const Requirement *made, guint pieces, const char *typed)
{
    g_autoptr(GPtrArray) lots = part_lots(session_shop(desk_build(desk)), made->name);
    g_auto(PartPacket) packet = packet_of(desk, made);
    g_autofree char *label = part_answer(lots, typed);
    g_autofree char *count = pieces > 1 ? g_strdup_printf(" count %u", pieces) : g_strdup("");
    return g_strdup_printf("fit %s%s lot %s new", packet.target, count, label);
}

static char *part_line(Desk *desk, const Requirement *made, PartState state, const char *typed)
{
    static const char *const words[] = {NULL, "new", "reused", "reworked"};
    const Plan *plan = session_plan(desk_build(desk));
    PartAsked asked = part_asked(plan, made);
    state = state_of(&asked, state);
    if (is_by_lot(&asked, state))
        return *typed ? lot_line(desk, made, asked.count, typed) : NULL;
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
        return part_field(desk, made, state);
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
        return part_line(desk, made, state, typed);
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
