// A trial line by line: what it was before, what was struck, and as it stands.
#include "trials_inside.h"

#include <standbook/work/entry_words.h>

static void row_clear(gpointer data)
{
    TrialRow *row = data;
    number_free(row->position);
}

GArray *trial_rows_new(void)
{
    GArray *rows = g_array_new(FALSE, TRUE, sizeof(TrialRow));
    g_array_set_clear_func(rows, row_clear);
    return rows;
}

// Which of its values is the loose one; -1 if it was not read loose where it stands.
static gint loose_at(const Trial *trial)
{
    gint index = trial->loose ? (gint)trial->values->len - 1 : -1;
    while (index >= 0 && g_array_index(trial->values, TrialValue, index).entry != trial->loose)
        index--;
    return index;
}

void trial_pass(Trial *trial)
{
    TrialRow row = {.kind = TRIAL_BEFORE,
                    .position = trial->position ? number_copy(trial->position) : NULL,
                    .value = loose_at(trial)};
    g_array_insert_val(trial->rows, trial->stood, row);
    trial->above++;
}

void trial_read_tight(Trial *trial)
{
    TrialRow row = {.kind = TRIAL_BEFORE, .value = (gint)trial->values->len - 1};
    g_array_append_val(trial->rows, row);
}

void trial_strike(Trial *trial, TrialStruck struck)
{
    TrialRow row = {.kind = TRIAL_STRUCK, .value = -1, .struck = struck};
    g_array_append_val(trial->rows, row);
}

// LINES -----------------------------------------------------------------------------------------

static void line_clear(gpointer data)
{
    TrialLine *line = data;
    g_free(line->tight);
}

static TrialLine *add_line(GArray *lines, TrialLineKind kind)
{
    TrialLine line = {.kind = kind};
    g_array_append_val(lines, line);
    return &g_array_index(lines, TrialLine, lines->len - 1);
}

// Whether a tightened value is what its place stands at: of several that compete the one that the
// judgement takes.
static gboolean stands(const Trials *trials, const Trial *trial, const TrialValue *value)
{
    const TrialPlace *place = &trial->places[value->place];
    gboolean judged = place->made && place->made->entry && !trials->check->formula;
    return value->entry == (judged ? trials->entries[place->made->entry - 1] : place->entry);
}

// What several places read, one after another, stands in one line.
static void add_tight(GArray *lines, const Trials *trials, const TrialValue *value, gboolean later)
{
    TrialLine *line = lines->len ? &g_array_index(lines, TrialLine, lines->len - 1) : NULL;
    if (!line || !line->tight || line->tight[value->place]) {
        line = add_line(lines, later ? TRIAL_LATER : TRIAL_BEFORE);
        line->tight = g_new0(const TrialValue *, trials->places);
    }
    line->tight[value->place] = value;
}

static void add_row(GArray *lines, const Trials *trials, const Trial *trial, const TrialRow *row,
                    gboolean later)
{
    const TrialValue *value =
        row->value < 0 ? NULL : &g_array_index(trial->values, TrialValue, row->value);
    if (row->kind == TRIAL_STRUCK)
        add_line(lines, TRIAL_STRUCK)->struck = &row->struck;
    else if (!value || !value->tight) {
        TrialLine *line = add_line(lines, TRIAL_BEFORE);
        line->position = row->position;
        line->loose = value;
    } else if (!stands(trials, trial, value))
        add_tight(lines, trials, value, later);
}

// Behind how many of its rows a trial stands: at the newest reading that counts, or at what was
// moved or read loose after it.
static guint stands_behind(const Trials *trials, const Trial *trial)
{
    for (guint i = trial->rows->len; i-- > trial->stood;) {
        const TrialRow *row = &g_array_index(trial->rows, TrialRow, i);
        const TrialValue *value =
            row->value < 0 ? NULL : &g_array_index(trial->values, TrialValue, row->value);
        if (value && value->tight && stands(trials, trial, value))
            return i + 1;
    }
    return trial->above;
}

GArray *trial_lines(const Trials *trials, const Trial *trial)
{
    guint above = stands_behind(trials, trial);
    GArray *lines = g_array_new(FALSE, TRUE, sizeof(TrialLine));
    g_array_set_clear_func(lines, line_clear);
    for (guint i = 0; i <= trial->rows->len; i++) {
        if (i == above)
            add_line(lines, TRIAL_STANDS);
        if (i < trial->rows->len)
            add_row(lines, trials, trial, &g_array_index(trial->rows, TrialRow, i), i >= above);
    }
    return lines;
}

// WORDS -----------------------------------------------------------------------------------------

char *trial_value_words(const Trials *trials, const TrialValue *value)
{
    if (!value || !value->value)
        return g_strdup("");
    const char *text = trials->check->formula ? NULL : entry_value(value->entry, "value", "value");
    g_autofree char *words = check_value_words(trials->check, value->value);
    return g_strdup_printf("%.*s%s", text && (*text == '<' || *text == '>') ? 1 : 0, text, words);
}

char *trial_line_span(const Trials *trials, const TrialLine *line)
{
    const TrialValue *least = NULL, *most = NULL;
    for (guint i = 0; line->tight && i < trials->places; i++) {
        const TrialValue *value = line->tight[i];
        if (!value || !value->value)
            continue;
        least = least && number_compare(least->value, value->value) <= 0 ? least : value;
        most = most && number_compare(most->value, value->value) >= 0 ? most : value;
    }
    g_autofree char *from = trial_value_words(trials, least), *to = trial_value_words(trials, most);
    return g_strcmp0(from, to) == 0 ? g_strdup(from) : g_strdup_printf("%s to %s", from, to);
}

char *trial_struck_typed(const TrialStruck *struck)
{
    static const char *const fields[] = {"value", "to", "moved"};
    const Entry *entry = struck->entry;
    const json_t *value = NULL;
    for (gsize i = 0; i < G_N_ELEMENTS(fields) && !value; i++)
        value = kind_field(entry->kind, fields[i]) ? json_object_get(entry->body, fields[i]) : NULL;
    return value_words(value);
}
