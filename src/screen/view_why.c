// What a verdict rests on: its figures, its notes, and the entries about it.
#include "about.h"
#include "find_list.h"
#include "struck.h"
#include "telling.h"
#include "to_place.h"
#include "uphold.h"

#include <standbook/work/agenda_item.h>
#include <standbook/work/set_preload.h>
#include <standbook/work/told.h>
#include <standbook/work/tool_doubt.h>

typedef struct {
    char *name;     // of the requirement (requirement_name)
    gboolean leads; // Enter goes on to its place: it was looked for from elsewhere
    FindList *list; // of all builds, for the lot fitted there
    PageTurn turn;
    guint looked;   // how many entries the builds had when all were open that may have the lot,
    gint64 version; // and the store's version then
} Why;

// The argument is the name; with a line `leads` behind it, Enter goes on to the place.
static gpointer open(Desk *desk, const char *argument)
{
    Why *why = g_new0(Why, 1);
    why->list = find_list_new(desk);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 2);
    why->name = g_strdup(parts[0]);
    why->leads = parts[1] != NULL;
    return why;
}

static void close(gpointer state)
{
    Why *why = state;
    find_list_free(why->list);
    g_free(why->name);
    g_free(why);
}

// Why its tool puts it in doubt, if it does; returns the row behind.
static guint paint_tool(Desk *desk, const Requirement *made, guint row, Page *page)
{
    enum { HEAD = 1, SAID = 14 };
    g_auto(Told) told = {0};
    guint index = 0;
    if (!told_init(&told, desk) ||
        !g_ptr_array_find(told.agenda.assessment->requirements, made, &index))
        return row;
    g_autoptr(GArray) lines = tool_doubt(&told.agenda, told.taken, index, told.telling.now);
    for (guint i = 0; i < lines->len; i++) {
        const ToolLine *line = &g_array_index(lines, ToolLine, i);
        canvas_put(page->body, row, HEAD, SAID - HEAD - 1, style_of(TYPE_BOLD, 0), line->head);
        row = canvas_wrap(page->body, row, SAID, PAGE_WIDTH - SAID, style_of(0, 0), line->said);
    }
    return row + (lines->len ? 1 : 0);
}

// How far a bolt is pulled, and what its stages come to against what they stand for; returns the
// row behind.
static guint paint_preload(Desk *desk, const Requirement *made, guint row, Page *page)
{
    g_auto(Told) told = {0};
    guint index = 0;
    if (made->asked != ASKED_BOLT || !told_init(&told, desk) ||
        !g_ptr_array_find(told.agenda.assessment->requirements, made, &index))
        return row;
    g_auto(AgendaItem) item = agenda_item(&told.agenda, index);
    if (!item.tightening || item.position < 0)
        return row;
    g_autoptr(GPtrArray) lines = set_preload_told(item.tightening, (guint)item.position);
    for (guint i = 0; i < lines->len; i++)
        row = canvas_wrap(page->body, row, 1, PAGE_WIDTH - 1, style_of(0, 0), lines->pdata[i]);
    return row + 1;
}

// What find tells of it too (work/told.h), where its lot is besides, but not its footnotes, which
// stand with its figures; returns the row behind.
static guint paint_told(const Why *why, Desk *desk, const Requirement *made, guint row, Page *page)
{
    g_auto(Told) told = {0};
    if (!told_init(&told, desk))
        return row;
    g_autoptr(GPtrArray) lines = told_lines(&told.agenda, told.taken, made, told.telling.now);
    guint count = lines->len - MIN(lines->len, made->notes->len);
    for (guint i = 0; i < count; i++)
        if (g_strcmp0(lines->pdata[i], requirement_by_plan_said(made)) != 0)
            row = canvas_wrap(page->body, row, 1, PAGE_WIDTH - 1, style_of(0, 0), lines->pdata[i]);
    g_autofree char *lot = find_list_lot(why->list, desk, made);
    if (lot)
        row = canvas_wrap(page->body, row, 1, PAGE_WIDTH - 1, style_of(0, 0), lot);
    return row + (count || lot ? 1 : 0);
}

