#include <standbook/sheet/figures.h>
#include <standbook/sheet/setting_sheet.h>
#include <standbook/sheet/trial_window.h>

#include <string.h>

enum {
    PLACES_MOST = 12, // columns of tightened readings
    STRIP_LEAST = 17,
    STRIP_WIDEST = 33,
    LEFT = 2, // margin of the page
};

char *setting_title(const Trials *trials)
{
    const PlanCheck *check = trials->check;
    g_autofree char *limits = figure_limits(trials->made[0]);
    GString *words = g_string_new(check->name);
    if (trials->labels)
        g_string_append_printf(words, "[%s]", trials->made[0]->place);
    if (check->unit)
        g_string_append_printf(words, ", in %s", unit_said(unit_text(check->unit)));
    g_string_append_printf(words, ": %s", *limits ? limits : "no limits");
    if (check->aim == AIM_VALUE || check->aim == AIM_SMALLEST) {
        gboolean loosest;
        next_move_aim(trials, &loosest);
        g_autofree char *aim = check_value_words(check, check->aim_value);
        g_string_append_printf(words, "; aim %s%s", aim, advice_where(trials, loosest));
    }
    return g_string_free(words, FALSE);
}

// TABLE -----------------------------------------------------------------------------------------

// The columns of the table; one that holds least and greatest stands for all places where these
// would leave no room for the strip.
typedef struct {
    const Trials *trials;
    gboolean apart; // each place in a column
    gboolean loose; // it is also read loose
    TrialWindow window;
} Table;

static char *tight_words(const Trial *trial, guint place)
{
    const Requirement *made = trial->places[place].made;
    return made ? figure_value(made) : g_strdup("");
}

// `0.10 to 0.16`
static char *span_words(const Trials *trials, const Trial *trial)
{
    const Requirement *least = NULL, *most = NULL;
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *made = trial->places[i].made;
        if (!made || !made->value)
            continue;
        least = least && number_compare(least->value, made->value) <= 0 ? least : made;
        most = most && number_compare(most->value, made->value) >= 0 ? most : made;
    }
    if (!least)
        return g_strdup("");
    g_autofree char *from = figure_value(least), *to = figure_value(most);
    return strcmp(from, to) == 0 ? g_strdup(from) : g_strdup_printf("%s to %s", from, to);
}

static char *loose_words(const Trials *trials, const Number *value)
{
    return value ? check_value_words(trials->check, value) : g_strdup("");
}

// The cells of a try but its strip, in the order of the columns.
static GPtrArray *cells_of(const Table *table, const Trial *trial)
{
    const Trials *trials = table->trials;
    GPtrArray *cells = g_ptr_array_new_with_free_func(g_free);
    g_ptr_array_add(cells, g_strdup_printf("%u", trial->number));
    g_ptr_array_add(cells, trial_position_words(trials->check, trial->position));
    if (table->loose)
        g_ptr_array_add(cells, loose_words(trials, trial->loose_value));
    for (guint i = 0; table->apart && i < trials->places; i++)
        g_ptr_array_add(cells, tight_words(trial, i));
    if (!table->apart)
        g_ptr_array_add(cells, span_words(trials, trial));
    g_ptr_array_add(cells, g_strdup(verdict_words(trial->verdict)));
    return cells;
}

// What a try was before it was moved on or read again, or was read later: a row without a number,
// as many cells.
static GPtrArray *cells_before(const Table *table, const TrialLine *line)
{
    const Trials *trials = table->trials;
    GPtrArray *cells = g_ptr_array_new_with_free_func(g_free);
    g_ptr_array_add(cells, g_strdup(""));
    g_ptr_array_add(cells, trial_position_words(trials->check, line->position));
    if (table->loose)
        g_ptr_array_add(cells, trial_value_words(trials, line->loose));
    for (guint i = 0; table->apart && i < trials->places; i++)
        g_ptr_array_add(cells, trial_value_words(trials, line->tight ? line->tight[i] : NULL));
    if (!table->apart)
        g_ptr_array_add(cells, trial_line_span(trials, line));
    g_ptr_array_add(cells, g_strdup(line->kind == TRIAL_LATER ? "later" : "before"));
    return cells;
}

