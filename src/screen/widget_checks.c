#include "widget_checks.h"

#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <string.h>

enum {
    LABEL_COLUMN = 2,
    VALUE_END = 30,
    DOUBT_COLUMN = 32,
    MARK_COLUMN = 40,
    STRIP_COLUMN = 49,
    LOWER_MIDDLE = 53,
    UPPER_MIDDLE = 69,
};

static const Style plain, bold = {TYPE_BOLD, ROLE_CALM}, head = {TYPE_UNDERLINE, ROLE_CALM};
static const Style here = {TYPE_REVERSE, ROLE_HERE};

// WHAT BELONGS TOGETHER -------------------------------------------------------------------------

static const Requirement *at(const Assessment *assessment, guint index)
{
    return g_ptr_array_index(assessment->requirements, index);
}

static gboolean same_number(const Number *one, const Number *other)
{
    return one == other || (one && other && number_equal(one, other));
}

const Requirement *checks_at(const Checks *checks, guint index, gboolean *differs)
{
    const Requirement *now = at(checks->now, index);
    gboolean changed = FALSE;
    if (checks->supposed && index < checks->supposed->requirements->len) {
        const Requirement *then = at(checks->supposed, index);
        changed = then->verdict != now->verdict || !same_number(then->value, now->value);
        now = changed ? then : now;
    }
    if (differs)
        *differs = changed;
    return now;
}

Agenda checks_agenda(const Checks *checks)
{
    Agenda agenda = *checks->agenda;
    agenda.assessment = checks->supposed ? checks->supposed : checks->now;
    return agenda;
}

// The requirements of one check in this step: `*first`, and how many follow each other.
static guint span_of(const Checks *checks, const PlanCheck *check, guint *first)
{
    guint count = 0;
    for (guint i = 0; i < checks->now->requirements->len; i++) {
        const Requirement *made = at(checks->now, i);
        if (made->check != check || made->step != checks->step)
            continue;
        if (count == 0)
            *first = i;
        count++;
    }
    return count;
}

static gboolean rests_on(const PlanCheck *derived, const PlanCheck *check)
{
    return derived->formula && formula_uses(derived->formula, check->name);
}

// LINES -----------------------------------------------------------------------------------------

static void put_middle(Canvas *canvas, guint row, guint middle, const char *text)
{
    guint width = canvas_text_width(canvas, text);
    canvas_put(canvas, row, middle > width / 2 ? middle - width / 2 : 0, 0, plain, text);
}

static void put_limits(Canvas *canvas, guint row, const Requirement *made)
{
    g_autofree char *lower = made->lower ? figure_number(made, made->lower) : NULL;
    g_autofree char *upper = made->upper ? figure_number(made, made->upper) : NULL;
    if (lower)
        put_middle(canvas, row, LOWER_MIDDLE, lower);
    if (upper)
        put_middle(canvas, row, UPPER_MIDDLE, upper);
    if (!lower && !upper) {
        g_autofree char *wanted = figure_limits(made);
        canvas_put(canvas, row, STRIP_COLUMN, 0, plain, *wanted ? wanted : "no limit known");
    }
}

static char *value_shown(const Requirement *made, gboolean differs)
{
    g_autofree char *value = figure_value(made);
    if (!*value)
        return g_strdup("·");
    return differs ? g_strdup_printf("(%s)", value) : g_strdup(value);
}

static void put_verdict(Canvas *canvas, guint row, const Requirement *made)
{
    g_autofree char *doubt = figure_doubt(made);
    canvas_put(canvas, row, DOUBT_COLUMN, MARK_COLUMN - DOUBT_COLUMN - 1, plain, doubt);
    canvas_put(canvas, row, MARK_COLUMN, 7, verdict_style(made->verdict),
               verdict_mark(made->verdict, made->reason));
}

// A text that ends there, cut to the columns it may have.
static void put_in(Canvas *canvas, guint row, guint end, guint room, Style style, const char *text)
{
    guint width = MIN(canvas_text_width(canvas, text), room);
    canvas_put(canvas, row, end - width, width, style, text);
}

