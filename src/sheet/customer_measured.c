// The customer's sheet: every figure with limits as it was left, beside its strip. Figures of the
// unit most used stand in two tables, those below ten and those above, so that the columns are as
// narrow as their figures; all other units follow in a third. The strip shows neither wear limit
// nor aim: what counts here is where the reading lies between its limits. Figures without limits
// stand in a table of their own.
#include "sections.h"

#include <standbook/sheet/strip.h>
#include <string.h>

enum { NAME, VALUE, DOUBT, FROM, STRIP, TO, UNIT, VERDICT, SEE, CELLS };

// Rows of one table, collected before they are put.
typedef struct {
    const SheetSource *source;
    Document *document;
    GPtrArray *rows; // GStrv of CELLS
} Rows;

static const Requirement *requirement_at(const SheetSource *source, guint index)
{
    return g_ptr_array_index(source->assessment->requirements, index);
}

// The last requirement of a check's place in the order of the work: a check read again, or moved to
// a later step, is printed as it was left.
static gboolean is_last(const SheetSource *source, guint index)
{
    const Requirement *one = requirement_at(source, index);
    for (guint i = index + 1; i < source->assessment->requirements->len; i++) {
        const Requirement *other = requirement_at(source, i);
        if (other->asked == one->asked && !other->withdrawn && other->value &&
            strcmp(other->name, one->name) == 0 && strcmp(other->place, one->place) == 0)
            return FALSE;
    }
    return TRUE;
}

// Whether bolts of a mock-up, taken down again since, were tightened until this check passed.
static gboolean is_mock_up(const SheetSource *source, const PlanCheck *check)
{
    gboolean mock_up = FALSE;
    for (guint s = 0; s < source->plan->steps->len; s++) {
        const PlanStep *step = g_ptr_array_index(source->plan->steps, s);
        for (guint t = 0; t < step->tightenings->len; t++) {
            const PlanTightening *each = g_ptr_array_index(step->tightenings, t);
            for (guint i = 0; i < each->stages->len; i++) {
                const Stage *stage = g_ptr_array_index(each->stages, i);
                if (stage->until == check && (each->again || !each->group->then_off))
                    return FALSE;
                mock_up = mock_up || stage->until == check;
            }
        }
    }
    return mock_up;
}

gboolean is_as_left(const SheetSource *source, guint index)
{
    const Requirement *requirement = requirement_at(source, index);
    return requirement->asked == ASKED_READ && !requirement->finding && !requirement->withdrawn &&
           requirement->value && requirement->verdict != VERDICT_NOT_NEEDED &&
           !is_mock_up(source, requirement->check) && is_last(source, index);
}

static gboolean is_plain(const Requirement *requirement)
{
    return (requirement->verdict == VERDICT_PASS || requirement->verdict == VERDICT_NOTED) &&
           !requirement->upheld && !requirement->amended;
}

// Whether a formula that has a value uses it.
static gboolean is_input(const SheetSource *source, const Requirement *requirement)
{
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        const Requirement *each = requirement_at(source, i);
        if (each->check && each->check->formula && each->value && !each->withdrawn &&
            formula_uses(each->check->formula, requirement->name))
            return TRUE;
    }
    return FALSE;
}

// How a figure is printed.
typedef enum { WITH_LIMITS, WITHOUT_LIMITS, BY_PLAN, ON_RECORD_ALONE } Printed;

// A figure without limits that is there for what is worked out of it is printed by that.
static Printed printed_as(const SheetSource *source, guint index)
{
    const Requirement *requirement = requirement_at(source, index);
    gboolean limits = requirement->lower || requirement->upper;
    if (!is_as_left(source, index) || (!limits && is_input(source, requirement)))
        return ON_RECORD_ALONE;
    return requirement_is_by_plan(requirement) ? BY_PLAN : limits ? WITH_LIMITS : WITHOUT_LIMITS;
}

