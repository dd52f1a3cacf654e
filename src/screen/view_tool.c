// A tool that the shop does not have yet: its number, what it measures and how well, a line each.
// It is entered with the last.
#include "tool_lines.h"
#include "view.h"

#include <string.h>

typedef struct {
    ToolSaid said;
    guint at; // what is asked
} NewTool;

// The argument: T, A or G, and the sort of a gauge; behind G alone nothing is known of it.
static gpointer open(Desk *desk, const char *argument)
{
    NewTool *tool = g_new0(NewTool, 1);
    Need need = *argument == 'T' ? NEED_TORQUE : *argument == 'A' ? NEED_ANGLE : NEED_GAUGE;
    (void)desk;
    tool_said_init(&tool->said, need, argument[1] ? argument + 1 : NULL);
    return tool;
}

static void close(gpointer state)
{
    NewTool *tool = state;
    tool_said_clear(&tool->said);
    g_free(tool);
}

// The next question in that direction, from that one on; TOOL_ANSWERS if there is none.
static guint asked_from(const NewTool *tool, guint at, gint direction)
{
    while (at < TOOL_ANSWERS && !tool_asks(&tool->said, (ToolAnswer)at))
        at += (guint)direction; // before the first it comes round to more than the last
    return MIN(at, TOOL_ANSWERS);
}

// Whether Enter on what is typed ends the questions.
static gboolean is_last(const NewTool *tool, const char *typed)
{
    gboolean dated = tool->at == TOOL_DAY && *typed;
    return !dated && asked_from(tool, tool->at + 1, 1) == TOOL_ANSWERS;
}

static void say_then(const NewTool *tool, const ToolQuestion *question, Page *page)
{
    const char *before = tool->said.answers[tool->at];
    if (before && *before)
        page_say(&page->then, "Enter keeps %s", before);
    else
        page_say(&page->then, "%s%s%s", question->hint,
                 question->otherwise ? "; Enter alone: " : "",
                 question->otherwise ? question->otherwise : "");
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const NewTool *tool = state;
    const char *label = tool->said.answers[TOOL_LABEL];
    g_auto(ToolQuestion) question;
    tool_question(&tool->said, desk, (ToolAnswer)tool->at, &question);
    page->ask = page->means = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s%s%s", label && tool->at ? label : "", label && tool->at ? ": " : "",
             question.next);
    say_then(tool, &question, page);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", is_last(tool, typed) ? "enters it" : "next"};
    page->keys[1] =
        (PageKey){ACTION_UP, "Backspace",
                  tool->at ? "on an empty field goes back" : "on an empty field leaves"};
}

// The page under it takes in hand what was entered.
static Go enter_it(const NewTool *tool, Desk *desk)
{
    g_auto(GStrv) lines = tool_lines(&tool->said);
    for (guint i = 0; lines[i]; i++)
        if (!desk_shop_line(desk, lines[i]))
            return go(GO_KEEP);
    g_free(desk->new_tool);
    desk->new_tool = g_strdup(tool->said.answers[TOOL_LABEL]);
    desk_last(desk, "%s entered", desk->new_tool);
    return go(GO_UP);
}

// What the field says; on an empty one what was said before, or what that stands for.
static char *answer_of(const NewTool *tool, Desk *desk, const char *typed)
{
    const char *before = tool->said.answers[tool->at];
    g_autofree char *text = g_strstrip(g_strdup(typed));
    g_auto(ToolQuestion) question;
    tool_question(&tool->said, desk, (ToolAnswer)tool->at, &question);
    return *text ? g_steal_pointer(&text) : g_strdup(before && *before ? before : question.instead);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    NewTool *tool = state;
    char **answer = &tool->said.answers[tool->at], *before = *answer;
    char *now = answer_of(tool, desk, typed);
    if (!now)
        return go(GO_KEEP);
    *answer = now;
    if (!tool_would_do(&tool->said, desk)) {
        *answer = before;
        g_free(now);
        return go(GO_KEEP);
    }
    g_free(before);
    guint next = asked_from(tool, tool->at + 1, 1);
    if (next == TOOL_ANSWERS)
        return enter_it(tool, desk);
    tool->at = next;
    return go(GO_STAY);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    NewTool *tool = state;
    (void)desk;
    if (action != ACTION_UP || tool->at == 0)
        return go(GO_DEFAULT);
    tool->at = asked_from(tool, tool->at - 1, -1);
    return go(GO_STAY);
}

const ViewOps tool_view = {.name = "a new tool",
                           .small = TRUE,
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .act = act};
