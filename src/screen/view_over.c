// One check over all engines of the family: its places one under the other, in one window.
#include "about.h"
#include "print_list.h"
#include "view.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/over.h>
#include <string.h>

enum { STRIP_COLUMN = 32, WINDOW_CELLS = 46, MORE_LINES = 12 };

typedef struct {
    char *check;    // its name; NULL: the first that there is
    guint builds;   // of all builds, newest first, that are open by now
    guint at, seen; // the line chosen; the last one that must be seen
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

static char *row_strip(const Over *row, const Number *from, const Number *to)
{
    const Requirement *made = row->made;
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
    return strip_draw(&strip);
}

// `engine` is its number in the list, 0 if the row above is of the same.
static void paint_row(const Over *row, guint engine, gboolean chosen, const char *strip, Page *page,
                      guint at)
{
    const Requirement *made = row->made;
    static const Style plain = {0, 0};
    g_autofree char *number = g_strdup_printf("%u", engine);
    g_autofree char *value = figure_value(made);
    if (engine) {
        canvas_put_right(page->body, at, 2, plain, number);
        canvas_put(page->body, at, 3, 8, plain, row->number);
    }
    canvas_put(page->body, at, 12, 8, style_of(chosen ? TYPE_REVERSE : TYPE_PLAIN, 0),
               *made->place ? made->place : " ");
    canvas_put_right(page->body, at, 23, style_of(TYPE_BOLD, 0), value);
    canvas_put(page->body, at, 24, 7, verdict_style(over_verdict(made)),
               verdict_mark(over_verdict(made), over_reason(made)));
    strip_paint(page->body, at, STRIP_COLUMN, strip, over_verdict(made));
}

// Whether that limit is the same in all rows.
static gboolean is_common(const GArray *rows, gsize offset)
{
    const Number *first = NULL;
    for (guint i = 0; i < rows->len; i++) {
        const Requirement *made = g_array_index(rows, Over, i).made;
        const Number *limit = G_STRUCT_MEMBER(Number *, made, offset);
        if (!limit || (i > 0 && !number_equal(limit, first)))
            return FALSE;
        first = limit;
    }
    return first != NULL;
}

// The number of a limit over its post, where there is room between what stands there.
static void paint_limit(const GArray *rows, gsize offset, const char *strip, const char *post,
                        Page *page)
{
    const char *at = strstr(strip, post);
    if (!at || !is_common(rows, offset))
        return;
    const Requirement *made = g_array_index(rows, Over, 0).made;
    g_autofree char *words =
        check_value_words(made->check, G_STRUCT_MEMBER(Number *, made, offset));
    guint width = canvas_text_width(page->body, words);
    guint column = STRIP_COLUMN + (guint)g_utf8_strlen(strip, at - strip);
    guint from = column > width / 2 ? column - width / 2 : 0;
    for (guint i = from > 0 ? from - 1 : 0; i <= from + width; i++) {
        const Cell *cell = canvas_cell(page->body, 0, i);
        if (i >= STRIP_COLUMN + WINDOW_CELLS || (cell && cell->character != ' '))
            return;
    }
    canvas_put(page->body, 0, from, 0, style_of(0, 0), words);
}

static void paint_heads(const GArray *rows, const Number *from, const Number *to, Page *page)
{
    static const Style head = {TYPE_UNDERLINE, ROLE_CALM}, plain = {0, 0};
    const Requirement *made = g_array_index(rows, Over, 0).made;
    g_autofree char *least = check_value_words(made->check, from),
                    *most = check_value_words(made->check, to);
    g_autofree char *strip = row_strip(&g_array_index(rows, Over, 0), from, to);
    const char *unit = figure_unit(made);
    canvas_put(page->body, 0, 1, 0, head, "no engine");
    canvas_put(page->body, 0, 12, 0, head, "place");
    canvas_put_right(page->body, 0, 23, head, *unit ? unit : "value");
    canvas_put(page->body, 0, STRIP_COLUMN, 0, plain, least);
    canvas_put_right(page->body, 0, STRIP_COLUMN + WINDOW_CELLS, plain, most);
    paint_limit(rows, G_STRUCT_OFFSET(Requirement, wear), strip, "║", page);
    paint_limit(rows, G_STRUCT_OFFSET(Requirement, upper), strip, "┤", page);
    paint_limit(rows, G_STRUCT_OFFSET(Requirement, lower), strip, "├", page);
    page->heads = 1;
}

static gboolean is_first(const GArray *rows, guint row)
{
    return row == 0 || strcmp(g_array_index(rows, Over, row).number,
                              g_array_index(rows, Over, row - 1).number) != 0;
}

static guint paint_rows(const OverAll *over, const GArray *rows, Page *page)
{
    g_autoptr(Number) from = NULL, to = NULL;
    guint engines = 0;
    if (!over_window(rows, &from, &to))
        return 0;
    paint_heads(rows, from, to, page);
    for (guint i = 0; i < rows->len; i++) {
        const Over *row = &g_array_index(rows, Over, i);
        g_autofree char *strip = row_strip(row, from, to);
        engines += is_first(rows, i) ? 1 : 0;
        paint_row(row, is_first(rows, i) ? engines : 0, i == over->at, strip, page, 1 + i);
    }
    page->focus = over->seen >= MORE_LINES ? 1 + over->seen : 0;
    return engines;
}

// At the right of a wide screen: what is known of the line chosen.
static void paint_detail(const OverAll *over, const GArray *rows, const Desk *desk, Page *page)
{
    guint width = page_detail_width(page->width);
    const Over *row = over->at < rows->len ? &g_array_index(rows, Over, over->at) : NULL;
    if (!width || !row)
        return;
    g_autofree char *title = desk_title(desk, row->number), *name = requirement_title(row->made);
    page->detail = canvas_new_growing(width, page->body->ascii);
    canvas_put(page->detail, 0, 1, 0, style_of(TYPE_BOLD, 0), title);
    canvas_put(page->detail, 2, 1, 0, style_of(0, 0), name);
    about_entries(page->detail, about_figures(page->detail, 3, row->made),
                  g_hash_table_lookup(desk->sessions, row->number), row->made);
}

// What is shown: the check asked for, else what is worked out from it, else the first.
static void settle(OverAll *over, const Session *lead, const GPtrArray *checks)
{
    if (over->check &&
        g_ptr_array_find_with_equal_func((GPtrArray *)checks, over->check, g_str_equal, NULL))
        return;
    const char *about =
        over->check ? over_about(session_assessment((Session *)lead), over->check) : NULL;
    g_free(over->check);
    over->check = g_strdup(about ? about : checks->pdata[0]);
}

// Sentences, a line each, broken at blanks where a line is longer than a row.
static char *sentences(const GArray *rows, gboolean ascii)
{
    g_autofree char *words = over_words(rows);
    g_auto(GStrv) lines = g_strsplit(words, "\n", -1);
    g_autoptr(Canvas) canvas = canvas_new_growing(PAGE_WIDTH - 2, ascii);
    guint row = 0;
    for (guint i = 0; lines[i]; i++)
        row = canvas_wrap(canvas, row, 0, PAGE_WIDTH - 2, style_of(0, 0), lines[i]);
    return g_strchomp(canvas_text(canvas));
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    OverAll *over = state;
    const Session *lead = leading(desk);
    (void)typed;
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    page_say(&page->status, "%s", name ? name : "The shop");
    page_say(&page->head, "One check over the engines");
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which engine?");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "opens"};
    page_key(page, ACTION_ON, "next check");
    page_key(page, ACTION_FIND, NULL);
    page_key(page, ACTION_PRINT, NULL);
    page_key(page, ACTION_UP, NULL);
    page_key(page, ACTION_HELP, NULL);
    g_autoptr(GPtrArray) checks = lead ? checks_of(desk, lead) : NULL;
    if (!checks || checks->len == 0) {
        canvas_put(page->body, 1, 1, 0, style_of(0, 0), "Nothing was read yet.");
        return;
    }
    settle(over, lead, checks);
    g_autoptr(GArray) rows = rows_of(desk, lead, over->check);
    const PlanCheck *check = rows->len ? g_array_index(rows, Over, 0).made->check : NULL;
    page_say(&page->head, "%s%s%s", over->check, check && check->formula_text ? " = " : "",
             check && check->formula_text ? check->formula_text : "");
    if (session_plan(lead)->family)
        page_say(&page->count, "family %s", session_plan(lead)->family);
    guint engines = paint_rows(over, rows, page);
    paint_detail(over, rows, desk, page);
    page->remark =
        engines ? sentences(rows, page->body->ascii) : g_strdup("It was read on no engine yet.");
    page_say(&page->then, "┤ limit   ║ wear limit   ═ worn away since new   %u engine%s", engines,
             engines == 1 ? "" : "s");
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
    over->at = over->seen = 0;
}

static const char *engine_at(const GArray *rows, guint64 line)
{
    guint engines = 0;
    for (guint i = 0; i < rows->len; i++) {
        engines += is_first(rows, i) ? 1 : 0;
        if (engines == line)
            return g_array_index(rows, Over, i).number;
    }
    return NULL;
}

static void choose(OverAll *over, guint line)
{
    over->at = line;
    over->seen = CLAMP(over->seen, line, line + MORE_LINES - 1);
}

static Go turn(OverAll *over, guint lines)
{
    guint next = MAX(over->seen + 1, MORE_LINES);
    choose(over, next < lines ? next : 0);
    over->seen = MIN(over->at + MORE_LINES, lines) - 1;
    return go(GO_STAY);
}

// The engine is opened at the place that needs a person most.
static Go enter(gpointer state, Desk *desk, const char *typed)
{
    OverAll *over = state;
    const Session *lead = leading(desk);
    g_autoptr(GArray) rows = lead && over->check ? rows_of(desk, lead, over->check) : NULL;
    if (rows && rows->len && strcmp(typed, "0") == 0)
        return turn(over, rows->len);
    const char *number = rows ? engine_at(rows, g_ascii_strtoull(typed, NULL, 10)) : NULL;
    if (!number) {
        desk_warn(desk, "there is no engine %s in this list", typed);
        return go(GO_KEEP);
    }
    desk_take_up(desk, number);
    return go_open(VIEW_WHY, requirement_name(over_worst(rows, number)->made));
}

static Go move(gpointer state, Desk *desk, gint direction)
{
    OverAll *over = state;
    const Session *lead = leading(desk);
    g_autoptr(GArray) rows = lead && over->check ? rows_of(desk, lead, over->check) : NULL;
    if (rows && rows->len)
        choose(over, (guint)CLAMP((gint)over->at + direction, 0, (gint)rows->len - 1));
    return go(GO_STAY);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    OverAll *over = state;
    switch (action) {
    case ACTION_ON:
        step(over, desk, 1);
        return go(GO_STAY);
    case ACTION_PRINT:
        print_list(desk, "check", over->check ? over->check : "", paint, over);
        return go(GO_STAY);
    case ACTION_OVER:
        return go(GO_STAY);
    default:
        return go(GO_DEFAULT);
    }
}

const ViewOps over_view = {.name = "one check over the engines",
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .move = move,
                           .act = act,
                           .idle = idle};
