// One check over all engines of the family: its places one under the other, in one window.
#include "about.h"
#include "beside.h"
#include "list_part.h"
#include "over_list.h"
#include "over_which.h"
#include "print_list.h"
#include "to_place.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/working.h>
#include <string.h>

enum { BUILD_COLUMN = 3, PLACE_COLUMN = 12, PLACE_MOST = 24, STRIP_END = 78, MARK_WIDTH = 7 };

static const Style plain = {TYPE_PLAIN, ROLE_CALM};

typedef struct {
    OverList *list;
    guint tried;    // of all builds, newest first, that were opened by now
    gboolean whole; // all of them
    ListPart part;   // of the lines, that are seen
    OverWhich which; // another check, asked for by its name
} OverAll;

// Where the columns of a list stand.
typedef struct {
    const char *head; // over the places
    guint place_width, value_end, mark, strip, cells;
} Columns;

// The argument is the name of a check, or nothing.
static gpointer open(Desk *desk, const char *argument)
{
    OverAll *over = g_new0(OverAll, 1);
    (void)desk;
    over->list = over_list_new(argument);
    return over;
}

static void close(gpointer state)
{
    OverAll *over = state;
    over_list_free(over->list);
    over_which_clear(&over->which);
    g_free(over);
}

static gboolean idle(gpointer state, Desk *desk)
{
    OverAll *over = state;
    over->whole = over->whole || !desk_open_next(desk, &over->tried);
    return !over->whole;
}

static const Over *row_at(const OverList *list, guint row)
{
    return &g_array_index(list->rows, Over, row);
}

// ROWS -------------------------------------------------------------------------------------------

// Places of one axis stand under its name.
static Columns columns_of(const OverList *list)
{
    const GPtrArray *axes = row_at(list, 0)->made->check->places;
    const char *head = axes->len == 0 ? "" : axes->len == 1 ? axis_name(axes->pdata[0]) : "place";
    guint head_width = (guint)g_utf8_strlen(head, -1);
    Columns columns = {.head = head};
    columns.place_width = MIN(MAX(list->place_width, head_width), PLACE_MOST);
    columns.value_end = PLACE_COLUMN + columns.place_width + 1 + MAX(list->value_width, 5);
    columns.mark = columns.value_end + 1;
    columns.strip = columns.mark + MARK_WIDTH + 1;
    columns.cells = STRIP_END - columns.strip;
    return columns;
}

static char *row_strip(const OverList *list, const Over *row, guint cells)
{
    const Requirement *made = row->made;
    const Number *values[] = {made->value};
    g_autoptr(Number) none = number_from_integer(0);
    const Strip strip = {.lower = made->lower,
                         .upper = made->upper,
                         .wear = made->wear,
                         .as_new = over_wears_away(made) ? none : NULL,
                         .values = values,
                         .count = 1,
                         .from = list->from,
                         .to = list->to,
                         .cells = cells};
    return strip_draw(&strip);
}