// What is printed so, in groups of one check in one step (GPtrArray of Requirement *).
static GPtrArray *groups_of(const SheetSource *source, Printed printed)
{
    GPtrArray *groups = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    const Requirement *before = NULL;
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        Requirement *each = g_ptr_array_index(source->assessment->requirements, i);
        if (printed_as(source, i) != printed)
            continue;
        if (!before || strcmp(before->name, each->name) != 0 || before->step != each->step)
            g_ptr_array_add(groups, g_ptr_array_new());
        g_ptr_array_add(g_ptr_array_index(groups, groups->len - 1), each);
        before = each;
    }
    return groups;
}

// ROWS ------------------------------------------------------------------------------------------

static char *strip_between(const Requirement *least, const Requirement *most)
{
    const Number *const values[] = {least->value, most->value};
    gboolean one = least == most;
    return strip_draw(&(Strip){.lower = least->lower,
                               .upper = least->upper,
                               .values = values,
                               .count = one ? 1 : 2,
                               .filled = !one,
                               .variance = one ? least->variance : NULL,
                               .bound = least->bound});
}

static void row_add(Rows *rows, const Requirement *requirement, char *name, char *value,
                    char *doubt, char *strip)
{
    const Number *lower = requirement->lower, *upper = requirement->upper;
    GStrv row = g_new0(char *, CELLS + 1);
    row[NAME] = name;
    row[VALUE] = value;
    row[DOUBT] = doubt;
    row[FROM] = lower ? figure_number(requirement, lower) : g_strdup("");
    row[STRIP] = strip;
    row[TO] = upper ? figure_number(requirement, upper) : g_strdup("");
    row[UNIT] = g_strdup(figure_unit(requirement));
    row[VERDICT] = g_strdup(verdict_words(requirement->verdict));
    row[SEE] = footnotes_of(rows->document, rows->source, requirement);
    g_ptr_array_add(rows->rows, row);
}

static int compare_values(gconstpointer a, gconstpointer b)
{
    const Requirement *one = *(Requirement *const *)a, *other = *(Requirement *const *)b;
    return number_compare(one->value, other->value);
}

// `to .154` behind 0.146; the whole figure where its integer part is another.
static char *upper_words(const char *least, const char *most)
{
    const char *point = strchr(most, '.');
    if (strcmp(least, most) == 0)
        return g_strdup("");
    gboolean same = point && strncmp(least, most, (gsize)(point + 1 - most)) == 0;
    gboolean minus = *most == '-';
    return g_strconcat("to ", same && minus ? "-" : "", same ? point : most, NULL);
}

// Puts what stands beside the others that share the last row behind what it has of the first.
static void note_others(Rows *rows, const GPtrArray *folded)
{
    GStrv row = g_ptr_array_index(rows->rows, rows->rows->len - 1);
    GString *numbers = g_string_new(row[SEE]);
    for (guint i = 1; i < folded->len; i++)
        footnotes_add(numbers, rows->document, rows->source, folded->pdata[i]);
    g_free(row[SEE]);
    row[SEE] = g_string_free(numbers, FALSE);
}

// The least and the greatest of places that all passed with the same limits.
static void range_add(Rows *rows, GPtrArray *plain)
{
    g_ptr_array_sort(plain, compare_values);
    const Requirement *first = g_ptr_array_index(plain, 0);
    const Requirement *last = g_ptr_array_index(plain, plain->len - 1);
    g_autofree char *most = figure_value(last);
    char *least = figure_value(first);
    row_add(rows, first, g_strdup_printf("%s ×%u", first->name, plain->len), least,
            upper_words(least, most), strip_between(first, last));
    note_others(rows, plain);
}

static gboolean same_limits(const GPtrArray *group)
{
    const Requirement *first = g_ptr_array_index(group, 0);
    g_autofree char *limits = figure_limits(first);
    for (guint i = 1; i < group->len; i++) {
        g_autofree char *other = figure_limits(g_ptr_array_index(group, i));
        if (strcmp(limits, other) != 0)
            return FALSE;
    }
    return TRUE;
}

// Places of a group that simply passed and stand in one row; one alone stands by its name.
static GPtrArray *folded_of(const GPtrArray *group)
{
    gboolean one_by_one = group->len == 1 || !same_limits(group);
    GPtrArray *plain = g_ptr_array_new();
    for (guint i = 0; i < group->len && !one_by_one; i++)
        if (is_plain(g_ptr_array_index(group, i)))
            g_ptr_array_add(plain, g_ptr_array_index(group, i));
    if (plain->len == 1)
        g_ptr_array_set_size(plain, 0);
    return plain;
}

