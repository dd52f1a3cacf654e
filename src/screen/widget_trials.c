#include "widget_trials.h"

#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/sheet/trial_window.h>
#include <standbook/work/entry_words.h>
#include <string.h>

enum {
    TRY_COLUMN = 1,
    MOVE_COLUMN = 6,
    LOOSE_COLUMN = 13,
    TIGHT_COLUMN = 19,
    TIGHT_LEAST = 20, // columns of all tightened readings
    TIGHT_CELL = 5,   // of one
    MARK_GAP = 1,     // behind them
    STRIP_GAP = 3,    // behind the mark
    RIGHT = 79,
    STRIP_LEAST = 17,
};

char *trial_strip(const Trials *trials, const Trial *trial)
{
    g_auto(TrialWindow) window =
        trial_window(trials, RIGHT - TIGHT_COLUMN - TIGHT_LEAST - MARK_GAP - STRIP_GAP);
    return trial_strip_in(trials, trial, &window);
}

// TABLE -----------------------------------------------------------------------------------------

typedef struct {
    Canvas *canvas;
    const Trials *trials;
    const TrialNext *next;
    const NextMove *advised;
    const char *typed;
    guint cell;  // columns of one tightened reading; 0: least and greatest are printed
    guint mark;  // column of the verdict
    guint strip; // column of the chart
    TrialWindow window;
} Table;

static const Style plain = {TYPE_PLAIN, ROLE_CALM}, faint = {TYPE_PLAIN, ROLE_FAINT};
static const Style in_hand = {TYPE_REVERSE, ROLE_HERE};

static void lay_out(Table *table)
{
    const Trials *trials = table->trials;
    guint width = TIGHT_CELL;
    for (guint i = 0; i < trials->all->len * trials->places; i++) {
        const Trial *trial = trials->all->pdata[i / trials->places];
        const Requirement *made = trial->places[i % trials->places].made;
        g_autofree char *value = made ? figure_value(made) : g_strdup("");
        width = MAX(width, (guint)g_utf8_strlen(value, -1) + 1);
    }
    guint all = MAX(width * trials->places, TIGHT_LEAST);
    gboolean fits = TIGHT_COLUMN + all + MARK_GAP + STRIP_GAP + STRIP_LEAST <= RIGHT;
    table->cell = fits ? width : 0;
    table->mark = TIGHT_COLUMN + (fits ? all : TIGHT_LEAST) + MARK_GAP;
    table->strip = table->mark + STRIP_GAP;
    table->window = trial_window(trials, RIGHT - table->strip);
}

// `.08` of 0.08.
static const char *without_zero(const char *digits)
{
    return digits + (g_str_has_prefix(digits, "0.") ? 1 : 0);
}

// Puts words about a cell of the chart, if they do not touch those before; returns where they end.
static guint put_over(const Table *table, guint row, guint behind, const Number *base,
                      const char *words)
{
    g_autoptr(Number) shown = unit_from_base(table->trials->check->unit, base);
    g_autoptr(Number) off = number_subtract(shown, table->window.from);
    g_autoptr(Number) share = number_divide(off, table->window.step);
    g_autofree char *text = number_decimal(share, 0);
    gint64 cell = g_ascii_strtoll(text, NULL, 10);
    guint width = (guint)g_utf8_strlen(words, -1);
    if (cell < 0 || cell >= table->window.cells)
        return behind;
    guint column = table->strip + (guint)cell - MIN((guint)cell, width / 2);
    column = MAX(column, behind ? behind + 1 : column);
    if (column + width > RIGHT)
        return behind;
    return canvas_put(table->canvas, row, column, 0, plain, words);
}