// `engine` is its number in the list, 0 if the row above is of the same.
static void paint_row(const OverList *list, guint at, guint engine, gboolean chosen,
                      const Columns *columns, Page *page)
{
    const Over *row = row_at(list, at);
    const Requirement *made = row->made;
    g_autofree char *number = g_strdup_printf("%u", engine), *value = figure_value(made);
    g_autofree char *place = over_list_place(row);
    g_autofree char *strip = row_strip(list, row, columns->cells);
    Verdict verdict = over_verdict(made);
    if (engine) {
        canvas_put_right(page->body, 1 + at, 2, plain, number);
        canvas_put(page->body, 1 + at, BUILD_COLUMN, 8, plain, row->number);
    }
    canvas_put(page->body, 1 + at, PLACE_COLUMN, MAX(columns->place_width, 1),
               style_of(chosen ? TYPE_REVERSE : TYPE_PLAIN, 0), *place ? place : " ");
    canvas_put_right(page->body, 1 + at, columns->value_end, style_of(TYPE_BOLD, 0), value);
    canvas_put(page->body, 1 + at, columns->mark, MARK_WIDTH, verdict_style(verdict),
               verdict_mark(verdict, over_reason(made), NULL));
    strip_paint(page->body, 1 + at, columns->strip, strip, verdict);
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
static void paint_limit(const OverList *list, gsize offset, const char *strip, const char *post,
                        const Columns *columns, Page *page)
{
    const char *at = strstr(strip, post);
    if (!at || !is_common(list->rows, offset))
        return;
    const Requirement *made = row_at(list, 0)->made;
    g_autofree char *words =
        check_limit_words(made->check, G_STRUCT_MEMBER(Number *, made, offset));
    guint width = canvas_text_width(page->body, words);
    guint column = columns->strip + (guint)g_utf8_strlen(strip, at - strip);
    guint from = column > width / 2 ? column - width / 2 : 0;
    for (guint i = from > 0 ? from - 1 : 0; i <= from + width; i++) {
        const Cell *cell = canvas_cell(page->body, 0, i);
        if (i >= STRIP_END || (cell && cell->character != ' '))
            return;
    }
    canvas_put(page->body, 0, from, 0, style_of(0, 0), words);
}

// An end of the window; new, which is 0, has no decimals.
static char *end_words(const PlanCheck *check, const Number *end)
{
    return number_sign(end) == 0 ? g_strdup("0") : check_value_words(check, end);
}

static void paint_heads(const OverList *list, const Columns *columns, Page *page)
{
    static const Style head = {TYPE_UNDERLINE, ROLE_CALM};
    const PlanCheck *check = row_at(list, 0)->made->check;
    g_autofree char *least = end_words(check, list->from), *most = end_words(check, list->to);
    g_autofree char *strip = row_strip(list, row_at(list, 0), columns->cells);
    canvas_put(page->body, 0, 0, 0, head, "no");
    canvas_put(page->body, 0, BUILD_COLUMN, 0, head, "engine");
    canvas_put(page->body, 0, PLACE_COLUMN, columns->place_width, head, columns->head);
    canvas_put_right(page->body, 0, columns->value_end, head, "value");
    canvas_put(page->body, 0, columns->strip, 0, plain, least);
    canvas_put_right(page->body, 0, STRIP_END, plain, most);
    paint_limit(list, G_STRUCT_OFFSET(Requirement, wear), strip, "║", columns, page);
    paint_limit(list, G_STRUCT_OFFSET(Requirement, upper), strip, "┤", columns, page);
    paint_limit(list, G_STRUCT_OFFSET(Requirement, lower), strip, "├", columns, page);
    page->heads = 1;
}

// Those that can be seen.
static void paint_rows(OverAll *over, Page *page)
{
    const OverList *list = over->list;
    const Columns columns = columns_of(list);
    paint_heads(list, &columns, page);
    ListPart seen = list_part_fitted(&over->part, list->rows->len, page_list_rows(page));
    guint engine = seen.from ? over_list_engine(list, seen.from - 1) : 0;
    for (guint i = seen.from; i < seen.from + seen.rows; i++) {
        gboolean first = over_list_is_first(list, i);
        engine += first ? 1 : 0;
        paint_row(list, i, first ? engine : 0, i == seen.at, &columns, page);
    }
    page_scroll(page, seen.from);
    if (page->height)
        over->part = seen;
}

// At the right of a wide screen: what is known of the line chosen.
static void paint_detail(const OverAll *over, const Desk *desk, Page *page)
{
    g_autoptr(Canvas) told = over->part.at < over->list->rows->len ? beside_begin(page) : NULL;
    if (!told)
        return;
    const Over *row = row_at(over->list, over->part.at);
    g_autofree char *title = desk_title(desk, row->number), *name = requirement_title(row->made);
    canvas_put(told, 0, 1, 0, style_of(TYPE_BOLD, 0), title);
    canvas_put(told, 2, 1, 0, plain, name);
    const Session *session = g_hash_table_lookup(desk->sessions, row->number);
    guint figures = about_figures(told, 3, session, row->made);
    beside_end(page, told, about_entries(told, figures, session, row->made), session, desk->now);
}

// WORDS ------------------------------------------------------------------------------------------

// Sentences, a line each, broken at blanks where a line is longer than a row.
static char *sentences(const char *words, gboolean ascii)
{
    g_auto(GStrv) lines = g_strsplit(words, "\n", -1);
    g_autoptr(Canvas) canvas = canvas_new_growing(PAGE_WIDTH - 2, ascii);
    guint row = 0;
    for (guint i = 0; lines[i]; i++)
        row = canvas_wrap(canvas, row, 0, PAGE_WIDTH - 2, plain, lines[i]);
    return g_strchomp(canvas_text(canvas));
}

// `found bore wear = largest found bore - new bore`, and at the right `mm  ±.004  family H23-4`.
static void say_check(const OverList *list, Page *page)
{
    const Requirement *made = row_at(list, 0)->made;
    const char *family = session_plan(list->lead)->family, *unit = figure_unit(made);
    const char *doubt = *unit ? list->doubt : "";
    g_autofree char *formula = made->check->formula ? working_formula(made->check->formula) : NULL;
    page_say(&page->head, "%s%s%s", list->check, formula ? " = " : "", formula ? formula : "");
    page_say(&page->count, "%s%s%s%s%s%s", unit, *doubt ? "  " : "", doubt, *unit ? "  " : "",
             family ? "family " : "", family ? family : "");
}

// Only what the list has is explained.
static void say_signs(const OverList *list, Page *page)
{
    page->explains = TRUE;
    if (list->asked) {
        page_say(&page->then, "%s has no value with a limit: this is worked out from it",
                 list->asked);
        return;
    }
    page_say(&page->then, "%s┤ limit%s   %u engine%s", list->away ? "═ worn away since new   " : "",
             list->wear ? "   ║ wear limit" : "", list->engines, list->engines == 1 ? "" : "s");
}

static void say_keys(Page *page)
{
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which engine?");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "opens"};
    page_key(page, ACTION_ON, "next");
    page_key(page, ACTION_OVER, "by its name");
    page_key(page, ACTION_PRINT, NULL);
    page_key(page, ACTION_UP, NULL);
    page_key(page, ACTION_HELP, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    OverAll *over = state;
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    over_list_look(over->list, desk);
    page_say(&page->status, "%s", name ? name : "The shop");
    page_say(&page->head, "One check over the engines");
    if (over->which.asks) {
        over_which_paint(&over->which, over->list->checks, typed, page);
        return;
    }
    say_keys(page);
    if (over->list->rows->len == 0) {
        if (over->list->check)
            page_say(&page->remark, "%s %s. +Enter shows another check.", over->list->check,
                     over->list->unlimited ? "was read, but has no limit to be held against"
                                           : "was read on no engine of this family yet");
        else
            page_say(&page->remark, "Nothing was read yet.");
        return;
    }
    say_check(over->list, page);
    page->remark = sentences(over->list->words, page->body->ascii);
    paint_rows(over, page);
    paint_detail(over, desk, page);
    say_signs(over->list, page);
}

// KEYS -------------------------------------------------------------------------------------------

static Go enter_which(OverAll *over, Desk *desk, const char *typed)
{
    gboolean keeps = FALSE;
    const char *check = over_which_enter(&over->which, over->list->checks, typed, desk, &keeps);
    if (!check)
        return go(keeps ? GO_KEEP : GO_STAY);
    over_list_turn(over->list, desk, check);
    over_which_clear(&over->which);
    over->part.at = over->part.from = 0;
    return go(GO_STAY);
}

// The engine is opened at the place that needs a person most.
static Go enter(gpointer state, Desk *desk, const char *typed)
{
    OverAll *over = state;
    over_list_look(over->list, desk);
    if (over->which.asks)
        return enter_which(over, desk, typed);
    const GArray *rows = over->list->rows;
    if (rows->len && strcmp(typed, "0") == 0) {
        list_part_turn(&over->part, rows->len);
        return go(GO_STAY);
    }
    const char *number = over_list_build(over->list, g_ascii_strtoull(typed, NULL, 10));
    if (!number) {
        desk_warn(desk, "there is no engine %s in this list", typed);
        return go(GO_KEEP);
    }
    return go_tell(number, over_worst(rows, number)->made);
}

static Go move(gpointer state, Desk *desk, gint direction)
{
    OverAll *over = state;
    over_list_look(over->list, desk);
    if (over->which.asks)
        over_which_move(&over->which, over->list->checks, direction);
    else
        list_part_move(&over->part, over->list->rows->len, direction);
    return go(GO_STAY);
}

static Go act_which(OverAll *over, Action action)
{
    if (action != ACTION_UP && action != ACTION_BACK)
        return go(GO_DEFAULT);
    over_which_up(&over->which);
    return go(GO_STAY);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    OverAll *over = state;
    if (over->which.asks)
        return act_which(over, action);
    switch (action) {
    case ACTION_ON:
        over_list_next(over->list, desk);
        over->part.at = over->part.from = 0;
        return go(GO_STAY);
    case ACTION_PRINT:
        print_list(desk, "check", over->list->check ? over->list->check : "", paint, over);
        return go(GO_STAY);
    case ACTION_OVER:
        over_which_begin(&over->which);
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
                           .idle = idle,
                           .acts = {ACTION_ON, ACTION_OVER}};
