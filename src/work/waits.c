#include <standbook/work/waits.h>

#include <standbook/work/agenda_item.h>
#include <standbook/work/ago.h>
#include <standbook/work/concession.h>
#include <standbook/work/finding.h>
#include <standbook/work/summary.h>
#include <string.h>

void waits_clear(Waits *waits)
{
    g_clear_pointer(&waits->stands, g_free);
    g_clear_pointer(&waits->waits, g_free);
    g_clear_pointer(&waits->since, g_free);
}

// `11:41` of today, else `6 Mar`.
static char *when(const Entry *entry, Moment now)
{
    Moment moment = entry_moment(entry);
    g_autofree char *day = ago_day(moment, now), *today = ago_day(now, now);
    g_autofree char *text = moment_text(moment);
    return strcmp(day, today) == 0 ? g_strndup(text + 11, 5) : g_steal_pointer(&day);
}

static const char *who(const Telling *telling, const Entry *entry)
{
    return taken_initials(telling->taken, entry->by);
}

// WHERE IT STANDS -------------------------------------------------------------------------------

// The seal behind which nothing was begun: of the gate in front of a step that nobody has picked up
// yet, or of the last one where no step is left. NULL if there is none.
static const Entry *seal_before(const Agenda *agenda, const Standpoint *point)
{
    const GPtrArray *gates = agenda->assessment->gates;
    guint before = point->step ? point->step->gate : gates->len;
    if (before == 0 || point->since)
        return NULL;
    const GateCount *gate = gates->pdata[before - 1];
    return gate->sealed ? agenda->entries[gate->sealed - 1] : NULL;
}

static char *stands_at(const Telling *telling, const Standpoint *point, Waits *waits)
{
    const Entry *seal = seal_before(telling->agenda, point);
    if (seal) {
        g_autofree char *day = when(seal, telling->now);
        return g_strdup_printf("%s, sealed %s", entry_text(seal, "gate"), day);
    }
    if (!point->step)
        return g_strdup("nothing is left");
    guint number = point->step->index + 1;
    if (point->place != AGENDA_NOWHERE &&
        agenda_made(telling->agenda, point->place)->asked == ASKED_BOLT) {
        g_auto(AgendaItem) item = agenda_item(telling->agenda, point->place);
        waits->turn = item.turn;
        waits->turns = item.turns;
        return g_strdup_printf("S%02u %s: %s", number, item.made->name, item.place);
    }
    return g_strdup_printf("S%02u %s", number, point->step->name);
}

// WHAT IT WAITS FOR -----------------------------------------------------------------------------

// `JT, in hand 11:41`; of another day that day behind it.
static void say_hand(const Telling *telling, const Entry *entry, const char *how, Waits *waits)
{
    g_autofree char *since = when(entry, telling->now);
    gboolean today = strchr(since, ':') != NULL;
    waits->waits = g_strdup_printf("%s, %s%s%s", who(telling, entry), how, today ? " " : "",
                                   today ? since : "");
    waits->since = today ? NULL : g_strdup_printf("since %s", since);
}

static gboolean is_in_hand(const Telling *telling, const Standpoint *point, Waits *waits)
{
    if (point->in_hand)
        say_hand(telling, point->since, "in hand", waits);
    return point->in_hand;
}

static gboolean has_wrong_tool(const Telling *telling, const Standpoint *point, Waits *waits)
{
    const Agenda *agenda = telling->agenda;
    (void)point;
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        const Entry *news =
            made->reason == REASON_TOOL && requirement_is_left(made) ? wrong_tool(agenda, i) : NULL;
        if (!news)
            continue;
        g_autofree char *since = when(news, telling->now);
        waits->waits = g_strdup_printf("%s, found wrong", wrong_tool_label(telling->taken, news));
        waits->since = g_strdup_printf("%u DOUBT since %s",
                                       agenda->assessment->counts[VERDICT_IN_DOUBT], since);
        return TRUE;
    }
    return FALSE;
}

enum { TOLD = 4, ANSWER = 5 }; // lines of a concession

