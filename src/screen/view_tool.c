// A tool that the shop does not have yet: its number, what it measures and how well, a line each.
// It is entered with the last; what is left before stays as a draft.
#include "tool_lines.h"
#include "view.h"

typedef struct {
    ToolSaid said;
    char *draft; // its name among the drafts
    guint at;    // what is asked
} NewTool;

// The next question in that direction, from that one on; TOOL_ANSWERS if there is none.
static guint asked_from(const NewTool *tool, guint at, gint direction)
{
    while (at < TOOL_ANSWERS && !tool_asks(&tool->said, (ToolAnswer)at))
        at += (guint)direction; // before the first it comes round to more than the last
    return MIN(at, TOOL_ANSWERS);
}

// What was answered before, and the question behind it.
static void take_up_draft(NewTool *tool, Desk *desk)
{
    GStrv draft = g_hash_table_lookup(desk->drafts, tool->draft);
    guint count = draft ? g_strv_length(draft) : 0;
    for (guint i = 0; i < count; i++)
        tool->said.answers[i] = g_strdup(draft[i]);
    guint next = asked_from(tool, count, 1);
    tool->at = next < TOOL_ANSWERS ? next : asked_from(tool, TOOL_ANSWERS - 1, -1);
}

// A question that is not asked of it has an empty answer there.
static void keep_draft(const NewTool *tool, Desk *desk)
{
    g_autoptr(GStrvBuilder) draft = g_strv_builder_new();
    guint count = TOOL_ANSWERS;
    while (count && !tool->said.answers[count - 1])
        count--;
    for (guint i = 0; i < count; i++)
        g_strv_builder_add(draft, tool->said.answers[i] ? tool->said.answers[i] : "");
    g_hash_table_insert(desk->drafts, g_strdup(tool->draft), g_strv_builder_end(draft));
}

// The argument: T, A or G, and the sort of a gauge; behind G alone nothing is known of it.
static gpointer open(Desk *desk, const char *argument)
{
    NewTool *tool = g_new0(NewTool, 1);
    Need need = *argument == 'T' ? NEED_TORQUE : *argument == 'A' ? NEED_ANGLE : NEED_GAUGE;
    tool_said_init(&tool->said, need, argument[1] ? argument + 1 : NULL);
    tool->draft = g_strconcat("new tool ", argument, NULL);
    take_up_draft(tool, desk);
    return tool;
}

