// A sealant, locker or paste is laid: on what, and out of which lot. Its clocks start with the
// Enter.
#include "slip.h"
#include "view.h"

#include <standbook/work/laying.h>
#include <standbook/work/part_lots.h>
#include <string.h>

enum { CHOICES_MOST = 9 };

typedef struct {
    char *step, *consumable;
    char *on;  // the bolt set or part; NULL: not said yet
    Slip slip; // a lot that the shop does not have
} Lay;

// The argument: the step, the consumable and the bolt set whose lubricant it is, a line each.
static gpointer open(Desk *desk, const char *argument)
{
    Lay *lay = g_new0(Lay, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    (void)desk;
    lay->step = g_strdup(parts[0]);
    lay->consumable = g_strdup(parts[1]);
    lay->on = *parts[2] ? g_strdup(parts[2]) : NULL;
    return lay;
}

static void close(gpointer state)
{
    Lay *lay = state;
    slip_forget(&lay->slip);
    g_free(lay->on);
    g_free(lay->consumable);
    g_free(lay->step);
    g_free(lay);
}

static GPtrArray *targets_of(const Lay *lay, Desk *desk)
{
    const Plan *plan = session_plan(desk_build(desk));
    const Laying laying = {plan_consumable(plan, lay->consumable), plan_step(plan, lay->step), NULL,
                           0};
    return laying_targets(plan, &laying);
}

// The lots of the shop (const Entry *), the one entered last first.
static GPtrArray *lots_of(const Lay *lay, Desk *desk)
{
    const PlanConsumable *consumable =
        plan_consumable(session_plan(desk_build(desk)), lay->consumable);
    g_autoptr(GPtrArray) all = shop_in_use(session_shop(desk_build(desk)), "consumable", NULL);
    GPtrArray *lots = g_ptr_array_new();
    for (guint i = all->len; i-- > 0;) {
        const char *sort = entry_text(all->pdata[i], "sort");
        if (g_strcmp0(sort, consumable->name) == 0 || g_strcmp0(sort, consumable->kind) == 0)
            g_ptr_array_add(lots, all->pdata[i]);
    }
    return lots;
}

// PAINT -----------------------------------------------------------------------------------------

static void paint_where(const Lay *lay, Desk *desk, Page *page)
{
    g_autoptr(GPtrArray) targets = targets_of(lay, desk);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < targets->len && i < CHOICES_MOST; i++)
        g_string_append_printf(words, "%u %s  ", i + 1, (const char *)targets->pdata[i]);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page_say(&page->unit, "a digit");
    page_say(&page->next, "lay %s: on what?", lay->consumable);
    page_say(&page->then, "%s0 not yet", words->str);
}

// `on sump: scan, or 1 SS-9921   2 SS-9000 expired`
static char *lots_hint(const Lay *lay, Desk *desk)
{
    g_autoptr(GPtrArray) lots = lots_of(lay, desk);
    g_autofree char *today = moment_text(desk->now);
    GString *hint = g_string_new(NULL);
    g_string_printf(hint, "on %s: %s", lay->on,
                    lots->len ? "scan, or " : "as the tube says; scan or type   ");
    for (guint i = 0; i < lots->len && i < CHOICES_MOST; i++) {
        const char *expires = entry_text(lots->pdata[i], "expires");
        gboolean gone = expires && strncmp(expires, today, strlen(expires)) < 0;
        g_string_append_printf(hint, "%u %s%s   ", i + 1, shop_label(lots->pdata[i]),
                               gone ? " expired" : "");
    }
    return g_string_free(g_string_append(hint, "Enter alone: lot not known"), FALSE);
}

static void paint_lot(const Lay *lay, Desk *desk, const char *typed, Page *page)
{
    g_autofree char *hint = lots_hint(lay, desk);
    page->ask = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "lay %s, lot", lay->consumable);
    page_say(&page->then, "%s", *typed && lay->slip.said ? lay->slip.said : hint);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Lay *lay = state;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    if (lay->on) {
        page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "it is laid, its clocks run"};
        page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field: not yet"};
        paint_lot(lay, desk, typed, page);
    } else {
        page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
        page->keys[1] = (PageKey){ACTION_UP, "Backspace", "not yet"};
        paint_where(lay, desk, page);
    }
}

// KEYS ------------------------------------------------------------------------------------------

// Until the step is closed it is not asked again by itself.
static Go not_yet(const Lay *lay, Desk *desk)
{
    g_hash_table_add(desk->not_yet, g_strconcat(lay->step, "\n", lay->consumable, NULL));
    desk_warn(desk, "%s is not laid; it is asked again before %s is closed", lay->consumable,
              lay->step);
    return go(GO_UP);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Lay *lay = state;
    g_autoptr(GPtrArray) targets = targets_of(lay, desk);
    if (digit == 0)
        return not_yet(lay, desk);
    if (digit <= targets->len)
        lay->on = g_strdup(targets->pdata[digit - 1]);
    return go(GO_STAY);
}

// A tube that the shop has not seen: its lot is entered once that was asked. FALSE as long as it is
// not.
static gboolean has_lot(Lay *lay, Desk *desk, const char *label)
{
    if (!*label || shop_find(session_shop(desk_build(desk)), "consumable", label))
        return TRUE;
    g_autofree char *line = g_strdup_printf("consumable %s lot %s", lay->consumable, label);
    g_autoptr(GPtrArray) lots = lots_of(lay, desk);
    return !slip_asks_this(&lay->slip, line, slip_new_lot(lots, label, lay->consumable)) &&
           desk_shop_line(desk, line);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Lay *lay = state;
    if (!lay->on)
        return go(GO_KEEP);
    g_autoptr(GPtrArray) lots = lots_of(lay, desk);
    g_autofree char *text = g_strstrip(g_strdup(typed));
    g_autofree char *label = part_answer(lots, text);
    g_autofree char *line =
        g_strdup_printf("lay %s on %s%s%s", lay->consumable, lay->on, *label ? " lot " : "", label);
    if (!has_lot(lay, desk, label) || !desk_line(desk, line, NULL))
        return go(GO_KEEP);
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s laid on %s%s%s · %.5s %s", lay->consumable, lay->on, *label ? " · " : "",
              label, time + 11, desk->who ? desk->who : "");
    return go(GO_UP);
}

// Where it can be laid on one thing alone, nothing is asked about that.
static Go wants(gpointer state, Desk *desk)
{
    Lay *lay = state;
    g_autoptr(GPtrArray) targets = targets_of(lay, desk);
    if (!lay->on && targets->len == 1)
        lay->on = g_strdup(targets->pdata[0]);
    return go(GO_STAY);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    return action == ACTION_UP ? not_yet(state, desk) : go(GO_DEFAULT);
}

const ViewOps lay_view = {.name = "lay",
                          .small = TRUE,
                          .open = open,
                          .close = close,
                          .paint = paint,
                          .wants = wants,
                          .enter = enter,
                          .digit = digit,
                          .act = act};
