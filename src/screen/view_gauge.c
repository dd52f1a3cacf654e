// Which gauge or wrench is in hand: one digit; g again says that the gauge was zeroed.
#include "bench_field.h"
#include "bench_work.h"
#include "gauge_lines.h"
#include "tool_digits.h"
#include "tool_wrong.h"
#include "view.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/gauge_choice.h>
#include <standbook/work/tool_standing.h>
#include <string.h>

enum { NONE_DIGIT = TOOL_DIGITS }; // no gauge; an angle is turned by a mark then

typedef struct {
    ToolNeed need;
    char *sort;
    Number *value, *ceiling;
    char *place;       // the index of the place to be read; NULL if there is none
    gint64 seen;       // the shop's last entry when what follows was worked out
    GPtrArray *labels; // char *, by their digits
    char *can;         // what each can tell there, or how each wrench stands, a line each; NULL
                       // where neither is known
    char *more;        // those that have no digit, ` G40 G41`; NULL for none
    char *again;       // the wrench out of its range that the same digit takes all the same
} Tools;

// Whether it can be done with none.
static gboolean takes_none(const Tools *tools)
{
    return tools->need.need == NEED_ANGLE || (tools->need.need == NEED_GAUGE && tools->labels->len);
}

// What is to be settled, what that needs, and the gauges.
static char *can_words(const GaugeChoices *choices, const GPtrArray *labels)
{
    g_autofree char *name = requirement_title(choices->settled);
    g_autofree char *limits = figure_limits(choices->settled);
    const Unit *unit = choices->settled->check->unit;
    g_autofree char *lines = gauge_lines(choices, labels);
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

// What is asked of a gauge there, as the build stands now.
static const ToolNeed *need_of(Tools *tools, Desk *desk)
{
    guint place;
    BenchWork work;
    const Requirement *here = place_of(tools, desk, &place);
    if (here && bench_work(desk, here->step->name, &work)) {
        const char *sort = tools->need.sort;
        tools->need = bench_need_at(&work.agenda, place);
        tools->need.sort = sort;
    }
    return &tools->need;
}

// Those that serve and have no digit; NULL if all have one.
static char *labels_beyond(Tools *tools, Desk *desk)
{
    g_autoptr(GPtrArray) serving = toolbox_all(desk, &tools->need);
    g_autoptr(GString) beyond = g_string_new(NULL);
    for (guint i = 0; i < serving->len; i++)
        if (!g_ptr_array_find_with_equal_func(tools->labels, serving->pdata[i], g_str_equal, NULL))
            g_string_append_printf(beyond, " %s", (const char *)serving->pdata[i]);
    return beyond->len ? g_strdup(beyond->str) : NULL;
}

// The digits of all; one is kept for none.
static void set_labels(Tools *tools, Desk *desk, const GaugeChoices *choices)
{
    tools->labels = tool_digits(desk, need_of(tools, desk), choices);
    if (tools->need.need != NEED_TORQUE && tools->labels->len == TOOL_DIGITS)
        g_ptr_array_set_size(tools->labels, NONE_DIGIT - 1);
    g_free(tools->more);
    tools->more = labels_beyond(tools, desk);
}

// What the gauges can tell there, and the digits of all.
static void look_at(Tools *tools, Desk *desk, guint place)
{
    g_auto(GaugeChoices) choices =
        session_gauges(desk_build(desk), place, toolbox_for(desk, need_of(tools, desk)));
    set_labels(tools, desk, &choices);
    if (choices.gauges->len)
        tools->can = can_words(&choices, tools->labels);
    else if (tools->labels->len)
        tools->can = toolbox_lines(desk, &tools->need, tools->labels, TOOL_DIGITS);
}

static void look_round(Tools *tools, Desk *desk)
{
    guint place;
    tools->seen = shop_last(session_shop(desk->shop));
    g_clear_pointer(&tools->labels, g_ptr_array_unref);
    g_clear_pointer(&tools->can, g_free);
    if (place_of(tools, desk, &place)) {
        look_at(tools, desk, place);
        return;
    }
    set_labels(tools, desk, NULL);
    if (tools->labels->len)
        tools->can = toolbox_lines(desk, &tools->need, tools->labels, TOOL_DIGITS);
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
    tools->need = (ToolNeed){.need = parts[0][0] == 'T'   ? NEED_TORQUE
                                     : parts[0][0] == 'A' ? NEED_ANGLE
                                                          : NEED_GAUGE,
                             .sort = tools->sort,
                             .value = tools->value};
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
    g_free(tools->again);
    g_free(tools->more);
    g_free(tools);
}

// `1 W1  2 W3  0 new`: the digits that answer, and what each takes.
static char *answers(const Tools *tools, const Desk *desk)
{
    GString *words = g_string_new(tools->more ? "0 another  " : NULL); // in front it is seen
    for (guint i = 0; i < tools->labels->len; i++) {
        const char *label = tools->labels->pdata[i];
        gboolean room = tools->labels->len <= 3 && !tools->can;
        g_string_append_printf(words, "%u %s%s%s  ", i + 1, label, room ? " " : "",
                               room ? toolbox_words(desk, label) : "");
    }
    if (takes_none(tools))
        g_string_append_printf(words, "%u %s  ", NONE_DIGIT,
                               tools->need.need == NEED_ANGLE ? "none: by a mark" : "no gauge");
    g_string_append(words, tools->more ? "" : "0 new");
    return g_string_free(words, FALSE);
}

// The one in hand, without its adapter; NULL for none. The caller frees.
static char *in_hand(Tools *tools, Desk *desk)
{
    const char *label = toolbox_for(desk, need_of(tools, desk));
    g_auto(GStrv) parts = label ? g_strsplit(label, " with ", 2) : NULL;
    return parts && *parts[0] ? g_strdup(parts[0]) : NULL;
}

static void say_digits(const Tools *tools, Page *page)
{
    guint count = tools->labels->len;
    const char *first = count > 1 ? "1 to " : "";
    if (takes_none(tools) && !count)
        page_say(&page->unit, "%u or 0", NONE_DIGIT);
    else if (takes_none(tools))
        page_say(&page->unit, "%s%u or %u", first, count, NONE_DIGIT);
    else
        page_ask_digit(page, count);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Tools *tools = state;
    (void)typed;
    if (tools->seen != shop_last(session_shop(desk->shop))) // a tool was added
        look_round(tools, desk);
    g_autofree char *words = answers(tools, desk);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    g_autofree char *wrong = tool_wrong_lines(desk, tools->labels);
    g_autofree char *more =
        g_strconcat(tools->more ? " also:" : "", tools->more,
                    tools->more ? "; 0 and its number takes one of them in hand" : NULL, NULL);
    g_autoptr(GString) remark = g_string_new(tools->can);
    const char *const lines[] = {wrong, more};
    for (gsize i = 0; i < G_N_ELEMENTS(lines); i++)
        if (*lines[i])
            g_string_append_printf(remark, "%s%s", remark->len ? "\n" : "", lines[i]);
    if (remark->len)
        page_say(&page->remark, "%s", remark->str);
    page->means = FALSE;
    say_digits(tools, page);
    page_say(&page->next, "which %s is in hand?", need_words(tools->need.need));
    page_say(&page->then, "%s", words);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "takes it"};
    guint key = 1;
    if (tools->need.need == NEED_GAUGE)
        page->keys[key++] = (PageKey){ACTION_GAUGE, "g", "it was zeroed"};
    g_autofree char *ended = in_hand(tools, desk);
    if (ended)
        page->keys[key++] = (PageKey){ACTION_CLOSE, "d", "out of use"};
    page->keys[key] = (PageKey){ACTION_UP, "Backspace", "leave it open"};
}