static void close(gpointer state)
{
    NewTool *tool = state;
    tool_said_clear(&tool->said);
    g_free(tool->draft);
    g_free(tool);
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

// How many were answered, out of those asked as far as is known.
static guint answered(const NewTool *tool, guint *asked)
{
    guint count = 0;
    *asked = 0;
    for (guint i = 0; i < TOOL_ANSWERS; i++) {
        gboolean asks = tool_asks(&tool->said, (ToolAnswer)i);
        *asked += asks ? 1 : 0;
        count += asks && tool->said.answers[i] ? 1 : 0;
    }
    return count;
}

enum { WORDS_COLUMN = 17, WORDS_WIDE = 62 };

// `3 range         10 to 60 Nm`; an empty answer in the words of what it means.
static guint paint_line(const NewTool *tool, Desk *desk, guint at, guint number, guint row,
                        Page *page)
{
    const char *answer = tool->said.answers[at];
    g_auto(ToolQuestion) question;
    tool_question(&tool->said, desk, (ToolAnswer)at, &question);
    g_autofree char *label = g_strdup_printf("%u %s", number, question.word);
    Style style = style_of(at == tool->at ? TYPE_BOLD : TYPE_PLAIN, ROLE_CALM);
    const char *means = question.otherwise ? question.otherwise : "";
    if (at == tool->at)
        page->focus = row;
    canvas_put(page->body, row, 1, WORDS_COLUMN - 2, style, label);
    return canvas_wrap(page->body, row, WORDS_COLUMN, WORDS_WIDE, style_of(0, 0),
                       !answer   ? "·"
                       : *answer ? answer
                                 : means);
}

static void paint_lines(const NewTool *tool, Desk *desk, Page *page)
{
    guint row = 1, number = 0;
    for (guint i = 0; i < TOOL_ANSWERS; i++)
        if (tool_asks(&tool->said, (ToolAnswer)i))
            row = paint_line(tool, desk, i, ++number, row, page);
    canvas_put(page->body, row + 1, 1, 0, style_of(0, 0),
               "The last answer enters it. Till then nothing is stored, and what stands here");
    canvas_put(page->body, row + 2, 1, 0, style_of(0, 0),
               "is kept as a draft until this program ends.");
}

static void paint_head(const NewTool *tool, Desk *desk, Page *page)
{
    g_autofree char *title = desk->number ? desk_title(desk, desk->number) : g_strdup("The shop");
    guint asked, count = answered(tool, &asked);
    page_say(&page->status, "%s", title);
    page_say(&page->head, "New: %s", tool->said.sort);
    page_say(&page->count, "%u of %u answered", count, asked);
}

static void paint_keys(const NewTool *tool, gboolean last, Page *page)
{
    const char *enters = tool->at == TOOL_DAY ? "alone enters it" : "enters it"; // a day asks on
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", last ? enters : "next"};
    if (tool->at)
        page->keys[1] = (PageKey){ACTION_BACK, "-Enter", "line back"};
    page->keys[tool->at ? 2 : 1] =
        (PageKey){ACTION_UP, "Backspace",
                  tool->at                         ? "on an empty field goes back"
                  : tool->said.answers[TOOL_LABEL] ? "on an empty field leaves, kept"
                                                   : "on an empty field leaves"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const NewTool *tool = state;
    const char *label = tool->said.answers[TOOL_LABEL];
    g_auto(ToolQuestion) question;
    tool_question(&tool->said, desk, (ToolAnswer)tool->at, &question);
    paint_head(tool, desk, page);
    paint_lines(tool, desk, page);
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s%s%s", label && tool->at ? label : "", label && tool->at ? ": " : "",
             question.next);
    say_then(tool, &question, page);
    paint_keys(tool, is_last(tool, typed), page);
}

// The page under it takes in hand what was entered.
static Go enter_it(const NewTool *tool, Desk *desk)
{
    g_auto(GStrv) lines = tool_lines(&tool->said);
    for (guint i = 0; lines[i]; i++)
        if (!desk_shop_line(desk, lines[i]))
            return go(GO_KEEP);
    g_hash_table_remove(desk->drafts, tool->draft);
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

// Where its number is asked that of a tool the shop has: it is called, not entered.
static gboolean is_called(const NewTool *tool, Desk *desk, const char *typed)
{
    g_autofree char *label = g_strstrip(g_strdup(typed));
    if (tool->at != TOOL_LABEL || !toolbox_has(desk, label))
        return FALSE;
    g_free(desk->known_tool);
    desk->known_tool = g_steal_pointer(&label);
    return TRUE;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    NewTool *tool = state;
    if (is_called(tool, desk, typed))
        return go(GO_UP);
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
    keep_draft(tool, desk);
    return go(GO_STAY);
}

// Who leaves it unfinished is told what was not stored.
static void say_left(const NewTool *tool, Desk *desk)
{
    guint asked, count = answered(tool, &asked);
    if (count)
        desk_warn(desk,
                  "%s is not entered; what was answered (%u of %u) is kept, 0 goes on with it",
                  tool->said.answers[TOOL_LABEL], count, asked);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    NewTool *tool = state;
    gboolean back = action == ACTION_UP || action == ACTION_BACK;
    if (action == ACTION_SHOP || (back && tool->at == 0))
        say_left(tool, desk);
    if (!back || tool->at == 0)
        return go(GO_DEFAULT);
    tool->at = asked_from(tool, tool->at - 1, -1);
    return go(GO_STAY);
}

const ViewOps tool_view = {
    .name = "a new tool", .open = open, .close = close, .paint = paint, .enter = enter, .act = act};
