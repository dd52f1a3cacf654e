#include <standbook/work/gave.h>

#include <string.h>

enum { DAY = 86400 };

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
    const char *at = text ? strstr(text, between) : NULL;
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

static const char *text_of(const json_t *body, const char *field)
{
    return json_string_value(json_object_get(body, field));
}

static ToolFound found_of(const json_t *body)
{
    const char *found = text_of(body, "found");
    return g_strcmp0(found, "wrong") == 0      ? TOOL_FOUND_WRONG
           : g_strcmp0(found, "adjusted") == 0 ? TOOL_ADJUSTED
                                               : TOOL_FOUND_GOOD;
}

static gint by_day(gconstpointer a, gconstpointer b)
{
    const ToolCalibration *one = &((const GaveCalibration *)a)->rule,
                          *other = &((const GaveCalibration *)b)->rule;
    return one->day != other->day ? (one->day > other->day) - (one->day < other->day)
                                  : (one->seq > other->seq) - (one->seq < other->seq);
}

// The body of the calibration that an entry takes or tells of; NULL for any other.
static const json_t *calibration_in(const Entry *entry)
{
    gboolean copy =
        strcmp(entry->kind->name, "take") == 0 || strcmp(entry->kind->name, "news") == 0;
    return copy && g_strcmp0(entry_text(entry, "what"), "calibration") == 0
               ? json_object_get(entry->body, "body")
               : NULL;
}

gboolean gave_tells(const Entry *const *entries, gsize count, const char *tool)
{
    for (gsize i = 0; i < count; i++) {
        const json_t *body = calibration_in(entries[i]);
        if (body && found_of(body) == TOOL_FOUND_WRONG && json_object_get(body, "gave") &&
            g_strcmp0(text_of(body, "tool"), tool) == 0)
            return TRUE;
    }
    return FALSE;
}

GArray *gave_calibrations(const Entry *const *entries, gsize count, const gboolean *live,
                          const char *tool)
{
    GArray *found = g_array_new(FALSE, TRUE, sizeof(GaveCalibration));
    for (gsize i = 0; i < count; i++) {
        const json_t *body = live[i] ? calibration_in(entries[i]) : NULL;
        if (!body || g_strcmp0(text_of(body, "tool"), tool) != 0)
            continue;
        const GaveCalibration one = {{.day = moment_of_day(text_of(body, "date")) / DAY,
                                      .seq = entries[i]->seq,
                                      .found = found_of(body)},
                                     body};
        g_array_append_val(found, one);
    }
    g_array_sort(found, by_day);
    return found;
}

static const json_t *wrong_at(const GArray *calibrations, gssize index)
{
    const GaveCalibration *one =
        index < 0 ? NULL : &g_array_index(calibrations, GaveCalibration, index);
    return one && one->rule.found == TOOL_FOUND_WRONG ? one->body : NULL;
}

const json_t *gave_wrong(const GArray *calibrations, const Entry *use)
{
    g_autofree ToolCalibration *rules = g_new0(ToolCalibration, calibrations->len + 1);
    for (guint i = 0; i < calibrations->len; i++)
        rules[i] = g_array_index(calibrations, GaveCalibration, i).rule;
    const ToolUse used = {.day = entry_moment(use) / DAY, .seq = use->seq};
    const ToolStanding standing = tool_use_standing(TOOL_TORQUE, rules, calibrations->len, &used);
    const json_t *later = wrong_at(calibrations, standing.after);
    return later ? later : wrong_at(calibrations, standing.before);
}