// The cells of a line but its strip; NULL of what was struck, which has none.
static GPtrArray *cells_of_line(const Table *table, const Trial *trial, const TrialLine *line)
{
    if (line->kind == TRIAL_STRUCK)
        return NULL;
    return line->kind == TRIAL_STANDS ? cells_of(table, trial) : cells_before(table, line);
}

static GPtrArray *titles_of(const Table *table)
{
    const PlanSetting *setting = table->trials->check->setting;
    const char *unit = setting->unit_text ? setting->unit_text : setting->move;
    const char *read = trials_read_word(table->trials, FALSE);
    GPtrArray *titles = g_ptr_array_new_with_free_func(g_free);
    g_ptr_array_add(titles, g_strdup("try"));
    g_ptr_array_add(titles, g_strdup(unit));
    if (table->loose)
        g_ptr_array_add(titles, g_strdup("loose"));
    for (guint i = 0; table->apart && i < table->trials->places; i++) {
        const char *place = table->trials->made[i]->place;
        g_ptr_array_add(titles, *place ? g_strconcat("at ", place, NULL) : g_strdup(read));
    }
    if (!table->apart)
        g_ptr_array_add(titles, g_strdup(read));
    g_ptr_array_add(titles, g_strdup("")); // its verdict
    return titles;
}

static void widen(GArray *widths, const GPtrArray *cells)
{
    for (guint i = 0; i < cells->len; i++) {
        guint width = (guint)g_utf8_strlen(cells->pdata[i], -1);
        if (i == widths->len)
            g_array_append_val(widths, width);
        guint *widest = &g_array_index(widths, guint, i);
        *widest = MAX(*widest, width);
    }
}

// The columns of the page that are left for the strip.
static guint room_of(const Table *table)
{
    g_autoptr(GArray) widths = g_array_new(FALSE, FALSE, sizeof(guint));
    g_autoptr(GPtrArray) titles = titles_of(table);
    guint used = LEFT;
    widen(widths, titles);
    for (guint i = 0; i < table->trials->all->len; i++) {
        const Trial *trial = table->trials->all->pdata[i];
        g_autoptr(GArray) lines = trial_lines(table->trials, trial);
        for (guint j = 0; j < lines->len; j++) {
            g_autoptr(GPtrArray) cells =
                cells_of_line(table, trial, &g_array_index(lines, TrialLine, j));
            if (cells)
                widen(widths, cells);
        }
    }
    for (guint i = 0; i < widths->len; i++)
        used += g_array_index(widths, guint, i) + 1;
    return used < DOCUMENT_WIDTH ? DOCUMENT_WIDTH - used : 0;
}

static Table table_of(const Trials *trials)
{
    Table table = {.trials = trials,
                   .apart = trials->places <= PLACES_MOST,
                   .loose = trials->check->setting->loose};
    table.apart = table.apart && room_of(&table) >= STRIP_LEAST;
    table.window = trial_window(trials, CLAMP(room_of(&table), STRIP_LEAST, STRIP_WIDEST));
    return table;
}

// The ends of the window, above its first and last cell.
static char *ends_words(const Table *table)
{
    const TrialWindow *window = &table->window;
    if (!window->step)
        return g_strdup("");
    g_autoptr(Number) end = trial_window_end(window);
    g_autofree char *from = number_decimal(window->from, window->decimals);
    g_autofree char *to = number_decimal(end, window->decimals);
    return g_strdup_printf("%s%*s", from, (int)(window->cells - strlen(from)), to);
}

static void begin_table(Document *document, const Table *table)
{
    g_autoptr(GPtrArray) titles = titles_of(table);
    g_autofree DocumentColumn *columns = g_new0(DocumentColumn, titles->len + 1);
    for (guint i = 0; i < titles->len; i++)
        columns[i] = (DocumentColumn){titles->pdata[i], ALIGN_RIGHT};
    columns[titles->len - 1].align = ALIGN_WHOLE;
    g_autofree char *ends = ends_words(table);
    columns[titles->len] = (DocumentColumn){ends, ALIGN_WHOLE};
    document_table(document, columns, titles->len + 1);
    document_tight(document);
}

// `#417 --move idler backlash to 0.08 turn-- struck: typo`
static void add_struck(GString *words, const TrialStruck *struck, const Taken *taken)
{
    g_autofree char *entry = entry_words(taken, struck->entry);
    g_string_append_printf(words, "%s#%" G_GINT64_FORMAT " --%s-- struck: %s",
                           words->len ? "; " : "", struck->entry->seq, entry, struck->cause);
}