// The page of a place that is read names its gauge itself; where none is, as when a check is being
// named on a blank card, it is said.
static void say_in_hand(const Tools *tools, Desk *desk, const char *label)
{
    const char *words = toolbox_words(desk, label);
    const Requirement *here = place_of(tools, desk, NULL);
    if (tools->place && (!here || here->asked != ASKED_READ))
        desk_last(desk, "%s%s%s is in hand", label ? label : "no gauge", *words ? " " : "", words);
}

// Which sort of tool would be new; an adapter is none of a wrench's.
static char *new_words(const Tools *tools)
{
    static const char *const letters[] = {
        [NEED_GAUGE] = "G", [NEED_TORQUE] = "T", [NEED_ANGLE] = "A"};
    Need need = tools->need.need;
    return g_strconcat(letters[need], need == NEED_GAUGE ? tools->sort : NULL, NULL);
}

// A gauge of which nobody said what it measures is used for the check it is taken at, no other.
static gboolean is_for_this_alone(const ToolNeed *need, Desk *desk, const char *label)
{
    const Entry *tool = shop_find(session_shop(desk->shop), "tool", label);
    g_autofree char *range = tool ? tool_range_words(tool) : NULL;
    return need->need == NEED_GAUGE && range && !*range;
}

// Why it is not taken: `M2 reads 50-75 mm`, `W1, 5-25 N·m: 40 is outside`.
static char *outside_words(const ToolNeed *need, Desk *desk, const char *label)
{
    const Entry *tool = shop_find(session_shop(desk->shop), "tool", label);
    if (need->need == NEED_GAUGE && tool)
        return toolbox_reads(tool);
    g_autofree char *outside = toolbox_outside(desk, need, label);
    return g_strdup_printf("%s, %s", label, *outside ? outside : "its range does not reach that");
}

