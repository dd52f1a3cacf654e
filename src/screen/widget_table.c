// A check whose places cross: labels of one axis down, of the others across, and beside each row
// what is worked out of it.
#include "widget_checks_inside.h"

#include "widget_groups.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <string.h>

enum { WORKED_WIDTH = 14 }; // of a column for what is worked out of a row

typedef struct {
    guint rows, columns; // of places
    guint across;        // axes that run across: the last ones
    guint label;         // width of the labels at the left
    guint cell;          // width of a column
    guint behind;        // the column behind those of places
} Grid;

static guint widest_label(const GPtrArray *axes, guint from, guint to)
{
    guint width = 0;
    for (guint i = from; i < to; i++) {
        const Axis *axis = g_ptr_array_index(axes, i);
        guint widest = 0;
        for (guint l = 0; l < (guint)axis_size(axis); l++)
            widest = MAX(widest, (guint)g_utf8_strlen(axis_label(axis, l), -1));
        width += widest + (i > from ? 2 : 0);
    }
    return width;
}

// The columns that one of the values read takes.
static guint value_width(const Checks *checks, guint first, guint count)
{
    for (guint i = first; i < first + count; i++) {
        g_autofree char *value = figure_value(at(checks->now, i));
        if (*value)
            return (guint)strlen(value);
    }
    return 0;
}

// As many of the last axes across as the width allows, at least one axis down.
static Grid grid_of(const Checks *checks, guint first, const GPtrArray *axes)
{
    Grid grid = {.columns = 1, .across = 0};
    guint widest = MAX(widest_label(axes, axes->len - 1, axes->len),
                       value_width(checks, first, places_count(axes)));
    grid.cell = MAX(8, widest + 2);
    for (guint i = axes->len; i-- > 1;) {
        guint columns = grid.columns * (guint)axis_size(g_ptr_array_index(axes, i));
        if (LABEL_COLUMN + widest_label(axes, 0, i) + 1 + columns * grid.cell > 78)
            break;
        grid.columns = columns;
        grid.across++;
    }
    grid.rows = places_count(axes) / grid.columns;
    grid.label = widest_label(axes, 0, axes->len - grid.across) + 1;
    grid.behind = LABEL_COLUMN + grid.label + grid.columns * grid.cell;
    return grid;
}

static void put_cell(Canvas *canvas, guint row, guint end, guint room, const Checks *checks,
                     guint index, guint *focus)
{
    gboolean differs;
    const Requirement *made = checks_at(checks, index, &differs);
    g_autofree char *value = checks_value_shown(made, FALSE);
    // What was read and is only an input needs no mark.
    gboolean marked = made->verdict != VERDICT_NOTED && made->verdict != VERDICT_OPEN;
    g_autofree char *mark =
        marked ? g_utf8_substring(verdict_mark(made->verdict, made->reason, made->check), 0, 1)
               : g_strdup("");
    if (at(checks->now, index) == checks->here) {
        checks_put_here(canvas, row, end - 2, room,
                        *checks->typed || !made->value ? checks->typed : value);
        *focus = row;
        return;
    }
    checks_put_in(canvas, row, end - 2, room - 2, plain, value);
    canvas_put(canvas, row, end - 1, 1, verdict_style(made->verdict), mark);
}

// The labels of the axes across stand over their columns; of all but the last only where they
// change.
static guint put_heads(Canvas *canvas, guint row, const GPtrArray *axes, const Grid *grid)
{
    guint run = grid->columns;
    for (guint i = axes->len - grid->across; i < axes->len; i++, row++) {
        const Axis *axis = g_ptr_array_index(axes, i);
        run /= (guint)axis_size(axis);
        for (guint c = 0; c < grid->columns; c += run) {
            guint left = LABEL_COLUMN + grid->label + c * grid->cell;
            const char *label = axis_label(axis, (c / run) % (guint)axis_size(axis));
            g_autofree char *words =
                run > 1 ? g_strdup_printf("%s %s", axis_name(axis), label) : g_strdup(label);
            if (run > 1)
                canvas_put(canvas, row, left + 3, run * grid->cell - 3, plain, words);
            else
                canvas_put_right(canvas, row, left + grid->cell - 2, head, words);
        }
    }
    return row;
}