static void put_ends(const Table *table, guint row)
{
    const Trials *trials = table->trials;
    if (!table->window.step)
        return;
    const Requirement *asked = trials->made[0];
    g_autofree char *from = number_decimal(table->window.from, table->window.decimals);
    g_autoptr(Number) end = trial_window_end(&table->window);
    g_autofree char *last = number_decimal(end, table->window.decimals);
    const char *to = without_zero(last);
    guint behind = canvas_put(table->canvas, row, table->strip, 0, plain, from);
    const struct {
        const Number *number;
        const char *word;
    } posts[] = {{asked->lower, NULL}, {trials->check->aim_value, "aim"}, {asked->upper, NULL}};
    for (gsize i = 0; i < G_N_ELEMENTS(posts); i++) {
        if (!posts[i].number)
            continue;
        g_autofree char *limit = check_limit_words(trials->check, posts[i].number);
        const char *words = posts[i].word ? posts[i].word : without_zero(limit);
        behind = put_over(table, row, behind, posts[i].number, words);
    }
    if (behind + 1 + strlen(to) <= RIGHT)
        canvas_put_right(table->canvas, row, RIGHT, plain, to);
}

static void put_head(const Table *table, guint row)
{
    const PlanSetting *setting = table->trials->check->setting;
    const char *unit = setting->unit_text ? setting->unit_text : setting->move;
    g_autofree char *moved = strcmp(unit, "turn") == 0 ? g_strdup("turns") : g_strdup(unit);
    g_autoptr(GString) tight = g_string_new(trials_read_word(table->trials, FALSE));
    for (guint i = 0; i < table->trials->places && table->trials->places > 1; i++)
        g_string_append_printf(tight, "%s%s", i ? " " : ", at ", table->trials->made[i]->place);
    canvas_put(table->canvas, row, TRY_COLUMN, 0, plain, "try");
    canvas_put(table->canvas, row, MOVE_COLUMN, LOOSE_COLUMN - MOVE_COLUMN - 1, plain, moved);
    if (setting->loose)
        canvas_put(table->canvas, row, LOOSE_COLUMN, 0, plain, "loose");
    canvas_put(table->canvas, row, TIGHT_COLUMN, table->mark - TIGHT_COLUMN, plain, tight->str);
    put_ends(table, row);
}

// A cell of the table: its words, or, where it is in hand, what stands in the field.
static void put_cell(const Table *table, guint row, guint column, guint width, gboolean here,
                     const char *words)
{
    const char *shown = here && *table->typed ? table->typed : here && !*words ? "·" : words;
    if (here)
        canvas_fill(table->canvas, row, column, width, in_hand, " ");
    canvas_put(table->canvas, row, column, width, here ? in_hand : plain, shown);
}

static gboolean asks(const Table *table, TrialAsk ask)
{
    return table->next->ask == ask;
}

static void put_tight(const Table *table, guint row, const Trial *trial, gboolean here)
{
    g_autofree char *least = NULL, *most = NULL;
    for (guint i = 0; i < table->trials->places; i++) {
        const Requirement *made = trial ? trial->places[i].made : NULL;
        g_autofree char *value = made ? figure_value(made) : g_strdup("");
        gboolean asked = here && asks(table, TRIAL_TIGHT) && table->next->place == i;
        if (table->cell)
            put_cell(table, row, TIGHT_COLUMN + i * table->cell, table->cell - 1, asked, value);
        else if (asked)
            put_cell(table, row, TIGHT_COLUMN, TIGHT_CELL, TRUE, value);
    }
    if (!table->cell && trial && trial->read && !(here && asks(table, TRIAL_TIGHT))) {
        g_autofree char *outcome = trial_outcome(table->trials, trial);
        canvas_put(table->canvas, row, TIGHT_COLUMN, TIGHT_LEAST, plain, outcome);
    }
}

static const char *mark_of(const Trial *trial)
{
    static const char *const marks[VERDICTS] = {
        [VERDICT_OPEN] = "·",      [VERDICT_PASS] = "√",  [VERDICT_FAIL] = "×",
        [VERDICT_IN_DOUBT] = "?",  [VERDICT_NOTED] = "=", [VERDICT_CONCEDED] = "◆",
        [VERDICT_NOT_NEEDED] = "−"};
    gboolean doubted = trial->verdict == VERDICT_IN_DOUBT;
    if (!trial->fails)
        return marks[trial->verdict];
    if (trial->side == REASON_LOW)
        return doubted ? "▼?" : "▼";
    return doubted ? "▲?" : "▲";
}