// How many places stand in the first row that has more than one; 0 without any.
static guint first_folded(const GPtrArray *groups)
{
    for (guint i = 0; i < groups->len; i++) {
        g_autoptr(GPtrArray) folded = folded_of(g_ptr_array_index(groups, i));
        if (folded->len)
            return folded->len;
    }
    return 0;
}

// How many tries it took, once for all places.
static void note_tries(Rows *rows, const GPtrArray *group, guint first)
{
    const Requirement *made = g_ptr_array_index(group, 0);
    char *words = tries_words(rows->source, made->check);
    if (!words)
        return;
    GStrv row = g_ptr_array_index(rows->rows, first);
    GString *numbers = g_string_new(row[SEE]);
    note_add(numbers, rows->document, words);
    g_free(row[SEE]);
    row[SEE] = g_string_free(numbers, FALSE);
}

// Places that simply passed stand in one row, then the others one by one.
static void group_add(Rows *rows, const GPtrArray *group)
{
    guint first = rows->rows->len;
    g_autoptr(GPtrArray) folded = folded_of(group);
    for (guint i = 0; i < group->len; i++) {
        Requirement *each = g_ptr_array_index(group, i);
        if (i == 0 && folded->len)
            range_add(rows, folded);
        if (!g_ptr_array_find(folded, each, NULL))
            row_add(rows, each, requirement_title(each), figure_value(each), figure_doubt(each),
                    strip_between(each, each));
    }
    note_tries(rows, group, first);
}

static gboolean is_reading(gunichar sign)
{
    return sign == 0x2588 || sign == '<' || sign == '>'; // █
}

// From the first to the last cell of a row's strip that must be seen: the limits, and a reading
// outside them, but neither the doubt beyond nor how far a reading lies on a side without a limit.
static void cells_needed(const GStrv row, guint *first, guint *last)
{
    guint least = *row[FROM] ? 0 : STRIP_LOWER, most = *row[TO] ? STRIP_CELLS : STRIP_UPPER;
    guint cell = 0;
    for (const char *at = row[STRIP]; *at; at = g_utf8_next_char(at), cell++) {
        gboolean seen = is_reading(g_utf8_get_char(at)) && cell >= least && cell <= most;
        *first = seen ? MIN(*first, cell) : *first;
        *last = seen ? MAX(*last, cell) : *last;
    }
}

// The cells from the first to the last; a reading beyond is `<` or `>` on the cell at that end.
static char *strip_cut(const char *strip, guint first, guint last)
{
    GString *cut = g_string_new(NULL);
    gboolean before = FALSE, after = FALSE;
    guint cell = 0;
    for (const char *at = strip; *at; at = g_utf8_next_char(at), cell++) {
        gboolean reading = is_reading(g_utf8_get_char(at));
        before |= reading && cell < first;
        after |= reading && cell > last;
        if (cell >= first && cell <= last)
            g_string_append_unichar(cut, cell == first && before ? '<' : g_utf8_get_char(at));
    }
    if (after) {
        g_string_truncate(cut, (gsize)(g_utf8_prev_char(cut->str + cut->len) - cut->str));
        g_string_append_c(cut, '>');
    }
    return g_string_free(cut, FALSE);
}

// All strips of a table are cut alike, so that their limits stand in one column.
static void strips_cut(const Rows *rows)
{
    guint first = STRIP_LOWER, last = STRIP_UPPER;
    for (guint i = 0; i < rows->rows->len; i++)
        cells_needed(g_ptr_array_index(rows->rows, i), &first, &last);
    for (guint i = 0; i < rows->rows->len; i++) {
        GStrv row = g_ptr_array_index(rows->rows, i);
        char *cut = strip_cut(row[STRIP], first, last);
        g_free(row[STRIP]);
        row[STRIP] = cut;
    }
}

// TABLES ----------------------------------------------------------------------------------------

