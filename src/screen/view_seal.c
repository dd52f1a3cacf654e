// Fixes the assessment at a gate that has become complete.
#include "telling.h"
#include "to_lay.h"
#include "view.h"

#include <standbook/work/gate.h>
#include <string.h>

// The state is the gate's name.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

// `sump paste is not laid (Oil in); ` of what was passed over; "" if nothing was.
static char *not_laid_words(Desk *desk, const char *gate)
{
    g_auto(Told) told = {0};
    gint at = told_init(&told, desk) ? plan_gate(told.agenda.plan, gate) : -1;
    g_autoptr(GArray) layings = at < 0 ? NULL : layings_passed_over(&told.agenda, (guint)at);
    if (!layings || !layings->len)
        return g_strdup("");
    const Laying *first = &g_array_index(layings, Laying, 0);
    g_autofree char *words = laying_words(first);
    return g_strdup_printf("%s is not laid (%s); ", words, first->step->name);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    (void)typed;
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, "1");
    page_say(&page->next, "%s is complete: seal it?", (const char *)state);
    g_autofree char *not_laid = not_laid_words(desk, state);
    page_say(&page->then, "%s1 %s seals it%s", not_laid, desk->who ? desk->who : "nobody yet",
             *not_laid ? " all the same" : ": the verdicts stand as of now, and print so");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "seals"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "not yet"};
}

// `first start was sealed 10:41 by MO`, or what is left before it again; NULL as long as it can be
// sealed. The caller frees.
static char *past_words(Desk *desk, const char *name)
{
    g_auto(Told) told = {0};
    gint at = told_init(&told, desk) ? plan_gate(told.agenda.plan, name) : -1;
    if (at < 0)
        return NULL;
    const GateCount *gate = told.agenda.assessment->gates->pdata[at];
    if (gate->left) {
        g_autofree char *left = gate_left_words(gate);
        return g_strdup_printf("another entry came: %s; nothing is sealed", left);
    }
    if (!gate_is_sealed(gate))
        return NULL;
    const Entry *seal = told.agenda.entries[gate->sealed - 1];
    const Entry *by = shop_by_id(session_shop(desk->shop), "person", seal->by);
    g_autofree char *time = moment_text(entry_moment(seal));
    return g_strdup_printf("%s was sealed %.5s by %s; nothing is entered once more", name,
                           time + 11, by ? shop_label(by) : "another");
}

// Another terminal may have sealed it, or entered what is left before it again.
static Go wants(gpointer state, Desk *desk)
{
    g_autofree char *past = past_words(desk, state);
    if (past)
        desk_warn(desk, "%s", past);
    return go(past ? GO_UP : GO_STAY);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    if (digit != 1)
        return go(GO_STAY);
    desk_catch_up(desk);
    Go past = wants(state, desk);
    if (past.kind != GO_STAY)
        return past;
    g_autofree char *line = g_strdup_printf("seal %s", (const char *)state);
    if (desk_line(desk, line, NULL))
        desk_last(desk, "%s sealed by %s", (const char *)state, desk->who ? desk->who : "");
    return go(GO_UP);
}

const ViewOps seal_view = {.name = "seal",
                           .small = TRUE,
                           .open = open,
                           .close = g_free,
                           .paint = paint,
                           .wants = wants,
                           .digit = digit};
