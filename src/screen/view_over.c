// One check over all engines of the family: its places one under the other, in one window.
#include "view.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/over.h>
#include <string.h>

enum { STRIP_COLUMN = 32, WINDOW_CELLS = 46 };

typedef struct {
    char *check;  // its name; NULL: the first that there is
    guint builds; // of all builds, newest first, that are open by now
} OverAll;

// The argument is the name of a check, or nothing.
static gpointer open(Desk *desk, const char *argument)
{
    OverAll *over = g_new0(OverAll, 1);
    (void)desk;
    over->check = argument && *argument ? g_strdup(argument) : NULL;
    return over;
}

static void close(gpointer state)
{
    OverAll *over = state;
    g_free(over->check);
    g_free(over);
}

static gboolean idle(gpointer state, Desk *desk)
{
    OverAll *over = state;
    return desk_open_next(desk, &over->builds);
}

// The build in hand, else the newest that is open: its plan says which checks there are.
static Session *leading(const Desk *desk)
{
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    Session *session = desk->number ? g_hash_table_lookup(desk->sessions, desk->number) : NULL;
    for (guint i = 0; !session && i < numbers->len; i++)
        session = g_hash_table_lookup(desk->sessions, numbers->pdata[i]);
    return session;
}

static gboolean is_family(const Session *session, const Session *lead)
{
    return g_strcmp0(session_plan(session)->family, session_plan(lead)->family) == 0;
}

// All checks that were read on any engine of the family, in the order of the plan in hand first.
static GPtrArray *checks_of(const Desk *desk, const Session *lead)
{
    GPtrArray *names = g_ptr_array_new();
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    for (guint i = 0; i <= numbers->len; i++) {
        const Session *session =
            i == 0 ? lead : g_hash_table_lookup(desk->sessions, numbers->pdata[i - 1]);
        if (!session || !is_family(session, lead))
            continue;
        g_autoptr(GPtrArray) checks = over_checks(session_assessment((Session *)session));
        for (guint c = 0; c < checks->len; c++) {
            const PlanCheck *check = checks->pdata[c];
            if (!g_ptr_array_find_with_equal_func(names, check->name, g_str_equal, NULL))
                g_ptr_array_add(names, (gpointer)check->name);
        }
    }
    return names;
}

static GArray *rows_of(const Desk *desk, const Session *lead, const char *check)
{
    GArray *rows = g_array_new(FALSE, FALSE, sizeof(Over));
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    for (guint i = 0; i < numbers->len; i++) {
        Session *session = g_hash_table_lookup(desk->sessions, numbers->pdata[i]);
        gpointer key = NULL;
        if (session && is_family(session, lead) &&
            g_hash_table_lookup_extended(desk->sessions, numbers->pdata[i], &key, NULL))
            over_add(rows, key, session_assessment(session), check);
    }
    return rows;
}

static void paint_row(const Over *row, gboolean first, guint engine, const Number *from,
                      const Number *to, Page *page, guint at)
{
    const Requirement *made = row->made;
    static const Style plain = {0, 0};
    g_autofree char *number = g_strdup_printf("%u", engine);
    g_autofree char *value = figure_value(made);
    const Number *values[] = {made->value};
    g_autoptr(Number) none = number_from_integer(0);
    const Strip strip = {.lower = made->lower,
                         .upper = made->upper,
                         .wear = made->wear,
                         .as_new = !made->lower && made->wear ? none : NULL,
                         .values = values,
                         .count = 1,
                         .from = from,
                         .to = to,
                         .cells = WINDOW_CELLS};
    g_autofree char *drawn = strip_draw(&strip);
    if (first) {
        canvas_put_right(page->body, at, 2, plain, number);
        canvas_put(page->body, at, 3, 8, plain, row->number);
    }
    canvas_put(page->body, at, 12, 8, plain, made->place);
    canvas_put_right(page->body, at, 23, style_of(TYPE_BOLD, 0), value);
    canvas_put(page->body, at, 24, 7, verdict_style(over_verdict(made)),
               verdict_mark(over_verdict(made), over_reason(made)));
    strip_paint(page->body, at, STRIP_COLUMN, drawn, over_verdict(made));
}