static void put_row(Document *document, const Table *table, const Trial *trial,
                    const TrialLine *line)
{
    g_autoptr(GPtrArray) cells = cells_of_line(table, trial, line);
    gboolean drawn = trial->read && line->kind == TRIAL_STANDS;
    g_ptr_array_add(cells,
                    drawn ? trial_strip_in(table->trials, trial, &table->window) : g_strdup(""));
    document_row(document, (const char *const *)cells->pdata);
}

// A try in the order of entry: what was struck stands under the row that it followed, or, in front
// of all, under the first.
static void put_try(Document *document, const Table *table, const Trial *trial, const Taken *taken)
{
    g_autoptr(GArray) lines = trial_lines(table->trials, trial);
    g_autoptr(GString) struck = g_string_new(NULL);
    gboolean begun = FALSE;
    for (guint i = 0; i < lines->len; i++) {
        const TrialLine *line = &g_array_index(lines, TrialLine, i);
        gboolean more = i + 1 < lines->len && (line + 1)->kind == TRIAL_STRUCK;
        if (line->kind == TRIAL_STRUCK)
            add_struck(struck, line->struck, taken);
        else
            put_row(document, table, trial, line);
        begun = begun || line->kind != TRIAL_STRUCK;
        if (!begun || more || !struck->len)
            continue;
        document_under(document, struck->str);
        g_string_truncate(struck, 0);
    }
}

void section_tries(Document *document, const Trials *trials, const Taken *taken)
{
    if (!trials->all->len)
        return;
    Table table = table_of(trials);
    begin_table(document, &table);
    for (guint i = 0; i < trials->all->len; i++)
        put_try(document, &table, trials->all->pdata[i], taken);
    trial_window_clear(&table.window);
}

// WHAT IS NEXT ----------------------------------------------------------------------------------

// `Next: read it tight at 3.`
static char *asks_words(const Trials *trials, const TrialNext *asked)
{
    static const char *const moves[] = {
        [TRIAL_FURTHER] = "Next: move the %s.",
        [TRIAL_STAY] = "Next: loosen and tighten it again, the %s where it stands.",
        [TRIAL_STOP] = "Next: leave the %s and look for the cause."};
    const Requirement *made = trials->inputs[asked->input];
    gboolean named = made && trials->check->formula;
    const char *place = made ? made->place : "";
    switch (asked->ask) {
    case TRIAL_MOVE:
        return g_strdup_printf(moves[asked->move], trials->check->setting->move);
    case TRIAL_TIGHTEN:
        return g_strdup_printf("Next: tighten %s.", asked->tightening->group->name);
    case TRIAL_LOOSE:
    case TRIAL_TIGHT:
        return g_strdup_printf("Next: read %s%s%s%s.", named ? made->check->name : "it",
                               asked->ask == TRIAL_LOOSE  ? " loose"
                               : trials_has_tight(trials) ? " tight"
                                                          : "",
                               *place ? " at " : "", place);
    case TRIAL_DONE:
        break;
    }
    return g_strdup("Nothing more is asked of it.");
}

static void say_advice(Document *document, const Trials *trials, const NextMove *next,
                       const TrialNext *asked)
{
    g_auto(Advice) advice = advice_of(trials, next, asked);
    if (advice.figure) {
        g_autofree char *move = next_move_words(trials, next), *to = next_move_to(trials, next);
        g_autofree char *line = trials->check->setting->stock
                                    ? g_strdup_printf("Advised: %s.", move)
                                    : g_strdup_printf("Advised: %s, to %s.", move, to);
        document_line(document, line);
    }
    for (guint i = 0; i < advice.sentences->len; i++)
        document_line(document, advice.sentences->pdata[i]);
}

Document *sheet_setting(const Trials *trials, const NextMove *next, const Taken *taken,
                        const char *build)
{
    g_autofree char *title = g_strdup_printf("Setting of %s in %s", trials->step->name, build);
    const TrialNext asked = next_move_ask(next, trials, trials_next(trials, FALSE));
    g_autofree char *what = setting_title(trials), *asks = asks_words(trials, &asked);
    Document *document = document_new("setting", title);
    document_paragraph(document, what);
    section_tries(document, trials, taken);
    document_paragraph(document, asks);
    say_advice(document, trials, next, &asked);
    return document;
}
