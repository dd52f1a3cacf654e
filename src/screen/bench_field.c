#include "bench_field.h"

#include "line_words.h"
#include "slip.h"

#include <standbook/work/agenda_item.h>
#include <standbook/work/ago.h>
#include <standbook/work/choice.h>
#include <standbook/work/part_lots.h>
#include <standbook/work/tool_standing.h>

void bench_field_clear(BenchField *field)
{
    g_free(field->unit);
    g_free(field->hint);
    g_free(field->prompt);
}

ToolNeed bench_need(const Requirement *made)
{
    return (ToolNeed){.need = NEED_GAUGE,
                      .sort = made->check ? made->check->gauge : NULL,
                      .least = made->value ? made->value : made->lower,
                      .greatest = made->value ? made->value : made->upper,
                      .check = made->check};
}

// What was read there, else at another place of the check in that step; NULL for nothing.
static const Number *value_beside(const Agenda *agenda, const Requirement *made)
{
    const GPtrArray *all = agenda->assessment->requirements;
    for (guint i = 0; !made->value && i < all->len; i++) {
        const Requirement *other = all->pdata[i];
        if (other->check == made->check && other->step == made->step && other->value)
            return other->value;
    }
    return made->value;
}

ToolNeed bench_need_at(const Agenda *agenda, guint index)
{
    const Requirement *made = agenda->assessment->requirements->pdata[index];
    const Number *beside = value_beside(agenda, made);
    ToolNeed need = bench_need(made);
    if (made->check && beside)
        need.least = need.greatest = beside;
    return need;
}

const char *bench_gauge_for(Desk *desk, const Requirement *made, const ToolNeed *need)
{
    return need->sort || made->asked == ASKED_READ ? toolbox_for(desk, need) : NULL;
}

const char *bench_gauge(Desk *desk, const Agenda *agenda, guint index, const char *typed)
{
    const Requirement *made = agenda->assessment->requirements->pdata[index];
    const Unit *unit = made->check ? made->check->unit : NULL;
    g_auto(Reading) reading = {0};
    ToolNeed need = bench_need_at(agenda, index);
    if (*typed && reading_parse(typed, unit, &reading, NULL, NULL))
        need.value = reading.value;
    return bench_gauge_for(desk, made, &need);
}

char *bench_wrong_gauge(Desk *desk, const Requirement *made, const ToolNeed *need,
                        const char *gauge)
{
    return made->asked == ASKED_READ ? toolbox_wrong_words(desk, need, gauge) : NULL;
}

char *bench_outside(Desk *desk, const Requirement *made, const char *gauge, const char *typed)
{
    g_auto(Reading) reading = {0};
    const Unit *unit = made->check ? made->check->unit : NULL;
    const Entry *tool = gauge ? shop_find(session_shop(desk->shop), "tool", gauge) : NULL;
    if (!tool || !*typed || !reading_parse(typed, unit, &reading, NULL, NULL) ||
        tool_holds(tool, reading.value))
        return NULL;
    return toolbox_reads(tool);
}

// CHECKS ----------------------------------------------------------------------------------------

// Answers with the digits that give them; where they are numbers themselves, they are typed as they
// are.
static char *choices_hint(const char *const *choices)
{
    GString *hint = g_string_new(NULL);
    gboolean bare = FALSE;
    for (guint i = 0; choices[i]; i++)
        bare = bare || (g_ascii_isdigit(choices[i][0]) && !choices[i][1]);
    for (guint i = 0; choices[i]; i++) {
        g_string_append(hint, i ? "   " : "");
        if (!bare)
            g_string_append_printf(hint, "%u ", i + 1);
        g_string_append(hint, choices[i]);
    }
    return g_string_free(hint, FALSE);
}

// What is proposed, with the digits that choose it; before anything is known the labels alone.
static char *offer_hint(Desk *desk, const AgendaItem *item)
{
    g_auto(ChoiceOffer) offer = session_choice(desk_build(desk), item->index);
    char *words = choice_offer_words(&offer);
    return words ? words : choices_hint((const char *const *)item->choices);
}