static void put_value(Canvas *canvas, guint row, guint room, const Requirement *made,
                      gboolean differs)
{
    g_autofree char *value = value_shown(made, differs);
    gboolean closed = g_str_has_suffix(value, ")");
    put_in(canvas, row, VALUE_END + (closed ? 1 : 0), room, differs ? bold : plain, value);
}

// The place in hand, with what stands in the field in place of its value.
static void put_here(Canvas *canvas, guint row, guint end, guint room, const char *typed)
{
    g_autofree char *text = g_strdup_printf("[%s]", *typed ? typed : " ");
    put_in(canvas, row, end + 1, room, here, text);
}

// `──3.6──  struck: typo`
static guint put_struck(Canvas *canvas, guint row, guint column, const StruckReading *struck)
{
    g_autofree char *words = g_strdup_printf("──%s──  struck: %s", struck->figure, struck->reason);
    return canvas_put(canvas, row, column, 0, style_of(0, ROLE_FAINT), words);
}

static const StruckReading *struck_at(const Checks *checks, guint index)
{
    for (guint i = 0; checks->struck && i < checks->struck->len; i++)
        if (g_array_index(checks->struck, StruckReading, i).index == index)
            return &g_array_index(checks->struck, StruckReading, i);
    return NULL;
}

// `90.026 - 89.940` in front of the value, if there is room. Returns the column behind.
static guint put_working(Canvas *canvas, guint row, guint label, const Checks *checks,
                         const Requirement *made)
{
    enum { WORKING_COLUMN = 6, VALUE_ROOM = 9 };
    const Agenda agenda = checks_agenda(checks);
    g_autofree char *words =
        made->value && label < WORKING_COLUMN ? working_words(&agenda, made) : NULL;
    if (!words || WORKING_COLUMN + canvas_text_width(canvas, words) + VALUE_ROOM > VALUE_END)
        return label;
    return canvas_put(canvas, row, WORKING_COLUMN, 0, plain, words);
}

static void put_line(Canvas *canvas, guint row, const Checks *checks, guint index, guint *focus)
{
    gboolean differs;
    const Requirement *made = checks_at(checks, index, &differs);
    gboolean in_hand = at(checks->now, index) == checks->here;
    guint label = canvas_put(canvas, row, LABEL_COLUMN, 18, in_hand ? bold : plain,
                             *made->place ? made->place : made->name);
    label = put_working(canvas, row, label, checks, made);
    guint room = VALUE_END - label - 1;
    put_verdict(canvas, row, made);
    if (in_hand && (!made->value || *checks->typed || made->answer))
        put_here(canvas, row, VALUE_END, room + 1, checks->typed);
    else
        put_value(canvas, row, room, made, differs);
    if (in_hand)
        *focus = row;
    if (made->value && (made->lower || made->upper)) {
        g_autofree char *strip = strip_text(made);
        strip_paint(canvas, row, STRIP_COLUMN, strip, made->verdict);
    }
    const StruckReading *struck = made->value ? NULL : struck_at(checks, index);
    if (struck)
        put_struck(canvas, row, STRIP_COLUMN, struck);
}

static guint put_list(Canvas *canvas, guint row, const Checks *checks, guint first, guint count,
                      guint *focus)
{
    const Requirement *made = at(checks->now, first);
    g_autofree char *title = made->check && made->check->formula_text
                                 ? g_strdup_printf("%s = %s", made->name, made->check->formula_text)
                                 : g_strdup(made->name);
    canvas_put(canvas, row, 1, STRIP_COLUMN - 3, plain, title);
    put_limits(canvas, row, checks_at(checks, first, NULL));
    for (guint i = 0; i < count; i++)
        put_line(canvas, row + 1 + i, checks, first + i, focus);
    return row + 2 + count;
}

