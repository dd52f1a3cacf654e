#include "step_next.h"

#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/agenda_item.h>
#include <standbook/work/summary.h>

const PlanStep *step_next(const Agenda *agenda)
{
    const PlanStep *here = summary_standpoint(agenda).step, *held = NULL;
    if (here && !agenda_is_done(agenda, here))
        return here;
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (agenda_is_done(agenda, step))
            continue;
        if (!agenda_held_by(agenda, step))
            return step;
        held = held ? held : step;
    }
    return held;
}

char *step_next_words(const Agenda *agenda, const PlanStep *here, guint *place)
{
    *place = here ? summary_place(agenda, here) : AGENDA_NOWHERE;
    if (*place == AGENDA_NOWHERE)
        return here ? step_words(here) : g_strdup("nothing is left");
    g_auto(AgendaItem) item = agenda_item(agenda, *place);
    guint number = here->index + 1;
    const char *again = item.again ? " again" : "";
    if (item.made->asked == ASKED_SIGN)
        return g_strdup_printf("S%02u sign %s", number, here->name);
    if (item.made->asked != ASKED_BOLT) {
        g_autofree char *title = requirement_title(item.made);
        return g_strdup_printf("S%02u %s%s", number, title, again);
    }
    return g_strdup_printf("S%02u %s%s · %s%s%s", number, item.made->name, again, item.place,
                           item.amount_words ? " · " : "",
                           item.amount_words ? item.amount_words : "");
}

char *step_again(const Agenda *agenda, const PlanStep *step)
{
    guint place = summary_place(agenda, step);
    if (place == AGENDA_NOWHERE)
        return NULL;
    g_auto(AgendaItem) item = agenda_item(agenda, place);
    return item.again && item.made->asked != ASKED_SIGN ? requirement_name(item.made) : NULL;
}