static void put_try(const Table *table, guint row, guint number, const Trial *trial, gboolean here)
{
    const Trials *trials = table->trials;
    g_autofree char *label = g_strdup_printf("%u", number);
    g_autofree char *position =
        trial && trial->move ? trial_position_words(trials->check, trial->position) : g_strdup("");
    g_autofree char *loose = trial && trial->loose_value
                                 ? check_value_words(trials->check, trial->loose_value)
                                 : g_strdup("");
    canvas_put(table->canvas, row, TRY_COLUMN, 0, plain, label);
    put_cell(table, row, MOVE_COLUMN, LOOSE_COLUMN - MOVE_COLUMN - 1,
             here && asks(table, TRIAL_MOVE), position);
    put_cell(table, row, LOOSE_COLUMN, TIGHT_COLUMN - LOOSE_COLUMN - 1,
             here && asks(table, TRIAL_LOOSE), loose);
    put_tight(table, row, trial, here);
    if (!trial || !trial->read)
        return;
    canvas_put(table->canvas, row, table->mark, 0, verdict_style(trial->verdict), mark_of(trial));
    g_autofree char *strip = trial_strip_in(trials, trial, &table->window);
    strip_paint(table->canvas, row, table->strip, strip, trial->verdict);
}

// What was read there before it was read again, or later: each place in its column, or least and
// greatest.
static void put_tight_before(const Table *table, guint row, const TrialLine *line)
{
    g_autofree char *span = table->cell ? NULL : trial_line_span(table->trials, line);
    if (span)
        canvas_put(table->canvas, row, TIGHT_COLUMN, TIGHT_LEAST, faint, span);
    for (guint i = 0; table->cell && i < table->trials->places; i++) {
        g_autofree char *value = trial_value_words(table->trials, line->tight[i]);
        canvas_put(table->canvas, row, TIGHT_COLUMN + i * table->cell, table->cell - 1, faint,
                   value);
    }
    canvas_put(table->canvas, row, table->strip, RIGHT - table->strip, faint,
               line->kind == TRIAL_LATER ? "later" : "before");
}

// `  3.50  12.5  before, at 1`
static void put_before(const Table *table, guint row, const TrialLine *line)
{
    const Trials *trials = table->trials;
    g_autofree char *position = trial_position_words(trials->check, line->position);
    g_autofree char *loose = trial_value_words(trials, line->loose);
    const char *place =
        line->loose && trials->places > 1 ? trials->made[line->loose->place]->place : "";
    g_autofree char *words = g_strdup_printf("before%s%s", *place ? ", at " : "", place);
    if (line->tight) {
        put_tight_before(table, row, line);
        return;
    }
    canvas_put(table->canvas, row, MOVE_COLUMN, LOOSE_COLUMN - MOVE_COLUMN - 1, faint, position);
    canvas_put(table->canvas, row, LOOSE_COLUMN, TIGHT_COLUMN - LOOSE_COLUMN - 1, faint, loose);
    canvas_put(table->canvas, row, TIGHT_COLUMN, RIGHT - TIGHT_COLUMN, faint, words);
}

// `  ──0.08 turn──  struck: typo`
static void put_struck(const Table *table, guint row, const TrialStruck *struck)
{
    const Entry *entry = struck->entry;
    gboolean read = strcmp(entry->kind->name, "read") == 0;
    g_autofree char *typed = trial_struck_typed(struck);
    gboolean loose = read && g_strcmp0(entry_text(entry, "state"), "loose") == 0;
    const char *place = read ? table->trials->inputs[struck->input]->place : "";
    g_autofree char *words =
        g_strdup_printf("──%s──  struck: %s%s%s%s", typed, struck->cause,
                        !read || (!loose && !trials_has_tight(table->trials)) ? ""
                        : loose                                               ? ", loose"
                                                                              : ", tight",
                        *place ? " at " : "", place);
    guint column = !read ? MOVE_COLUMN : loose ? LOOSE_COLUMN : TIGHT_COLUMN;
    canvas_put(table->canvas, row, column, RIGHT - column, faint, words);
}

