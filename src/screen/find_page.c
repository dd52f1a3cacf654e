#include "find_page.h"

#include "about.h"
#include "beside.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/ago.h>
#include <string.h>

enum { TEXT_WIDTH = 75 };

static const Style plain = {TYPE_PLAIN, ROLE_CALM};

static char *day_of_entry(const FindBuild *build, const Requirement *made, const Desk *desk)
{
    const GPtrArray *entries = session_entries(build->session);
    if (made->entry < 1 || made->entry > (gint64)entries->len)
        return g_strdup("");
    return ago_day(entry_moment(entries->pdata[made->entry - 1]), desk->now);
}

// THE ANSWER -------------------------------------------------------------------------------------

// `0.041 ±.005 mm`, `100 N·m`, `yes`; `not yet` of what is open.
static char *value_words_of(const Requirement *made)
{
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    const char *unit = made->value && made->check ? figure_unit(made) : "";
    if (!*value)
        return g_strdup(made->verdict == VERDICT_OPEN ? "not yet" : "");
    return g_strconcat(value, *doubt ? " " : "", doubt, *unit ? " " : "", unit, NULL);
}

// `0.041 ±.005 mm   √ pass   0.030 ├──▒▒█▒▒────────┤ 0.065   wear 0.090`
static void paint_value(const Requirement *made, Page *page, guint row)
{
    g_autofree char *value = value_words_of(made);
    const char *mark = verdict_mark(made->verdict, made->reason, made->check);
    guint behind = canvas_put(page->body, row, 4, 0, style_of(TYPE_BOLD, 0), value);
    guint marked = canvas_put(page->body, row, MAX(23, behind + 2), 0,
                              verdict_style(made->verdict), mark);
    if (!made->check)
        return;
    g_autofree char *strip = strip_text(made);
    g_autofree char *low = made->lower ? figure_number(made, made->lower) : g_strdup("");
    g_autofree char *high = made->upper ? figure_number(made, made->upper) : g_strdup("");
    g_autofree char *wear = made->wear ? figure_number(made, made->wear) : NULL;
    g_autofree char *service = g_strconcat(wear ? "wear " : "", wear, NULL);
    // A limit stands beside its post, unless a mark stands there; a long one moves the strip.
    gboolean below = !g_str_has_prefix(strip, "    "), above = !g_str_has_suffix(strip, "    ");
    guint lower = marked + canvas_text_width(page->body, low) + 1, from = below ? 35 : 39;
    guint off = lower > from ? lower - from : 0;
    if (*strip)
        strip_paint(page->body, row, 36 + off, strip, made->verdict);
    canvas_put_right(page->body, row, from + off, plain, low);
    canvas_put(page->body, row, (above ? 62 : 58) + off, 0, plain, high);
    canvas_put_right(page->body, row, PAGE_WIDTH - 1, plain, service);
}

// How many rows of what is told leave room for the list: all that the list does not need, and on a
// taller screen half of the rest.
static guint rows_told(const Page *page, guint lines)
{
    enum { LEAST = 5, OTHER_ROWS = 5, FRAME = 8 }; // of the answer; of the screen
    if (!page->height)
        return G_MAXUINT;
    guint height = MAX(page->height, PAGE_HEIGHT), room = height - FRAME - OTHER_ROWS;
    return MAX(LEAST + (height - PAGE_HEIGHT) / 2, room > lines ? room - lines : 0);
}

static guint paint_told(const FindList *list, Page *page, guint row)
{
    g_autoptr(Canvas) all = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    const GPtrArray *told = list->told;
    guint rows = 0, most = rows_told(page, list->lines->len);
    for (guint i = 0; told && i < told->len && rows <= most; i++)
        rows = canvas_wrap(all, rows, 4, TEXT_WIDTH, plain, told->pdata[i]);
    canvas_copy(page->body, row, 0, all, 0, MIN(rows, most));
    if (rows > most)
        canvas_put(page->body, row + most - 1, 4 + TEXT_WIDTH, 0, plain, "…");
    return row + MIN(rows, most);
}

// `TL-0412 launch Marigold, 4 Mar`, as much of it as there is room for.
static char *where_words(const FindLine *line, const Desk *desk, const Canvas *canvas, guint room)
{
    g_autofree char *day = day_of_entry(line->build, line->made, desk);
    const Entry *engine = desk_engine(desk, line->build->number);
    const char *note = engine ? entry_text(engine, "note") : NULL;
    g_autofree char *short_note = g_strndup(note ? note : "", strcspn(note ? note : "", ","));
    const char *comma = *day ? ", " : "";
    g_autofree char *whole =
        g_strconcat(line->build->number, *short_note ? " " : "", short_note, comma, day, NULL);
    if (canvas_text_width(canvas, whole) <= room)
        return g_steal_pointer(&whole);
    return g_strconcat(line->build->number, comma, day, NULL);
}

guint find_paint_answer(const FindList *list, const Desk *desk, Page *page)
{
    if (list->places == 0)
        return 0;
    const FindLine *line = &g_array_index(list->lines, FindLine, 0);
    g_autofree char *name = named_title(line->made);
    guint behind = canvas_put(page->body, 0, 1, 50, style_of(TYPE_BOLD, 0), name);
    g_autofree char *where = where_words(line, desk, page->body, PAGE_WIDTH - 3 - behind);
    canvas_put_right(page->body, 0, PAGE_WIDTH - 1, plain, where);
    paint_value(line->made, page, 2);
    return paint_told(list, page, 4) + 1;
}

// LINES ------------------------------------------------------------------------------------------