// The entry that stands there and can be struck here: that of who looks at it; 0 for none. What is
// worked out stands on several.
static gint64 to_strike(Desk *desk, const Requirement *made)
{
    gboolean worked_out = made && made->check && made->check->formula;
    return made && !worked_out && made->entry > 0 && struck_is_own(desk, made->entry) ? made->entry
                                                                                      : 0;
}

static void say_keys(const Why *why, Desk *desk, const Requirement *made, Page *page)
{
    gboolean leads = made && (why->leads || why->turn.rest), doubt = made && uphold_can(made);
    gboolean own = to_strike(desk, made) != 0, any = leads || doubt || own;
    page_say(&page->next, "%s%s%s%s",
             !leads           ? ""
             : why->turn.rest ? "Enter shows the rest; "
                              : "Enter goes to its place; ",
             doubt ? "u or 1 upholds it; " : "", own ? "* strikes it; " : "",
             any ? "any other key goes back" : "any key goes back");
    if (leads)
        page_key(page, ACTION_TAKE, why->turn.rest ? "shows the rest" : "to its place");
    if (doubt)
        page_key(page, ACTION_UPHOLD, NULL);
    if (own)
        page_key(page, ACTION_STRIKE, NULL);
    page->keys[leads + doubt + own] =
        any ? (PageKey){ACTION_UP, "any other key", "goes back"}
            : (PageKey){ACTION_UP, "any key", "goes back and does nothing else"};
}

static const Requirement *made_of(Desk *desk, const char *name)
{
    Session *session = desk_build(desk);
    return session ? requirement_of_name(session_assessment(session), name) : NULL;
}

static void paint_body(const Why *why, Desk *desk, const Requirement *made, Page *page)
{
    const Session *session = desk_build(desk);
    guint row = about_figures(page->body, 0, session, made);
    row = paint_tool(desk, made, paint_preload(desk, made, row, page), page);
    row = paint_told(why, desk, made, row, page);
    about_entries(page->body, row, session, made);
}

// What finds no room is an Enter away.
static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Why *why = state;
    const Requirement *made = made_of(desk, why->name);
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page_say(&page->head, "Why: %s", why->name);
    page->field = ASKS_KEY;
    if (made)
        paint_body(why, desk, made, page);
    page_turn(page, &why->turn);
    say_keys(why, desk, made, page);
}

// Where a lot was fitted, the other builds are opened one by one, which may have it too; after that
// there is nothing to look for until something is entered.
static gboolean idle(gpointer state, Desk *desk)
{
    Why *why = state;
    if (why->looked && why->looked == desk_entries_known(desk) && why->version == desk->version)
        return FALSE;
    const Requirement *made = made_of(desk, why->name);
    g_autofree char *lot = made ? find_list_lot(why->list, desk, made) : NULL;
    gboolean more = lot && find_list_open_next(why->list, desk);
    why->looked = more ? 0 : desk_entries_known(desk);
    why->version = desk->version;
    return more;
}

// To the work, with no page of the search left under it; who works here is asked first.
static Go lead(Desk *desk, const Requirement *made)
{
    g_auto(Told) told = {0};
    if (!desk->who)
        return go_open(VIEW_WHO, NULL);
    Go there = told_init(&told, desk) ? go_to_place(desk, &told.agenda, made) : go(GO_KEEP);
    there.kind = there.kind == GO_OPEN ? GO_WORK : there.kind;
    return there;
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Why *why = state;
    const Requirement *made = made_of(desk, why->name);
    if (action == ACTION_TAKE && page_turn_on(&why->turn))
        return go(GO_STAY);
    if (action == ACTION_TAKE && why->leads && made)
        return lead(desk, made);
    gint64 own = to_strike(desk, made);
    if (action == ACTION_UPHOLD && made && uphold_can(made))
        return uphold_ask(desk, made->step, made);
    if (action == ACTION_STRIKE && own)
        return go_open(VIEW_STRIKE, g_strdup_printf("%" G_GINT64_FORMAT, own));
    return go(GO_DEFAULT);
}

const ViewOps why_view = {
    .name = "why", .open = open, .close = close, .paint = paint, .act = act, .idle = idle};
