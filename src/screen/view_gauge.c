// Which gauge or wrench is in hand: one digit.
#include "toolbox.h"
#include "view.h"

#include <string.h>

enum { TOOLS_MOST = 9 };

typedef struct {
    ToolNeed need;
    char *sort;
    Number *value;
    GPtrArray *labels; // const char *
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
    tools->labels = toolbox_all(desk, &tools->need);
    return tools;
}

static void close(gpointer state)
{
    Tools *tools = state;
    g_free(tools->sort);
    number_free(tools->value);
    g_ptr_array_unref(tools->labels);
    g_free(tools);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Tools *tools = state;
    g_autoptr(GString) words = g_string_new(NULL);
    (void)typed;
    for (guint i = 0; i < tools->labels->len && i < TOOLS_MOST; i++) {
        const char *label = tools->labels->pdata[i];
        g_string_append_printf(words, "%s%u %s", i ? "  " : "", i + 1, label);
        if (tools->labels->len <= 3)
            g_string_append_printf(words, " %s", toolbox_words(desk, label));
    }
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, "1 to %u", MIN(tools->labels->len, TOOLS_MOST));
    page_say(&page->next, tools->need.need == NEED_GAUGE ? "which gauge is in hand?"
                                                         : "which wrench is in hand?");
    page_say(&page->then, "%s", words->len ? words->str : "the shop has none; enter it first");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "takes it in hand"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it open"};
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    const Tools *tools = state;
    if (digit < 1 || digit > MIN(tools->labels->len, TOOLS_MOST))
        return go(GO_STAY);
    toolbox_take(desk, &tools->need, tools->labels->pdata[digit - 1]);
    return go(GO_UP);
}

const ViewOps gauge_view = {
    .name = "gauge", .small = TRUE, .open = open, .close = close, .paint = paint, .digit = digit};
