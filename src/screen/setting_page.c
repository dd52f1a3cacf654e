#include "setting_page.h"

#include "bench_field.h"
#include "beside.h"
#include "setting_words.h"
#include "toolbox.h"
#include "widget_advice.h"
#include "widget_digits.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "widget_trials.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/entry_words.h>
#include <string.h>

// BODY ------------------------------------------------------------------------------------------

// Rows of the table: its head, and what is shown of it in any case.
enum { TRIES_HEADS = 2, TRIES_LEAST = TRIES_HEADS + 4 };

// The head of the table and as many of its rows as there is room for, the newest, some at least,
// and `focus` in any case. Returns the row behind.
static guint put_tries(const Canvas *table, guint rows, guint focus, guint room, Page *page)
{
    enum { LEFT = 1 }; // column of what is not shown
    guint shown = MAX(room, TRIES_LEAST), first = 0;
    page->focus = focus;
    if (rows <= shown) {
        canvas_copy(page->body, 0, 0, table, 0, rows);
        return rows;
    }
    first = MIN(rows - (shown - TRIES_HEADS), focus);
    g_autofree char *more = g_strdup_printf("… %u more rows; the record has them all",
                                            rows - 1 - (shown - TRIES_HEADS));
    canvas_copy(page->body, 0, 0, table, 0, 1);
    canvas_put(page->body, 1, LEFT, 0, style_of(TYPE_PLAIN, ROLE_FAINT), more);
    canvas_copy(page->body, TRIES_HEADS, 0, table, first, shown - TRIES_HEADS);
    page->focus = TRIES_HEADS + focus - first;
    return shown;
}

// The sentences that fit whole into so many rows, the others a key away; the first in any case.
static Canvas *put_advice(Advice *advice, guint room, gboolean ascii)
{
    static const char more[] = "w says the rest.";
    Canvas *said = canvas_new_growing(PAGE_WIDTH, ascii);
    guint rows = advice_paint(said, 0, advice) - 1;
    for (guint count = advice->sentences->len; rows > room && count > 1; count--) {
        g_ptr_array_set_size(advice->sentences, (gint)count - 1);
        g_ptr_array_add(advice->sentences, g_strdup(more));
        canvas_free(said);
        said = canvas_new_growing(PAGE_WIDTH, ascii);
        rows = advice_paint(said, 0, advice) - 1;
    }
    return said;
}

// How many rows there are for the advice beside a table of so many, of which some at least stand.
static guint advice_room(guint table, const Page *page)
{
    guint above = MIN(table, TRIES_LEAST) + 1, seen = page_rows(page); // a blank row between
    return seen > above ? seen - above : 0;
}

gboolean setting_says_all(const Trials *trials, const TrialNext *next, const NextMove *advised,
                          const Page *page)
{
    g_autoptr(Canvas) table = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    g_autoptr(Canvas) said = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    g_auto(Advice) advice = advice_of(trials, advised, next);
    guint focus = 0, rows = trials_paint(table, 0, trials, next, advised, "", &focus);
    return advice_paint(said, 0, &advice) - 1 <= advice_room(rows, page);
}

void setting_body(const Trials *trials, const TrialNext *next, const NextMove *advised,
                  const char *typed, Page *page)
{
    g_autoptr(Canvas) table = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    g_auto(Advice) advice = advice_of(trials, advised, next);
    guint focus = 0, seen = page_rows(page);
    guint rows = trials_paint(table, 0, trials, next, advised, typed, &focus);
    g_autoptr(Canvas) said = put_advice(&advice, advice_room(rows, page), page->body->ascii);
    guint room = seen > said->height + 1 ? seen - said->height - 1 : 0;
    rows = put_tries(table, rows, focus, room, page);
    canvas_copy(page->body, rows + 1, 0, said, 0, said->height);
}

// FAR AND BESIDE --------------------------------------------------------------------------------

// `turn out`, `loose at 1`: what the large figure is.
static char *far_head(const Trials *trials, const TrialNext *next, const NextMove *advised)
{
    g_autofree char *at = setting_at(trials, setting_made(trials, next));
    if (next->ask != TRIAL_MOVE)
        return g_strconcat(trials_read_word(trials, next->ask == TRIAL_LOOSE), at, NULL);
    if (!next_move_moves(advised))
        return g_strdup(trials->check->setting->move);
    g_autofree char *size = next_move_size(trials, advised);
    char *move = next_move_words(trials, advised);
    if (g_str_has_suffix(move, size))
        move[strlen(move) - strlen(size)] = '\0';
    return g_strchomp(move);
}

// How far to move; where no move is advised, where it stands.
static char *far_figure(const Trials *trials, const TrialNext *next, const NextMove *advised)
{
    const Trial *last = trials_last(trials);
    if (!last || next->ask != TRIAL_MOVE)
        return g_strdup("");
    return next_move_moves(advised) ? next_move_size(trials, advised)
                                    : trial_position_words(trials->check, last->position);
}

// Beside the strip: where a move leads, else how what is typed stands, else the last try.
static char *far_outcome(const Trials *trials, const TrialNext *next, const NextMove *advised,
                         const Requirement *typed)
{
    const Trial *last = trials_last(trials);
    if (typed)
        return g_strdup(verdict_mark(typed->verdict, typed->reason, typed->check));
    if (next->ask != TRIAL_MOVE || !next_move_moves(advised))
        return last && last->read ? trial_outcome(trials, last) : g_strdup("");
    g_autofree char *to = next_move_to(trials, advised);
    return g_strconcat("to ", to, NULL);
}