static void paint_heads(const Requirement *made, const Number *from, const Number *to, Page *page)
{
    static const Style head = {TYPE_UNDERLINE, ROLE_CALM}, plain = {0, 0};
    g_autofree char *least = check_value_words(made->check, from),
                    *most = check_value_words(made->check, to);
    const char *unit = figure_unit(made);
    canvas_put(page->body, 0, 1, 0, head, "no engine");
    canvas_put(page->body, 0, 12, 0, head, "place");
    canvas_put_right(page->body, 0, 23, head, *unit ? unit : "value");
    canvas_put(page->body, 0, STRIP_COLUMN, 0, plain, least);
    canvas_put_right(page->body, 0, STRIP_COLUMN + WINDOW_CELLS, plain, most);
    page->heads = 1;
}

static guint paint_rows(const GArray *rows, Page *page)
{
    g_autoptr(Number) from = NULL, to = NULL;
    guint engines = 0;
    if (!over_window(rows, &from, &to))
        return 0;
    paint_heads(g_array_index(rows, Over, 0).made, from, to, page);
    for (guint i = 0; i < rows->len; i++) {
        const Over *row = &g_array_index(rows, Over, i);
        gboolean first =
            i == 0 || strcmp(row->number, g_array_index(rows, Over, i - 1).number) != 0;
        engines += first ? 1 : 0;
        paint_row(row, first, engines, from, to, page, 1 + i);
    }
    return engines;
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    OverAll *over = state;
    const Session *lead = leading(desk);
    (void)typed;
    page_say(&page->status, "The shop");
    page_say(&page->head, "One check over the engines");
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which engine?");
    page_key(page, ACTION_TAKE, "number opens");
    page_key(page, ACTION_ON, "next check");
    page_key(page, ACTION_FIND, NULL);
    page_key(page, ACTION_UP, NULL);
    page_key(page, ACTION_HELP, NULL);
    g_autoptr(GPtrArray) checks = lead ? checks_of(desk, lead) : NULL;
    if (!checks || checks->len == 0) {
        canvas_put(page->body, 1, 1, 0, style_of(0, 0), "Nothing was read yet.");
        return;
    }
    if (!over->check)
        over->check = g_strdup(checks->pdata[0]);
    g_autoptr(GArray) rows = rows_of(desk, lead, over->check);
    const PlanCheck *check = rows->len ? g_array_index(rows, Over, 0).made->check : NULL;
    page_say(&page->head, "%s%s%s", over->check, check && check->formula_text ? " = " : "",
             check && check->formula_text ? check->formula_text : "");
    if (session_plan(lead)->family)
        page_say(&page->count, "family %s", session_plan(lead)->family);
    guint engines = paint_rows(rows, page);
    page->remark = engines ? over_words(rows) : g_strdup("It was read on no engine yet.");
    page_say(&page->then, "┤ limit   ║ service limit   ═ worn away since new   %u engine%s",
             engines, engines == 1 ? "" : "s");
}

// The check so many places behind the one shown.
static void step(OverAll *over, const Desk *desk, gint by)
{
    const Session *lead = leading(desk);
    g_autoptr(GPtrArray) checks = lead ? checks_of(desk, lead) : NULL;
    guint at = 0;
    if (!checks || checks->len == 0)
        return;
    gboolean there =
        over->check && g_ptr_array_find_with_equal_func(checks, over->check, g_str_equal, &at);
    guint next = there ? (guint)((gint)at + by + (gint)checks->len) % checks->len : 0;
    g_free(over->check);
    over->check = g_strdup(checks->pdata[next]);
}

static const char *engine_at(const GArray *rows, guint64 line)
{
    guint engines = 0;
    for (guint i = 0; i < rows->len; i++) {
        const char *number = g_array_index(rows, Over, i).number;
        gboolean first = i == 0 || strcmp(number, g_array_index(rows, Over, i - 1).number) != 0;
        engines += first ? 1 : 0;
        if (engines == line)
            return number;
    }
    return NULL;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    const OverAll *over = state;
    const Session *lead = leading(desk);
    g_autoptr(GArray) rows = lead && over->check ? rows_of(desk, lead, over->check) : NULL;
    const char *number = rows ? engine_at(rows, g_ascii_strtoull(typed, NULL, 10)) : NULL;
    if (!number) {
        desk_warn(desk, "there is no engine %s in this list", typed);
        return go(GO_KEEP);
    }
    desk_take_up(desk, number);
    return go_instead(VIEW_STEPS, NULL);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    if (action != ACTION_ON)
        return go(GO_DEFAULT);
    step(state, desk, 1);
    return go(GO_STAY);
}

const ViewOps over_view = {.name = "one check over the engines",
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .act = act,
                           .idle = idle};
