#include <standbook/work/gave.h>

#include <standbook/rules/tool.h>
#include <string.h>

static const char between[] = " at ";

char *gave_text(const Reading *gave, const Unit *gave_unit, const Reading *set,
                const Unit *set_unit)
{
    return g_strdup_printf("%s %s%s%s %s", gave->typed, unit_text(gave_unit), between, set->typed,
                           unit_text(set_unit));
}

// `91 N·m` in base units; NULL if it is of another kind or no figure above 0.
static Number *figure_read(const char *text, Kind kind)
{
    g_auto(Reading) reading = {0};
    const char *blank = strrchr(text, ' ');
    g_autoptr(Unit) unit = blank ? unit_parse(blank + 1, NULL) : NULL;
    gboolean fits = unit && kind_equal(unit_kind(unit), kind) &&
                    reading_parse(text, unit, &reading, NULL, NULL);
    return fits && number_sign(reading.value) > 0 ? number_copy(reading.value) : NULL;
}

typedef struct {
    Number *set, *gave;
} Row;

static void row_clear(gpointer data)
{
    Row *row = data;
    number_free(row->set);
    number_free(row->gave);
}

// A row that somebody else's program wrote in another form says nothing.
static void add_row(GArray *rows, const char *text, Kind kind)
{
    const char *at = strstr(text, between);
    g_autofree char *front = at ? g_strndup(text, (gsize)(at - text)) : NULL;
    Row row = {.gave = front ? figure_read(front, kind) : NULL,
               .set = at ? figure_read(at + strlen(between), kind) : NULL};
    if (row.gave && row.set)
        g_array_append_val(rows, row);
    else
        row_clear(&row);
}

Number *gave_at(const json_t *calibration, Kind kind, const Number *set)
{
    g_autoptr(GArray) rows = g_array_new(FALSE, FALSE, sizeof(Row));
    g_array_set_clear_func(rows, row_clear);
    size_t index;
    const json_t *text;
    json_array_foreach(json_object_get(calibration, "gave"), index, text)
        add_row(rows, json_string_value(text), kind);
    g_autofree ToolGave *found = g_new0(ToolGave, rows->len + 1);
    for (guint i = 0; i < rows->len; i++) {
        const Row *row = &g_array_index(rows, Row, i);
        found[i] = (ToolGave){row->set, row->gave};
    }
    return tool_gave(found, rows->len, set);
}
