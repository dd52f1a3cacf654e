// Which gauge or wrench is in hand: one digit.
#include "toolbox.h"
#include "view.h"

#include <string.h>

enum { TOOLS_MOST = 9 };

typedef struct {
    ToolNeed need;
    char *sort;
    Number *value;
} Tools;

// The argument: T, A or G, the sort of a gauge, a line feed, the value in base units.
static gpointer open(Desk *desk, const char *argument)
{
    Tools *tools = g_new0(Tools, 1);
    g_auto(GStrv) parts = g_strsplit(argument ? argument : "G", "\n", 2);
    tools->sort = parts[0][0] && parts[0][1] ? g_strdup(parts[0] + 1) : NULL;
    tools->value = parts[1] && *parts[1] ? number_from_text(parts[1], NULL) : NULL;
    tools->need = (ToolNeed){parts[0][0] == 'T'   ? NEED_TORQUE
                             : parts[0][0] == 'A' ? NEED_ANGLE
                                                  : NEED_GAUGE,
                             tools->sort, tools->value};
    (void)desk;
    return tools;
}

static void close(gpointer state)
{
    Tools *tools = state;
    g_free(tools->sort);
    number_free(tools->value);
    g_free(tools);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Tools *tools = state;
    g_autoptr(GString) words = g_string_new(NULL);
    g_autoptr(GPtrArray) labels = toolbox_all(desk, &tools->need);
    (void)typed;
    for (guint i = 0; i < labels->len && i < TOOLS_MOST; i++) {
        const char *label = labels->pdata[i];
        g_string_append_printf(words, "%u %s", i + 1, label);
        if (labels->len <= 3)
            g_string_append_printf(words, " %s", toolbox_words(desk, label));
        g_string_append(words, "  ");
    }
    g_string_append(words, "0 new");
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, labels->len > 1 ? "1 to %u" : "%u", MIN(labels->len, TOOLS_MOST));
    page_say(&page->next, tools->need.need == NEED_GAUGE ? "which gauge is in hand?"
                                                         : "which wrench is in hand?");
    page_say(&page->then, "%s", words->str);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "takes it in hand"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it open"};
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    const Tools *tools = state;
    g_autoptr(GPtrArray) labels = toolbox_all(desk, &tools->need);
    if (digit == 0)
        return go_open(VIEW_ENTER, g_strdup_printf("tool\n%s", tools->sort ? tools->sort : ""));
    if (digit > MIN(labels->len, TOOLS_MOST))
        return go(GO_STAY);
    toolbox_take(desk, &tools->need, labels->pdata[digit - 1]);
    return go(GO_UP);
}

const ViewOps gauge_view = {
    .name = "gauge", .small = TRUE, .open = open, .close = close, .paint = paint, .digit = digit};