// `main clearance 3`, `main caps 5, stage 2`
static char *place_words(const Requirement *made)
{
    g_autofree char *title = named_title(made);
    return made->asked == ASKED_BOLT && made->stage
               ? g_strdup_printf("%s, stage %u", title, made->stage)
               : g_steal_pointer(&title);
}

static void paint_place(const FindLine *line, const Desk *desk, Page *page, guint row)
{
    const Requirement *made = line->made;
    g_autofree char *name = place_words(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *day = day_of_entry(line->build, made, desk);
    g_autofree char *figures = g_strconcat(value, *doubt ? " " : "", doubt, NULL);
    const char *mark = verdict_mark(made->verdict, made->reason, made->check);
    g_autofree char *step = g_strdup_printf("S%02u", made->step ? made->step->index + 1 : 0);
    canvas_put(page->body, row, 4, 27, plain, name);
    canvas_put(page->body, row, 32, 14, plain, figures);
    canvas_put(page->body, row, 47, 7, verdict_style(made->verdict), mark);
    canvas_put(page->body, row, 55, 8, plain, line->build->number);
    canvas_put(page->body, row, 64, 3, plain, step);
    canvas_put(page->body, row, 69, 0, plain, day);
}

static void paint_lot(const FindList *list, Page *page, guint row)
{
    g_autofree char *name = g_strconcat("lot ", list->lot, NULL);
    guint behind = canvas_put(page->body, row, 4, 27, plain, name);
    canvas_put(page->body, row, MAX(32, behind + 2), 0, plain, list->lot_words);
}

// Of what is no entry: `lot MB-2417-C  TL-0412  main shells 2`, `owner harrow  Ines Harrow`.
static void paint_named(const Found *found, Page *page, guint row, Style style)
{
    gboolean named = strcmp(found->kind, found->label) == 0 || !*found->by;
    g_autofree char *line =
        g_strconcat(found->kind, " ", *found->by ? found->by : found->label, "  ",
                    named ? "" : found->label, named ? "" : "  ", found->words, NULL);
    canvas_put(page->body, row, 4, 0, style, line);
}

static void paint_found(const Found *found, const Desk *desk, Page *page, guint row)
{
    Style style = style_of(TYPE_PLAIN, found->struck ? ROLE_FAINT : ROLE_CALM);
    Moment moment = 0;
    if (!found->when) {
        paint_named(found, page, row, style);
        return;
    }
    g_autofree char *day =
        moment_parse(found->when, &moment, NULL) ? ago_day(moment, desk->now) : g_strdup("");
    g_autofree char *words = g_strconcat(found->struck ? "struck: " : "", found->words, NULL);
    canvas_put(page->body, row, 4, 8, style, found->label);
    canvas_put(page->body, row, 13, 11, style, day);
    canvas_put(page->body, row, 25, 3, style, found->by);
    canvas_put(page->body, row, 29, 0, style, words);
}

static void paint_line(const FindList *list, guint at, const Desk *desk, Page *page, guint row)
{
    const FindLine *line = &g_array_index(list->lines, FindLine, at);
    if (line->made)
        paint_place(line, desk, page, row);
    else if (line->found)
        paint_found(line->found, desk, page, row);
    else
        paint_lot(list, page, row);
}

void find_paint_lines(const FindList *list, const Desk *desk, ListPart *part, gboolean chosen,
                      Page *page, guint row)
{
    guint lines = list->lines->len;
    page->heads = row;
    ListPart seen = list_part_fitted(part, lines, page_list_rows(page));
    for (guint i = seen.from; i < seen.from + seen.rows; i++) {
        g_autofree char *number = g_strdup_printf("%2u", i + 1);
        gboolean reverse = chosen && i == seen.at;
        canvas_put(page->body, row + i, 0, 3, style_of(reverse ? TYPE_REVERSE : TYPE_PLAIN, 0),
                   number);
        paint_line(list, i, desk, page, row + i);
    }
    page_scroll(page, seen.from);
    if (page->height)
        *part = seen;
    guint builds = find_list_builds(list);
    if (lines && builds)
        page_say(&page->count, "%u found in %u build%s", lines, builds, builds == 1 ? "" : "s");
    else if (lines)
        page_say(&page->count, "%u found", lines);
}

// AT THE RIGHT -----------------------------------------------------------------------------------

// What is known of a place. Returns the row behind.
static guint put_place(const FindLine *line, const Desk *desk, Canvas *told)
{
    g_autofree char *title = desk_title(desk, line->build->number);
    canvas_put(told, 0, 1, 0, style_of(TYPE_BOLD, 0), title);
    guint row = about_figures(told, 2, line->build->session, line->made);
    return about_entries(told, row, line->build->session, line->made);
}

// An entry, or where a lot is, uncut. Returns the row behind.
static guint put_words(const FindList *list, const Found *found, Canvas *told)
{
    g_autofree char *title = found ? g_strjoin(" ", found->label, found->when, found->by, NULL)
                                   : g_strconcat("lot ", list->lot, NULL);
    canvas_put(told, 0, 1, 0, style_of(TYPE_BOLD, 0), title);
    return canvas_wrap(told, 2, 1, told->width - 2, plain, found ? found->words : list->lot_words);
}

void find_paint_detail(const FindList *list, const Desk *desk, guint line, Page *page)
{
    g_autoptr(Canvas) told = line < list->lines->len ? beside_begin(page) : NULL;
    if (!told)
        return;
    const FindLine *at = &g_array_index(list->lines, FindLine, line);
    const FindBuild *build = at->found ? find_list_build(list, at->found->label) : at->build;
    guint row = at->made ? put_place(at, desk, told) : put_words(list, at->found, told);
    beside_end(page, told, row, build ? build->session : NULL, desk->now);
}