// As the far view of a reading: what is in hand five rows high, the strip, the digits ten rows high.
void setting_far(const Trials *trials, const TrialNext *next, const NextMove *advised,
                 const char *digits, const Requirement *typed, Page *page)
{
    enum { HEAD_DOT = 2, DOT = 3, HIGH = 2, LEFT = 5, STRIP_ROW = 5, ROW = 6 };
    const Trial *last = trials_last(trials);
    g_autofree char *head = far_head(trials, next, advised);
    g_autofree char *figure = far_figure(trials, next, advised);
    const char *shown = *digits ? digits : figure;
    guint dot = digits_dot(shown, DOT, PAGE_WIDTH - LEFT);
    if (digits_width(head, HEAD_DOT) <= PAGE_WIDTH - LEFT)
        digits_paint(page->body, 0, LEFT, HEAD_DOT, 1, style_of(0, 0), head);
    else
        canvas_put(page->body, 2, LEFT, 0, style_of(TYPE_BOLD, ROLE_CALM), head);
    if (dot)
        digits_paint(page->body, ROW, LEFT, dot, HIGH, style_of(0, 0), shown);
    g_autofree char *strip = typed  ? strip_text(typed)
                             : last ? trial_strip(trials, last)
                                    : g_strdup("");
    g_autofree char *outcome = far_outcome(trials, next, advised, typed);
    Verdict verdict = typed ? typed->verdict : last && last->read ? last->verdict : VERDICT_OPEN;
    guint column = strip_paint(page->body, STRIP_ROW, LEFT, strip, verdict);
    canvas_put(page->body, STRIP_ROW, column + 3, 0, verdict_style(verdict), outcome);
}

// ` at 1`, ` chain play 1, forth`, ``: where something was read.
static char *detail_place_words(const Trials *trials, const Entry *entry)
{
    gint input = trials_input(trials, entry);
    return input >= 0 ? setting_at(trials, trials->inputs[input]) : g_strdup("");
}

// `09:36  MO  loose at 1 0.07 mm`
static char *detail_entry(const Taken *taken, const Trials *trials, const Entry *entry)
{
    gboolean move = strcmp(entry->kind->name, "move") == 0;
    const json_t *to = move ? json_object_get(entry->body, "to") : NULL;
    const char *field = !move ? "value" : to ? "to" : "moved";
    g_autofree char *value = value_words(json_object_get(entry->body, field));
    g_autofree char *when = entry_when(entry);
    g_autofree char *at = move ? g_strdup("") : detail_place_words(trials, entry);
    const char *state = move ? (to ? "to" : "by") : entry_text(entry, "state");
    return g_strdup_printf(" %s  %s  %s%s %s", when + 11, taken_initials(taken, entry->by),
                           state                      ? state
                           : trials_has_tight(trials) ? "tightened"
                                                      : "read",
                           at, value);
}

static guint detail_try(Canvas *about, guint row, const Taken *taken, const Trials *trials,
                        const Trial *trial)
{
    g_autofree char *head = trial->read ? trial_outcome(trials, trial) : g_strdup("");
    g_autofree char *line = g_strdup_printf("try %u  %s", trial->number, head);
    canvas_put(about, row++, 1, 0, verdict_style(trial->read ? trial->verdict : VERDICT_OPEN),
               line);
    for (guint i = 0; i < trial->entries->len; i++) {
        g_autofree char *words = detail_entry(taken, trials, trial->entries->pdata[i]);
        canvas_put(about, row++, 1, 0, style_of(0, 0), words);
    }
    for (guint i = 0; i < trial->notes->len; i++) {
        g_autofree char *note = g_strdup_printf(" \"%s\"", (char *)trial->notes->pdata[i]);
        canvas_put(about, row++, 1, 0, style_of(0, 0), note);
    }
    return row;
}

// What was read at the place asked for, its limits, and the gauge for it. Returns the row behind.
static guint detail_place(Canvas *about, Desk *desk, const Requirement *made)
{
    g_autofree char *limits = figure_limits(made), *title = requirement_title(made);
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    g_autofree char *verdict = figure_verdict(made);
    g_autofree char *now = g_strdup_printf("now %s %s   %s", *value ? value : "·", doubt, verdict);
    g_autofree char *line = g_strdup_printf("limits %s %s", limits, figure_unit(made));
    const ToolNeed need = bench_need(made);
    const char *gauge = bench_gauge_for(desk, made, &need);
    g_autofree char *with = gauge ? toolbox_gauge_words(desk, need.sort, gauge) : g_strdup("");
    g_autofree char *due =
        gauge ? toolbox_standing(desk, &(ToolNeed){.need = NEED_GAUGE}, gauge, NULL, NULL)
              : g_strdup("");
    g_autofree char *tool = g_strconcat(with, *due ? ", " : "", due, NULL);
    const char *const lines[] = {now, line, tool};
    guint row = 1;
    canvas_put(about, 0, 1, 0, style_of(TYPE_BOLD, 0), title);
    for (gsize i = 0; i < G_N_ELEMENTS(lines); i++)
        row = canvas_wrap(about, row, 1, about->width - 2, style_of(0, 0), lines[i]);
    return row;
}

// At the right of a wide screen: the place asked for, the tries entry by entry, the newest entries.
void setting_detail(Desk *desk, const Trials *trials, const TrialNext *next, Page *page)
{
    g_autoptr(Canvas) about = beside_begin(page);
    if (!about)
        return;
    g_autoptr(Taken) taken = taken_new(trials->entries, trials->count, NULL);
    guint row = detail_place(about, desk, setting_made(trials, next));
    for (guint i = 0; i < trials->all->len; i++)
        row = detail_try(about, row + 1, taken, trials, trials->all->pdata[i]);
    beside_end(page, about, row, desk_build(desk), desk->now);
}
