// The customer's sheet: every figure with limits as it was left, beside its strip. What is outside
// its limits or cannot be told stands first, apart from the rest. Figures of the unit most used
// stand in two tables, those below ten and those above, so that the columns are as
// narrow as their figures; all other units follow in a third. Figures without limits stand in a
// table of their own.
#include "measured.h"
#include "sections.h"

#include <string.h>

// Which columns a table has: units where these differ, a strip between its limits where there are
// any.
static gboolean has_column(guint column, gboolean units, gboolean limits)
{
    gboolean of_limits = column == CELL_FROM || column == CELL_STRIP || column == CELL_TO;
    return (units || column != CELL_UNIT) && (limits || !of_limits);
}

// Puts a table of the rows and leaves none.
static void rows_put(Rows *rows, gboolean units, gboolean limits)
{
    static const DocumentColumn all[CELLS] = {
        [CELL_NAME] = {"", ALIGN_LEFT},   [CELL_VALUE] = {"", ALIGN_POINT},
        [CELL_DOUBT] = {"", ALIGN_WHOLE}, [CELL_FROM] = {"", ALIGN_RIGHT},
        [CELL_STRIP] = {"", ALIGN_WHOLE}, [CELL_TO] = {"", ALIGN_WHOLE},
        [CELL_UNIT] = {"", ALIGN_WHOLE},  [CELL_VERDICT] = {"", ALIGN_WHOLE},
        [CELL_SEE] = {"", ALIGN_NOTES}};
    DocumentColumn columns[CELLS];
    guint count = 0;
    for (guint i = 0; i < CELLS; i++)
        if (has_column(i, units, limits))
            columns[count++] = all[i];
    if (limits)
        measured_strips_cut(rows);
    document_table(rows->document, columns, count);
    document_tight(rows->document);
    for (guint r = 0; r < rows->rows->len; r++) {
        const GStrv row = g_ptr_array_index(rows->rows, r);
        const char *cells[CELLS];
        for (guint i = 0, to = 0; i < CELLS; i++)
            if (has_column(i, units, limits))
                cells[to++] = row[i];
        document_row(rows->document, cells);
    }
    g_ptr_array_set_size(rows->rows, 0);
}

static const char *unit_of(const GPtrArray *group)
{
    return figure_unit(g_ptr_array_index(group, 0));
}

// The unit of most figures, of equals the first; NULL if there are none.
static const char *most_used(const GPtrArray *groups)
{
    const char *best = NULL;
    guint most = 0;
    for (guint i = 0; i < groups->len; i++) {
        const char *unit = unit_of(g_ptr_array_index(groups, i));
        guint count = 0;
        for (guint j = 0; j < groups->len; j++)
            if (strcmp(unit, unit_of(g_ptr_array_index(groups, j))) == 0)
                count += ((GPtrArray *)g_ptr_array_index(groups, j))->len;
        best = count > most ? unit : best;
        most = MAX(most, count);
    }
    return best;
}

// Whether a limit has more than one digit in front of its point.
static gboolean is_large(const GPtrArray *group)
{
    for (guint i = 0; i < group->len; i++) {
        const Requirement *each = g_ptr_array_index(group, i);
        const Number *const limits[] = {each->lower, each->upper};
        for (guint l = 0; l < G_N_ELEMENTS(limits); l++) {
            g_autofree char *words = limits[l] ? figure_number(each, limits[l]) : g_strdup("");
            if (strspn(words + strspn(words, "-"), "0123456789") > 1)
                return TRUE;
        }
    }
    return FALSE;
}

// The tables of figures with limits, in the order in which they are put.
enum { TABLE_SMALL, TABLE_LARGE, TABLE_OTHERS };

// `unit` is that of the first two.
static int table_of(const GPtrArray *group, const char *unit)
{
    return strcmp(unit_of(group), unit) != 0 ? TABLE_OTHERS
           : is_large(group)                 ? TABLE_LARGE
                                             : TABLE_SMALL;
}

static void put_table(Rows *rows, const GPtrArray *groups, const char *unit, int table)
{
    for (guint i = 0; i < groups->len; i++)
        if (table_of(g_ptr_array_index(groups, i), unit) == table)
            measured_group_add(rows, g_ptr_array_index(groups, i));
    if (!rows->rows->len)
        return;
    if (table == TABLE_OTHERS)
        document_heading(rows->document, 2, "In other units");
    rows_put(rows, table == TABLE_OTHERS, TRUE);
}