static BenchField check_field(Desk *desk, const AgendaItem *item)
{
    const char *choose = item->made->check->choose;
    switch (item->field) {
    case AGENDA_VALUE:
        return (BenchField){ASKS_NUMBER, g_strdup(item->unit ? item->unit : ""), NULL, NULL};
    case AGENDA_GO_NO_GO:
        return (BenchField){ASKS_NUMBER, g_strdup("1/0"), g_strdup("1 yes   0 no"), NULL};
    case AGENDA_CHOICE:
        return (BenchField){ASKS_NUMBER, g_strdup("no."),
                            choose ? offer_hint(desk, item)
                                   : choices_hint((const char *const *)item->choices),
                            choose ? g_strdup_printf("which %s?", choose) : NULL};
    case AGENDA_COUNT:
        return (BenchField){ASKS_NUMBER, g_strdup("pcs"), NULL, NULL};
    default:
        return (BenchField){ASKS_TEXT, g_strdup(" "), g_strdup("in words"), NULL};
    }
}

// PARTS -----------------------------------------------------------------------------------------

// How it is fitted, as far as that is known; STATE_AGAIN: it is asked.
static PartState state_of(const AgendaItem *item, PartState state)
{
    gboolean asked =
        state == STATE_AGAIN || (state == STATE_ASKED && item->made->verdict == VERDICT_OPEN);
    return asked ? item->new_needed ? STATE_NEW : STATE_AGAIN : state;
}

static gboolean is_by_lot(const AgendaItem *item, PartState state)
{
    return item->field == AGENDA_PART && state_of(item, state) == STATE_NEW &&
           g_strcmp0(item->track, "lot") == 0;
}

char *bench_place(const Agenda *agenda, guint index, PartState state)
{
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    const Requirement *made = item.made;
    if (!is_by_lot(&item, state))
        return requirement_title(made);
    g_auto(PartPacket) packet = part_packet(agenda, index);
    return g_strdup_printf("%s%s%s", made->name, *packet.place ? " " : "", packet.place);
}

enum { LINES_MOST = 9 };

char *bench_lots(Desk *desk, const Agenda *agenda, guint index, PartState state)
{
    Session *session = desk_build(desk);
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    if (!is_by_lot(&item, state))
        return NULL;
    g_autoptr(GPtrArray) lots = part_lots(session, item.made->name);
    g_autoptr(GString) lines = g_string_new(lots->len ? "lots that fit, the newest first" : NULL);
    for (guint i = 0; i < lots->len && i < LINES_MOST; i++) {
        g_autofree char *words = part_lot_words(session, lots->pdata[i]);
        g_autofree char *doubt =
            part_lot_doubt(session, desk->who, index, lots->pdata[i], desk->now);
        g_string_append_printf(lines, "\n%2u  %-12s  %s%s%s", i + 1, shop_label(lots->pdata[i]),
                               doubt ? "! " : "", doubt ? doubt : "", doubt ? " · " : "");
        g_string_append(lines, words);
    }
    return lines->len ? g_strdup(lines->str) : NULL;
}

// `upper, lower: scan, or 1 RB-1182-B`
static char *lots_hint(Desk *desk, const Agenda *agenda, const AgendaItem *item)
{
    g_autoptr(GPtrArray) lots = part_lots(desk_build(desk), item->made->name);
    g_auto(PartPacket) packet = part_packet(agenda, item->index);
    g_autoptr(GString) hint = g_string_new(packet.shared);
    g_string_append_printf(hint, "%s%s", packet.shared ? ": " : "",
                           lots->len ? "scan, or " : "as the packet says; scan or type");
    for (guint i = 0; i < lots->len && i < LINES_MOST; i++)
        g_string_append_printf(hint, "%u %s   ", i + 1, shop_label(lots->pdata[i]));
    return g_strdup(g_strchomp(hint->str));
}