// A trial's lines in the order of entry; returns the row behind.
static guint put_lines(const Table *table, guint row, const Trial *trial, gboolean here,
                       guint *focus)
{
    g_autoptr(GArray) lines = trial_lines(table->trials, trial);
    for (guint i = 0; i < lines->len; i++, row++) {
        const TrialLine *line = &g_array_index(lines, TrialLine, i);
        if (line->kind == TRIAL_BEFORE || line->kind == TRIAL_LATER)
            put_before(table, row, line);
        else if (line->kind == TRIAL_STRUCK)
            put_struck(table, row, line->struck);
        else
            put_try(table, row, trial->number, trial, here);
        *focus = here && line->kind == TRIAL_STANDS ? row : *focus;
    }
    return row;
}

// FORECAST --------------------------------------------------------------------------------------

static void put_forecast_strip(const Table *table, guint row)
{
    const NextMove *advised = table->advised;
    const Requirement *asked = table->trials->made[0];
    g_autoptr(Number) least = next_move_shown(advised, advised->band.tightest.mean);
    g_autoptr(Number) most = next_move_shown(advised, advised->band.loosest.mean);
    if (!table->window.step || !least || !most)
        return;
    gboolean upside = number_compare(least, most) > 0;
    g_autoptr(Number) end = trial_window_end(&table->window);
    const Unit *unit = table->trials->check->unit;
    g_autoptr(Number) from = unit_to_base(unit, table->window.from), to = unit_to_base(unit, end);
    g_autofree char *strip = strip_draw(&(Strip){.lower = asked->lower,
                                                 .upper = asked->upper,
                                                 .aim = table->trials->check->aim_value,
                                                 .least = upside ? most : least,
                                                 .most = upside ? least : most,
                                                 .from = from,
                                                 .to = to,
                                                 .cells = table->window.cells});
    strip_paint(table->canvas, row, table->strip, strip, VERDICT_OPEN);
}

// `next 0.13 0.10 0.14 0.16 0.10 0.13`: what the advised move should come to; where it goes alone,
// if it stops short for safety.
static void put_forecast(const Table *table, guint row)
{
    const NextMove *advised = table->advised;
    g_autofree char *to = next_move_to(table->trials, advised);
    canvas_put(table->canvas, row, TRY_COLUMN, 0, plain, "next");
    put_cell(table, row, MOVE_COLUMN, LOOSE_COLUMN - MOVE_COLUMN - 1, TRUE, to);
    if (advised->advice.safe_side)
        return;
    g_autofree char *loose = next_move_reading(table->trials, advised, advised->band.best);
    canvas_put(table->canvas, row, LOOSE_COLUMN, TIGHT_COLUMN - LOOSE_COLUMN - 1, faint, loose);
    for (guint i = 0; table->cell && i < table->trials->places; i++) {
        double value = g_array_index(advised->places, double, i);
        g_autofree char *words = next_move_reading(table->trials, advised, value);
        canvas_put(table->canvas, row, TIGHT_COLUMN + i * table->cell, table->cell - 1, faint,
                   words);
    }
    put_forecast_strip(table, row);
}

guint trials_paint(Canvas *canvas, guint row, const Trials *trials, const TrialNext *next,
                   const NextMove *advised, const char *typed, guint *focus)
{
    const char *shown = trials->check->formula && next->ask != TRIAL_MOVE ? "" : typed;
    Table table = {
        .canvas = canvas, .trials = trials, .next = next, .advised = advised, .typed = shown};
    const Trial *last = trials_last(trials);
    gboolean anew = next->ask == TRIAL_MOVE && (!last || last->readings);
    lay_out(&table);
    put_head(&table, row++);
    for (guint i = 0; i < trials->all->len; i++) {
        const Trial *trial = trials->all->pdata[i];
        row = put_lines(&table, row, trial, trial == last && !anew, focus);
    }
    if (anew) {
        *focus = row;
        if (advised->places && next_move_moves(advised))
            put_forecast(&table, row++);
        else
            put_try(&table, row++, trials->all->len + 1, NULL, TRUE);
    }
    trial_window_clear(&table.window);
    return row;
}
