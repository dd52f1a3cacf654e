// Which gauge or wrench is in hand: one digit; g again says that the gauge was zeroed.
#include "gauge_lines.h"
#include "toolbox.h"
#include "view.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/gauge_choice.h>
#include <string.h>

enum { TOOLS_MOST = GAUGE_LINES_MOST };

typedef struct {
    ToolNeed need;
    char *sort;
    Number *value, *ceiling;
    char *place;       // the index of the place to be read; NULL if there is none
    gint64 seen;       // the shop's last entry when what follows was worked out
    GPtrArray *labels; // char *, by their digits; empty where the place has not been looked at
    char *can;         // what each can tell there, or how each wrench stands, a line each; NULL
                       // where neither is known
} Tools;

// What is to be settled, what that needs, and the gauges.
static char *can_words(const GaugeChoices *choices)
{
    g_autofree char *name = requirement_title(choices->settled);
    g_autofree char *limits = figure_limits(choices->settled);
    const Unit *unit = choices->settled->check->unit;
    g_autofree char *lines = gauge_lines(choices);
    return g_strdup_printf(" %s: %s %s\n%s", name, limits, unit ? unit_text(unit) : "", lines);
}

// The place to be read, and its index (NULL: not asked); NULL if there is none.
static const Requirement *place_of(const Tools *tools, Desk *desk, guint *index)
{
    Session *session = desk_build(desk);
    const GPtrArray *all = session ? session_assessment(session)->requirements : NULL;
    guint64 place = 0;
    if (!all || !tools->place ||
        !g_ascii_string_to_unsigned(tools->place, 10, 0, G_MAXUINT32, &place, NULL) ||
        place >= all->len)
        return NULL;
    if (index)
        *index = (guint)place;
    return all->pdata[place];
}

// What the gauges can tell there.
static void look_at(Tools *tools, Desk *desk)
{
    guint place;
    if (!place_of(tools, desk, &place))
        return;
    g_auto(GaugeChoices) choices =
        session_gauges(desk_build(desk), place, toolbox_for(desk, &tools->need));
    for (guint i = 0; i < choices.gauges->len; i++)
        g_ptr_array_add(tools->labels,
                        g_strdup(g_array_index(choices.gauges, GaugeChoice, i).label));
    if (choices.gauges->len)
        tools->can = can_words(&choices);
}

// Those that can tell something first, then all that can serve.
static void add_serving(Tools *tools, Desk *desk)
{
    g_autoptr(GPtrArray) serving = tools->need.need == NEED_TORQUE
                                       ? toolbox_wrenches(desk, &tools->need)
                                       : toolbox_all(desk, &tools->need);
    for (guint i = 0; i < serving->len; i++)
        if (!g_ptr_array_find_with_equal_func(tools->labels, serving->pdata[i], g_str_equal, NULL))
            g_ptr_array_add(tools->labels, g_strdup(serving->pdata[i]));
}

static void look_round(Tools *tools, Desk *desk)
{
    tools->seen = shop_last(session_shop(desk->shop));
    g_ptr_array_set_size(tools->labels, 0);
    g_clear_pointer(&tools->can, g_free);
    look_at(tools, desk);
    add_serving(tools, desk);
    if (tools->need.need != NEED_GAUGE && tools->labels->len)
        tools->can = toolbox_lines(desk, &tools->need, tools->labels, TOOLS_MOST);
}

// The argument: T, A or G, the sort of a gauge or the adapter of a wrench, a line feed, the value
// in base units, a line feed, the index of the place to be read, of a wrench the ceiling in base
// units; without the end what is not known.
static gpointer open(Desk *desk, const char *argument)
{
    Tools *tools = g_new0(Tools, 1);
    g_auto(GStrv) parts = g_strsplit(argument ? argument : "G", "\n", 3);
    guint count = g_strv_length(parts);
    tools->sort = parts[0][0] && parts[0][1] ? g_strdup(parts[0] + 1) : NULL;
    tools->value = count > 1 && *parts[1] ? number_from_text(parts[1], NULL) : NULL;
    tools->labels = g_ptr_array_new_with_free_func(g_free);
    tools->need = (ToolNeed){parts[0][0] == 'T'   ? NEED_TORQUE
                             : parts[0][0] == 'A' ? NEED_ANGLE
                                                  : NEED_GAUGE,
                             tools->sort, tools->value, NULL};
    gboolean gauge = tools->need.need == NEED_GAUGE;
    tools->place = gauge && count > 2 ? g_strdup(parts[2]) : NULL;
    tools->ceiling = !gauge && count > 2 && *parts[2] ? number_from_text(parts[2], NULL) : NULL;
    tools->need.ceiling = tools->ceiling;
    look_round(tools, desk);
    return tools;
}