// `swept volume 585 cc, pass`: added behind what stands there.
static void by_plan_add(GString *words, const GPtrArray *group)
{
    for (guint i = 0; i < group->len; i++) {
        const Requirement *made = g_ptr_array_index(group, i);
        g_autofree char *name = requirement_title(made), *value = figure_value(made);
        g_autofree char *verdict = figure_verdict(made);
        const char *unit = figure_unit(made);
        g_string_append_printf(words, "%s%s %s%s%s, %s", words->len ? "; " : "", name, value,
                               *unit ? " " : "", unit, verdict);
    }
}

// What a formula gives of the plan's own figures, which nobody measured; NULL without any.
static char *by_plan_words(const SheetSource *source)
{
    g_autoptr(GPtrArray) groups = measured_groups(source, BY_PLAN);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < groups->len; i++)
        by_plan_add(words, groups->pdata[i]);
    return words->len
               ? g_strdup_printf("Worked out from the plan alone, not measured: %s.", words->str)
               : NULL;
}

// What `×4` means, by a number that stands on this sheet.
static void put_folded(Rows *rows, const GPtrArray *groups)
{
    guint places = measured_folded(groups);
    g_autofree char *words = g_strdup_printf(
        "×%u   the least and the greatest of so many places; each is on record", places);
    if (!places)
        return;
    document_line(rows->document, words);
    document_keep(rows->document);
}

// Groups in the order of their tables; within one as they were.
static int compare_tables(gconstpointer a, gconstpointer b, gpointer unit)
{
    const GPtrArray *one = *(GPtrArray *const *)a, *other = *(GPtrArray *const *)b;
    return table_of(one, unit) - table_of(other, unit);
}

// Whether it is outside its limits, accepted or not, or nobody can tell.
static gboolean stands_out(const Requirement *made)
{
    return made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT ||
           made->verdict == VERDICT_CONCEDED;
}

// Of each group those that stand out, or the others; groups without any are left out.
static GPtrArray *parted(const GPtrArray *groups, gboolean out)
{
    GPtrArray *parts = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    for (guint i = 0; i < groups->len; i++) {
        const GPtrArray *group = groups->pdata[i];
        g_autoptr(GPtrArray) part = g_ptr_array_new();
        for (guint j = 0; j < group->len; j++)
            if (stands_out(group->pdata[j]) == out)
                g_ptr_array_add(part, group->pdata[j]);
        if (part->len)
            g_ptr_array_add(parts, g_steal_pointer(&part));
    }
    return parts;
}

// In one table, whatever their units: `unit` alone is not said again.
static void put_outstanding(Rows *rows, const GPtrArray *groups, const char *unit)
{
    gboolean units = FALSE;
    for (guint i = 0; i < groups->len; i++) {
        units |= strcmp(unit_of(groups->pdata[i]), unit) != 0;
        measured_group_add(rows, groups->pdata[i]);
    }
    if (groups->len)
        rows_put(rows, units, TRUE);
}

static void put_limited(Rows *rows, const GPtrArray *groups)
{
    const char *unit = most_used(groups);
    g_autoptr(GPtrArray) out = parted(groups, TRUE), others = parted(groups, FALSE);
    g_autofree char *legend =
        g_strconcat(*unit ? "in " : "", unit_said(unit), *unit ? "   " : "",
                    "█ the reading   ▒ what the gauge cannot tell (U, k = 2)   ├ ┤ limits", NULL);
    g_ptr_array_sort_with_data(others, compare_tables, (gpointer)unit);
    document_line(rows->document, legend);
    document_keep(rows->document);
    put_folded(rows, others);
    put_outstanding(rows, out, unit);
    for (int table = TABLE_SMALL; table <= TABLE_OTHERS; table++)
        put_table(rows, others, unit, table);
}

// `explained` is whether a table above has said what `×4` means.
static void put_unlimited(Rows *rows, const GPtrArray *groups, gboolean explained)
{
    document_heading(rows->document, 2, "Without limits");
    if (!explained)
        put_folded(rows, groups);
    for (guint i = 0; i < groups->len; i++)
        measured_group_add(rows, groups->pdata[i]);
    rows_put(rows, TRUE, FALSE);
}

void section_measured(Document *document, const SheetSource *source)
{
    g_autoptr(GPtrArray) limited = measured_groups(source, WITH_LIMITS);
    g_autoptr(GPtrArray) unlimited = measured_groups(source, WITHOUT_LIMITS);
    g_autoptr(GPtrArray) list = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    g_autofree char *by_plan = by_plan_words(source), *others = measured_elsewhere(source);
    Rows rows = {source, document, list};
    if (limited->len + unlimited->len == 0 && !by_plan && !others)
        return;
    document_heading(document, 1, "Measured");
    if (limited->len)
        put_limited(&rows, limited);
    if (unlimited->len)
        put_unlimited(&rows, unlimited, measured_folded(limited) > 0);
    if (others)
        document_line(document, others);
    if (by_plan)
        document_line(document, by_plan);
    document_footnotes(document);
}