static const char serial_and_why[] =
    "its serial, a comma, and why it may be used again: 17, no pits";

// What is used again bears its serial still; a lot it has none.
static gboolean is_by_serial(const AgendaItem *item)
{
    return g_strcmp0(item->track, "serial") == 0;
}

// `fitted new 10:41, 2 min ago`; NULL where nothing is fitted. The caller frees.
static char *stands_words(Desk *desk, const Agenda *agenda, const Requirement *made)
{
    if (made->verdict == VERDICT_OPEN || made->entry < 1)
        return NULL;
    const Entry *fit = agenda->entries[made->entry - 1];
    const char *use = entry_text(fit, "use");
    g_autofree char *when = ago_words(entry_moment(fit), desk->now);
    return g_strdup_printf("fitted %s %s", use ? use : "", when);
}

static char *stands_hint(Desk *desk, const Agenda *agenda, const AgendaItem *item)
{
    g_autofree char *stands = stands_words(desk, agenda, item->made);
    return stands ? g_strconcat(stands, "; +Enter leaves it, Enter enters another new one", NULL)
                  : NULL;
}

char *bench_second(Desk *desk, const Agenda *agenda, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    gboolean wrong = made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT ||
                     plan_group(agenda->plan, made->name); // whoever comes to a bolt's, loosened it
    g_autofree char *stands =
        made->asked == ASKED_FIT && !wrong ? stands_words(desk, agenda, made) : NULL;
    return stands ? g_strconcat(stands, " already; Enter again enters another new one", NULL)
                  : NULL;
}

static BenchField part_field(Desk *desk, const Agenda *agenda, const AgendaItem *item,
                             PartState state)
{
    if (is_by_lot(item, state))
        return (BenchField){ASKS_TEXT, g_strdup(" "), lots_hint(desk, agenda, item),
                            g_strdup("new, lot")};
    state = state_of(item, state);
    if (state == STATE_ASKED)
        return (BenchField){ASKS_NUMBER, g_strdup(" "),
                            g_strdup("it stands as it is; l fits it again, +Enter goes on"),
                            g_strdup(item->made->answer)};
    if (state == STATE_AGAIN)
        return (BenchField){ASKS_DIGIT, g_strdup("1 to 3"),
                            g_strdup("1 new   2 used again   3 reworked"), g_strdup("fitted how?")};
    if (state != STATE_NEW)
        return (BenchField){
            ASKS_TEXT, g_strdup(" "),
            g_strdup(is_by_serial(item) ? serial_and_why : "why it may be used again, in words"),
            g_strdup(state == STATE_REUSED ? "used again" : "reworked")};
    if (item->track)
        return (BenchField){ASKS_TEXT, g_strdup(" "), g_strdup("as the packet says; scan or type"),
                            g_strdup_printf("new, %s", item->track)};
    return (BenchField){ASKS_TICK, g_strdup("Enter = new"), stands_hint(desk, agenda, item),
                        g_strdup("fit new")};
}

// A lot, said by its line in the list or as the packet has it.
static char *lot_line(Desk *desk, const Agenda *agenda, const AgendaItem *item, const char *typed)
{
    g_autoptr(GPtrArray) lots = part_lots(desk_build(desk), item->made->name);
    g_auto(PartPacket) packet = part_packet(agenda, item->index);
    g_autofree char *label = part_answer(lots, typed);
    g_autofree char *count =
        item->pieces > 1 ? g_strdup_printf(" count %u", item->pieces) : g_strdup("");
    return g_strdup_printf("fit %s%s lot %s new", packet.target, count, label);
}

