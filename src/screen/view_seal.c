// Fixes the assessment at a gate that has become complete.
#include "telling.h"
#include "to_lay.h"
#include "view.h"

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

static Go digit(gpointer state, Desk *desk, guint digit)
{
    if (digit != 1)
        return go(GO_STAY);
    g_autofree char *line = g_strdup_printf("seal %s", (const char *)state);
    if (desk_line(desk, line, NULL))
        desk_last(desk, "%s sealed by %s", (const char *)state, desk->who ? desk->who : "");
    return go(GO_UP);
}

const ViewOps seal_view = {
    .name = "seal", .small = TRUE, .open = open, .close = g_free, .paint = paint, .digit = digit};