// Which columns a table has: units where these differ, a strip between its limits where there are
// any.
static gboolean has_column(guint column, gboolean units, gboolean limits)
{
    gboolean of_limits = column == FROM || column == STRIP || column == TO;
    return (units || column != UNIT) && (limits || !of_limits);
}

// Puts a table of the rows and leaves none.
static void rows_put(Rows *rows, gboolean units, gboolean limits)
{
    static const DocumentColumn all[CELLS] = {
        [NAME] = {"", ALIGN_LEFT},  [VALUE] = {"", ALIGN_POINT},   [DOUBT] = {"", ALIGN_WHOLE},
        [FROM] = {"", ALIGN_RIGHT}, [STRIP] = {"", ALIGN_WHOLE},   [TO] = {"", ALIGN_WHOLE},
        [UNIT] = {"", ALIGN_WHOLE}, [VERDICT] = {"", ALIGN_WHOLE}, [SEE] = {"", ALIGN_NOTES}};
    DocumentColumn columns[CELLS];
    guint count = 0;
    for (guint i = 0; i < CELLS; i++)
        if (has_column(i, units, limits))
            columns[count++] = all[i];
    if (limits)
        strips_cut(rows);
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
            group_add(rows, g_ptr_array_index(groups, i));
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
    g_autoptr(GPtrArray) groups = groups_of(source, BY_PLAN);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < groups->len; i++)
        by_plan_add(words, groups->pdata[i]);
    return words->len
               ? g_strdup_printf("Worked out from the plan alone, not measured: %s.", words->str)
               : NULL;
}

// How many readings are on record alone: as found, of a mock-up, read again later, or gone into a
// figure; NULL without any.
static char *others_words(const SheetSource *source)
{
    guint count = 0;
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        const Requirement *each = requirement_at(source, i);
        gboolean read = each->asked == ASKED_READ && each->value && !each->check->formula;
        count += read && printed_as(source, i) == ON_RECORD_ALONE ? 1 : 0;
    }
    if (count == 0)
        return NULL;
    return g_strdup_printf("%u more reading%s on the workshop's record.", count,
                           count == 1 ? " is" : "s are");
}

// What `×4` means, by a number that stands on this sheet.
static void put_folded(Rows *rows, const GPtrArray *groups)
{
    guint places = first_folded(groups);
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

static void put_limited(Rows *rows, GPtrArray *groups)
{
    const char *unit = most_used(groups);
    g_autofree char *legend =
        g_strconcat(*unit ? "in " : "", unit_said(unit), *unit ? "   " : "",
                    "█ the reading   ▒ what the gauge cannot tell (U, k = 2)   ├ ┤ limits", NULL);
    g_ptr_array_sort_with_data(groups, compare_tables, (gpointer)unit);
    document_line(rows->document, legend);
    document_keep(rows->document);
    put_folded(rows, groups);
    for (int table = TABLE_SMALL; table <= TABLE_OTHERS; table++)
        put_table(rows, groups, unit, table);
}

// `explained` is whether a table above has said what `×4` means.
static void put_unlimited(Rows *rows, const GPtrArray *groups, gboolean explained)
{
    document_heading(rows->document, 2, "Without limits");
    if (!explained)
        put_folded(rows, groups);
    for (guint i = 0; i < groups->len; i++)
        group_add(rows, groups->pdata[i]);
    rows_put(rows, TRUE, FALSE);
}

void section_measured(Document *document, const SheetSource *source)
{
    g_autoptr(GPtrArray) limited = groups_of(source, WITH_LIMITS);
    g_autoptr(GPtrArray) unlimited = groups_of(source, WITHOUT_LIMITS);
    g_autoptr(GPtrArray) list = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    g_autofree char *by_plan = by_plan_words(source), *others = others_words(source);
    Rows rows = {source, document, list};
    if (limited->len + unlimited->len == 0 && !by_plan && !others)
        return;
    document_heading(document, 1, "Measured");
    if (by_plan)
        document_line(document, by_plan);
    if (limited->len)
        put_limited(&rows, limited);
    if (unlimited->len)
        put_unlimited(&rows, unlimited, first_folded(limited) > 0);
    if (others)
        document_line(document, others);
    document_footnotes(document);
}