// `customer: inlet lash 1`, since then.
static gboolean say_what(const Telling *telling, const char *who, const Requirement *made,
                         const char *since, gint64 seq, Waits *waits)
{
    g_autofree char *day = when(telling->agenda->entries[seq - 1], telling->now);
    g_autofree char *name = requirement_title(made);
    waits->waits = g_strdup_printf("%s: %s", who, name);
    waits->since = g_strdup_printf("%s %s", since, day);
    return TRUE;
}

static gboolean awaits_customer(const Telling *telling, const Standpoint *point, Waits *waits)
{
    const Agenda *agenda = telling->agenda;
    (void)point;
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        g_autofree char *told = conceded_line(agenda, made, TOLD);
        g_autofree char *answer = conceded_line(agenda, made, ANSWER);
        if (told && !answer)
            return say_what(telling, "customer", made, "told", made->conceded, waits);
    }
    return FALSE;
}

static gboolean awaits_decision(const Telling *telling, const Standpoint *point, Waits *waits)
{
    const Agenda *agenda = telling->agenda;
    (void)point;
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (finding_waits(made) && made->check->by_decision && made->entry)
            return say_what(telling, "decision", made, "since", made->entry, waits);
    }
    return FALSE;
}

static gboolean awaits_second(const Telling *telling, const Standpoint *point, Waits *waits)
{
    const Agenda *agenda = telling->agenda;
    if (point->place == AGENDA_NOWHERE || agenda_made(agenda, point->place)->asked != ASKED_SIGN)
        return FALSE;
    g_auto(AgendaItem) item = agenda_item(agenda, point->place);
    g_autofree char *since = when(point->last, telling->now);
    waits->waits = item.hold ? g_strdup_printf("second: %s", item.hold) : g_strdup("signature");
    waits->since = g_strdup_printf("since %s", since);
    return TRUE;
}

static gboolean was_put_down(const Telling *telling, const Standpoint *point, Waits *waits)
{
    if (!point->since)
        return FALSE;
    say_hand(telling, point->since, "put down", waits);
    if (!waits->since)
        waits->since = g_strdup(entry_text(point->since, "note"));
    return TRUE;
}

// A gate has entries that its seal does not cover.
static gboolean awaits_seal(const Telling *telling, const Standpoint *point, Waits *waits)
{
    const Agenda *agenda = telling->agenda;
    (void)point;
    for (guint i = 0; i < agenda->assessment->gates->len; i++) {
        const GateCount *gate = agenda->assessment->gates->pdata[i];
        if (!gate->since)
            continue;
        waits->waits = g_strdup("new seal");
        waits->since = g_strdup_printf("%u since %s", gate->since, gate->name);
        return TRUE;
    }
    return FALSE;
}

static gboolean waits_for_later(const Telling *telling, const Standpoint *point, Waits *waits)
{
    if (!point->step || !seal_before(telling->agenda, point))
        return FALSE;
    waits->waits = g_strdup(point->step->name);
    return TRUE;
}

static gboolean lies(const Telling *telling, const Standpoint *point, Waits *waits)
{
    if (point->place == AGENDA_NOWHERE || !point->last)
        return FALSE;
    g_autofree char *since = when(point->last, telling->now);
    waits->waits = requirement_title(agenda_made(telling->agenda, point->place));
    waits->since = g_strdup_printf("nobody since %s", since);
    return TRUE;
}

Waits waits_of(const Telling *telling)
{
    static gboolean (*const rules[])(const Telling *, const Standpoint *, Waits *) = {
        is_in_hand,      has_wrong_tool,  awaits_customer,
        awaits_decision, awaits_second,   awaits_seal,
        was_put_down,    waits_for_later, lies,
    };
    const Standpoint point = summary_standpoint(telling->agenda);
    Waits waits = {.stands = NULL};
    waits.stands = stands_at(telling, &point, &waits);
    for (guint i = 0; i < G_N_ELEMENTS(rules) && !waits.waits; i++)
        rules[i](telling, &point, &waits);
    if (!waits.waits)
        waits.waits = g_strdup("nothing");
    if (!waits.since)
        waits.since = g_strdup("");
    return waits;
}