// The label typed there that the shop has no lot of; NULL where none is asked. The caller frees.
static char *unseen_lot(Desk *desk, const AgendaItem *item, PartState state, const char *typed)
{
    const Shop *shop = session_shop(desk_build(desk));
    if (!*typed || !is_by_lot(item, state))
        return NULL;
    g_autoptr(GPtrArray) lots = part_lots(desk_build(desk), item->made->name);
    g_autofree char *label = part_answer(lots, typed);
    return shop_find(shop, "lot", label) ? NULL : g_steal_pointer(&label);
}

char *bench_new_lot(Desk *desk, const Agenda *agenda, guint index, PartState state,
                    const char *typed)
{
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    g_autofree char *label = unseen_lot(desk, &item, state, typed);
    g_autofree char *part = line_quoted(item.made->name);
    return label ? g_strdup_printf("lot %s %s", label, part) : NULL;
}

char *bench_new_lot_words(Desk *desk, const Agenda *agenda, guint index, const char *typed)
{
    const char *part = agenda_made(agenda, index)->name;
    const Entry *near = part_lot_meant(desk_build(desk), part, typed);
    if (near && part_other_lot(desk_build(desk), part, shop_label(near)))
        return g_strdup_printf("is it %s, of %s? Enter again: new, of %s", shop_label(near),
                               entry_text(near, "part"), part);
    g_autoptr(GPtrArray) lots = part_lots(desk_build(desk), part);
    return slip_new_lot(lots, typed, part);
}

char *bench_other_lot(Desk *desk, const Agenda *agenda, guint index, PartState state,
                      const char *typed)
{
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    if (!*typed || !is_by_lot(&item, state))
        return NULL;
    g_autoptr(GPtrArray) lots = part_lots(desk_build(desk), item.made->name);
    g_autofree char *label = part_answer(lots, typed);
    const Entry *other = part_other_lot(desk_build(desk), item.made->name, label);
    return other ? g_strdup_printf("%s is of %s: the same box? Enter again fits it",
                                   shop_label(other), entry_text(other, "part"))
                 : NULL;
}

// Why it may be used again, behind its serial where that is asked. NULL as long as one is missing.
static char *again_line(const AgendaItem *item, AgendaUse use, const char *typed)
{
    const char *comma = is_by_serial(item) ? strchr(typed, ',') : NULL;
    if (is_by_serial(item) && !comma)
        return NULL;
    g_autofree char *serial = comma ? g_strndup(typed, (gsize)(comma - typed)) : g_strdup("");
    const char *why = comma ? comma + 1 : typed;
    const AgendaAnswer answer = {
        .use = use, .typed = g_strstrip(serial), .why = why + strspn(why, " ")};
    return *serial || !comma ? agenda_line(item, &answer) : NULL;
}

static char *part_line(Desk *desk, const Agenda *agenda, const AgendaItem *item, PartState state,
                       const char *typed)
{
    if (is_by_lot(item, state))
        return *typed ? lot_line(desk, agenda, item, typed) : NULL;
    state = state_of(item, state);
    if (state == STATE_ASKED || state == STATE_AGAIN)
        return NULL;
    if (state != STATE_NEW)
        return again_line(item, state == STATE_REUSED ? AGENDA_REUSED : AGENDA_REWORKED, typed);
    return agenda_line(item, &(AgendaAnswer){.use = AGENDA_NEW, .typed = typed});
}

// ALL -------------------------------------------------------------------------------------------

BenchField bench_field(Desk *desk, const Agenda *agenda, guint index, PartState state)
{
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    if (item.made->check)
        return check_field(desk, &item);
    return item.field == AGENDA_PART ? part_field(desk, agenda, &item, state)
                                     : (BenchField){.field = ASKS_NOTHING};
}

char *bench_line(Desk *desk, const Agenda *agenda, guint index, PartState state, const char *typed,
                 const char *gauge)
{
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    if (item.field == AGENDA_PART)
        return part_line(desk, agenda, &item, state, typed);
    if (!item.made->check)
        return NULL;
    const AgendaAnswer answer = {.typed = typed, .tool = gauge};
    return agenda_line(&item, &answer);
}