// TABLES ----------------------------------------------------------------------------------------

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
    g_autofree char *value = value_shown(made, FALSE);
    // What was read and is only an input needs no mark.
    gboolean marked = made->verdict != VERDICT_NOTED && made->verdict != VERDICT_OPEN;
    g_autofree char *mark =
        marked ? g_utf8_substring(verdict_mark(made->verdict, made->reason), 0, 1) : g_strdup("");
    if (at(checks->now, index) == checks->here) {
        put_here(canvas, row, end - 2, room,
                 *checks->typed || !made->value ? checks->typed : value);
        *focus = row;
        return;
    }
    put_in(canvas, row, end - 2, room - 2, plain, value);
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
    if (!rests_on(derived, check) || derived->places->len + grid->across != check->places->len)
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
    guint first = 0, count = span_of(checks, derived, &first);
    put_in(canvas, top, end - 2, WORKED_WIDTH - 2, head, name);
    for (guint i = 0; i < count; i++) {
        gboolean differs;
        const Requirement *made = checks_at(checks, first + i, &differs);
        g_autofree char *value = value_shown(made, differs);
        g_autofree char *mark = g_utf8_substring(verdict_mark(made->verdict, made->reason), 0, 1);
        gboolean closed = g_str_has_suffix(value, ")");
        put_in(canvas, top + 1 + i, end - (closed ? 1 : 2), WORKED_WIDTH - 2,
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
        const StruckReading *struck = struck_at(checks, i);
        if (!struck || checks_at(checks, i, NULL)->value)
            continue;
        guint column = canvas_put(canvas, row, LABEL_COLUMN, 0, plain, at(checks->now, i)->place);
        put_struck(canvas, row++, column + 2, struck);
    }
    return row;
}

static guint put_table(Canvas *canvas, guint row, const Checks *checks, guint first, guint *focus)
{
    const Requirement *made = at(checks->now, first);
    const GPtrArray *axes = made->check->places;
    Grid grid = grid_of(checks, first, axes);
    canvas_put(canvas, row, 1, STRIP_COLUMN - 3, plain, made->name);
    put_limits(canvas, row, checks_at(checks, first, NULL));
    row = put_heads(canvas, row + 1, axes, &grid);
    put_all_worked(canvas, row - 1, checks, made->check, &grid);
    row = put_rows(canvas, row, checks, first, &grid, focus);
    return put_all_struck(canvas, row, checks, first, places_count(axes)) + 1;
}

static guint put_check(Canvas *canvas, guint row, const Checks *checks, const PlanCheck *check,
                       guint *focus)
{
    guint first = 0, count = span_of(checks, check, &first);
    if (count == 0)
        return row;
    gboolean table = check->places->len > 1 && count == places_count(check->places);
    return table ? put_table(canvas, row, checks, first, focus)
                 : put_list(canvas, row, checks, first, count, focus);
}

// THE STEP --------------------------------------------------------------------------------------

// Whether a group's check is painted in full already.
static gboolean is_painted(const Checks *checks, const Group *group)
{
    const PlanCheck *check = group->first->check;
    const PlanCheck *in_hand = checks->here ? checks->here->check : NULL;
    return check && in_hand && (check == in_hand || rests_on(check, in_hand));
}

guint checks_paint(Canvas *canvas, guint row, const Checks *checks, guint *focus)
{
    const PlanCheck *in_hand = checks->here ? checks->here->check : NULL;
    const GPtrArray *all = checks->step->checks;
    const char *apart = checks->apart;
    if (in_hand)
        row = put_check(canvas, row, checks, in_hand, focus);
    for (guint i = 0; in_hand && i < all->len; i++) {
        if (!rests_on(g_ptr_array_index(all, i), in_hand))
            continue;
        row = put_check(canvas, row, checks, g_ptr_array_index(all, i), focus);
        if (apart)
            row = canvas_wrap(canvas, row, 1, 78, plain, g_steal_pointer(&apart)) + 1;
    }
    if (apart)
        row = canvas_wrap(canvas, row, 1, 78, plain, apart) + 1;
    const Assessment *seen = checks->supposed ? checks->supposed : checks->now;
    g_autoptr(GArray) groups = groups_of(seen, checks->step);
    for (guint i = 0; i < groups->len; i++) {
        const Group *group = &g_array_index(groups, Group, i);
        if (is_painted(checks, group))
            continue;
        if (checks->here && at(checks->now, group->index) == checks->here)
            *focus = row;
        group_paint(canvas, row++, seen, group);
    }
    return row;
}