static void close(gpointer state)
{
    Tools *tools = state;
    g_free(tools->sort);
    number_free(tools->value);
    number_free(tools->ceiling);
    g_ptr_array_unref(tools->labels);
    g_free(tools->can);
    g_free(tools->place);
    g_free(tools);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Tools *tools = state;
    g_autoptr(GString) words = g_string_new(NULL);
    const GPtrArray *labels = tools->labels;
    (void)typed;
    if (tools->seen != shop_last(session_shop(desk->shop))) // a tool was added
        look_round(tools, desk);
    for (guint i = 0; i < labels->len && i < TOOLS_MOST; i++) {
        const char *label = labels->pdata[i];
        g_string_append_printf(words, "%u %s", i + 1, label);
        if (labels->len <= 3 && !tools->can)
            g_string_append_printf(words, " %s", toolbox_words(desk, label));
        g_string_append(words, "  ");
    }
    g_string_append(words, "0 new");
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    if (tools->can)
        page_say(&page->remark, "%s", tools->can);
    page->means = FALSE;
    page_say(&page->unit, labels->len > 1 ? "1 to %u" : "%u", MIN(labels->len, TOOLS_MOST));
    page_say(&page->next, "which %s is in hand?", need_words(tools->need.need));
    page_say(&page->then, "%s", words->str);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "takes it in hand"};
    guint key = 1;
    if (tools->need.need == NEED_GAUGE)
        page->keys[key++] = (PageKey){ACTION_GAUGE, "g", "it was zeroed"};
    page->keys[key] = (PageKey){ACTION_UP, "Backspace", "leave it open"};
}

// The page of a place that is read names its gauge itself; where none is, as when a check is being
// named on a blank card, it is said.
static void say_in_hand(const Tools *tools, Desk *desk, const char *label)
{
    const char *words = toolbox_words(desk, label);
    const Requirement *here = place_of(tools, desk, NULL);
    if (tools->place && (!here || here->asked != ASKED_READ))
        desk_last(desk, "%s%s%s is in hand", label, *words ? " " : "", words);
}

// Which sort of tool would be new; an adapter is none of a wrench's.
static char *new_words(const Tools *tools)
{
    static const char *const letters[] = {
        [NEED_GAUGE] = "G", [NEED_TORQUE] = "T", [NEED_ANGLE] = "A"};
    Need need = tools->need.need;
    return g_strconcat(letters[need], need == NEED_GAUGE ? tools->sort : NULL, NULL);
}

// A tool that was entered just now is taken in hand, if it serves here.
static Go wants(gpointer state, Desk *desk)
{
    Tools *tools = state;
    g_autofree char *label = g_steal_pointer(&desk->new_tool);
    if (!label)
        return go(GO_STAY);
    g_autofree char *planned = toolbox_as_planned(&tools->need, label);
    toolbox_take(desk, &tools->need, planned);
    if (g_strcmp0(toolbox_for(desk, &tools->need), label) == 0) {
        say_in_hand(tools, desk, label);
        return go(GO_UP);
    }
    g_autofree char *outside = toolbox_outside(desk, &tools->need, label);
    desk_warn(desk, "%s is entered but not in hand; %s", label,
              *outside ? outside : "choose it by its digit");
    return go(GO_STAY);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    const Tools *tools = state;
    const GPtrArray *labels = tools->labels;
    if (digit == 0 && !desk->who)
        return go_open(VIEW_WHO, NULL);
    if (digit == 0)
        return go_open(VIEW_TOOL, new_words(tools));
    if (digit > MIN(labels->len, TOOLS_MOST))
        return go(GO_STAY);
    toolbox_take(desk, &tools->need, labels->pdata[digit - 1]);
    say_in_hand(tools, desk, labels->pdata[digit - 1]);
    return go(GO_UP);
}

// The gauge in hand was zeroed: on what is asked.
static Go act(gpointer state, Desk *desk, Action action)
{
    const Tools *tools = state;
    if (action != ACTION_GAUGE || tools->need.need != NEED_GAUGE)
        return go(GO_DEFAULT);
    const char *label = toolbox_for(desk, &tools->need);
    if (label)
        return go_instead(VIEW_ENTER, g_strconcat("zero\n", label, NULL));
    desk_warn(desk, "no gauge is in hand yet; its digit takes one, then g and g again zero it");
    return go(GO_STAY);
}

const ViewOps gauge_view = {.name = "gauge",
                            .small = TRUE,
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .wants = wants,
                            .digit = digit,
                            .act = act};