// What does not reach is said first; the same digit again takes it, and its work is in doubt.
static Go take(Tools *tools, Desk *desk, const char *label)
{
    const ToolNeed *need = need_of(tools, desk);
    gboolean again = g_strcmp0(tools->again, label) == 0;
    if (again || is_for_this_alone(need, desk, label))
        toolbox_take_beyond(desk, need, label);
    else
        toolbox_take(desk, need, label);
    const char *taken = toolbox_for(desk, need);
    if (need->need == NEED_GAUGE ? g_strcmp0(taken, label) == 0 : taken != NULL) {
        say_in_hand(tools, desk, label);
        return go(GO_UP);
    }
    g_autofree char *outside = outside_words(need, desk, label);
    g_free(tools->again);
    tools->again = g_strdup(label);
    desk_warn(desk, "%s; the same digit again takes it, and its work is in doubt", outside);
    return go(GO_STAY);
}

// One that was called by its number.
static Go take_known(Tools *tools, Desk *desk, const char *label)
{
    const ToolNeed *need = need_of(tools, desk);
    g_autofree char *planned = toolbox_as_planned(need, label);
    if (toolbox_serves(desk, need, label))
        return take(tools, desk, planned);
    desk_warn(desk, "%s is %s: it does not serve here", label, toolbox_words(desk, label));
    return go(GO_STAY);
}

// A tool that was entered just now is taken in hand, if it serves here.
static Go wants(gpointer state, Desk *desk)
{
    Tools *tools = state;
    g_autofree char *known = g_steal_pointer(&desk->known_tool);
    if (known)
        return take_known(tools, desk, known);
    g_autofree char *label = g_steal_pointer(&desk->new_tool);
    if (!label)
        return go(GO_STAY);
    const ToolNeed *need = need_of(tools, desk);
    g_autofree char *planned = toolbox_as_planned(need, label);
    if (is_for_this_alone(need, desk, label))
        toolbox_take_beyond(desk, need, planned);
    else
        toolbox_take(desk, need, planned);
    if (g_strcmp0(toolbox_for(desk, need), label) == 0) {
        say_in_hand(tools, desk, label);
        return go(GO_UP);
    }
    g_autofree char *outside = toolbox_outside(desk, need, label);
    desk_warn(desk, "%s is entered but not in hand; %s", label,
              *outside ? outside : "choose it by its digit");
    return go(GO_STAY);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Tools *tools = state;
    if (digit == 0 && !desk->who)
        return go_open(VIEW_WHO, NULL);
    if (digit == 0)
        return go_open(VIEW_TOOL, new_words(tools));
    if (digit == NONE_DIGIT && takes_none(tools)) {
        toolbox_take_none(desk, &tools->need);
        say_in_hand(tools, desk, NULL);
        return go(GO_UP);
    }
    return digit > tools->labels->len ? go(GO_STAY)
                                      : take(tools, desk, tools->labels->pdata[digit - 1]);
}

// The gauge in hand was zeroed: on what is asked. Done with, it is out of use: how is asked.
static Go act(gpointer state, Desk *desk, Action action)
{
    Tools *tools = state;
    char *ended = action == ACTION_CLOSE ? in_hand(tools, desk) : NULL;
    if (ended)
        return go_open(VIEW_END, ended);
    if (action != ACTION_GAUGE || tools->need.need != NEED_GAUGE)
        return go(GO_DEFAULT);
    const char *label = toolbox_for(desk, need_of(tools, desk));
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