// What is worked out of each row of the table, and of nothing else.
static gboolean is_of_rows(const PlanCheck *derived, const PlanCheck *check, const Grid *grid)
{
    if (!check_rests_on(derived, check) ||
        derived->places->len + grid->across != check->places->len)
        return FALSE;
    for (guint i = 0; i < derived->places->len; i++)
        if (derived->places->pdata[i] != check->places->pdata[i])
            return FALSE;
    return formula_name_count(derived->formula) == 1;
}

static const char *name_beside(const PlanCheck *derived, const PlanCheck *check)
{
    gsize length = strlen(check->name);
    gboolean same = g_str_has_prefix(derived->name, check->name) && derived->name[length] == ' ';
    return derived->name + (same ? length + 1 : 0);
}

// A column for it behind those of the places, its head on row `top`.
static void put_worked(Canvas *canvas, guint top, guint end, const Checks *checks,
                       const PlanCheck *derived, const char *name)
{
    guint first = 0, count = checks_span(checks, derived, &first);
    checks_put_in(canvas, top, end - 2, WORKED_WIDTH - 2, head, name);
    for (guint i = 0; i < count; i++) {
        gboolean differs;
        const Requirement *made = checks_at(checks, first + i, &differs);
        g_autofree char *value = checks_value_shown(made, differs);
        g_autofree char *mark =
            g_utf8_substring(verdict_mark(made->verdict, made->reason, made->check), 0, 1);
        gboolean closed = g_str_has_suffix(value, ")");
        checks_put_in(canvas, top + 1 + i, end - (closed ? 1 : 2), WORKED_WIDTH - 2,
                      differs ? bold : plain, value);
        if (made->verdict != VERDICT_OPEN && made->verdict != VERDICT_NOTED)
            canvas_put(canvas, top + 1 + i, end - 1, 1, verdict_style(made->verdict), mark);
    }
}

// As many as there is room for; all stand in lists of their own as well.
static void put_all_worked(Canvas *canvas, guint top, const Checks *checks, const PlanCheck *check,
                           const Grid *grid)
{
    guint end = grid->behind + WORKED_WIDTH;
    for (guint i = 0; i < checks->step->checks->len && end <= 80; i++) {
        const PlanCheck *derived = g_ptr_array_index(checks->step->checks, i);
        if (!is_of_rows(derived, check, grid))
            continue;
        put_worked(canvas, top, end, checks, derived, name_beside(derived, check));
        end += WORKED_WIDTH;
    }
}

static guint put_rows(Canvas *canvas, guint row, const Checks *checks, guint first,
                      const Grid *grid, guint *focus)
{
    guint down = at(checks->now, first)->check->places->len - grid->across;
    for (guint r = 0; r < grid->rows; r++, row++) {
        guint index = first + r * grid->columns;
        g_autoptr(GString) label = g_string_new(NULL);
        for (guint i = 0; i < down; i++)
            g_string_append_printf(label, "%s%s", i ? ", " : "", at(checks->now, index)->labels[i]);
        canvas_put(canvas, row, LABEL_COLUMN, 0, plain, label->str);
        for (guint c = 0; c < grid->columns; c++)
            put_cell(canvas, row, LABEL_COLUMN + grid->label + (c + 1) * grid->cell, grid->cell,
                     checks, index + c, focus);
    }
    return row;
}

// What was struck at places of the table that are open now.
static guint put_all_struck(Canvas *canvas, guint row, const Checks *checks, guint first,
                            guint count)
{
    for (guint i = first; i < first + count; i++) {
        const StruckReading *struck = checks_struck_at(checks, i);
        if (!struck || checks_at(checks, i, NULL)->value)
            continue;
        guint column = canvas_put(canvas, row, LABEL_COLUMN, 0, plain, at(checks->now, i)->place);
        checks_put_struck(canvas, row++, column + 2, struck);
    }
    return row;
}

guint table_paint(Canvas *canvas, guint row, const Checks *checks, guint first, guint *focus)
{
    const Requirement *made = at(checks->now, first);
    const GPtrArray *axes = made->check->places;
    Grid grid = grid_of(checks, first, axes);
    canvas_put(canvas, row, 1, STRIP_COLUMN - 3, plain, made->name);
    checks_put_limits(canvas, row, checks, first);
    row = put_heads(canvas, row + 1, axes, &grid);
    put_all_worked(canvas, row - 1, checks, made->check, &grid);
    row = put_rows(canvas, row, checks, first, &grid, focus);
    return put_all_struck(canvas, row, checks, first, places_count(axes)) + 1;
}
