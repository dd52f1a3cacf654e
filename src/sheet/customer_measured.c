// The customer's sheet: every figure with limits as it was left, beside its strip. Figures of the
// unit most used stand in two tables, those below ten and those above, so that the columns are as
// narrow as their figures; all other units follow in a third. The strip shows neither wear limit
// nor aim: what counts here is where the reading lies between its limits.
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
    return requirement->verdict == VERDICT_PASS && !requirement->upheld && !requirement->amended;
}

// What was measured, or what the plan alone comes to, in groups of one check in one step (GPtrArray
// of Requirement *).
static GPtrArray *groups_of(const SheetSource *source, gboolean by_plan)
{
    GPtrArray *groups = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    const Requirement *before = NULL;
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        Requirement *each = g_ptr_array_index(source->assessment->requirements, i);
        if (!is_as_left(source, i) || (!each->lower && !each->upper) ||
            requirement_is_by_plan(each) != by_plan)
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

static gboolean any_folded(const GPtrArray *groups)
{
    for (guint i = 0; i < groups->len; i++) {
        g_autoptr(GPtrArray) folded = folded_of(g_ptr_array_index(groups, i));
        if (folded->len)
            return TRUE;
    }
    return FALSE;
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

// From the first to the last cell of a strip that must be seen: the limits, and a reading outside
// them, but not the doubt beyond.
static void cells_needed(const char *strip, guint *first, guint *last)
{
    guint cell = 0;
    for (const char *at = strip; *at; at = g_utf8_next_char(at), cell++) {
        gunichar sign = g_utf8_get_char(at);
        gboolean reading = sign == 0x2588 || sign == '<' || sign == '>'; // █
        *first = reading ? MIN(*first, cell) : *first;
        *last = reading ? MAX(*last, cell) : *last;
    }
}

// All strips of a table are cut alike, so that their limits stand in one column.
static void strips_cut(const Rows *rows)
{
    guint first = STRIP_LOWER, last = STRIP_UPPER;
    for (guint i = 0; i < rows->rows->len; i++)
        cells_needed(((GStrv)g_ptr_array_index(rows->rows, i))[STRIP], &first, &last);
    for (guint i = 0; i < rows->rows->len; i++) {
        GStrv row = g_ptr_array_index(rows->rows, i);
        char *cut = g_utf8_substring(row[STRIP], first, last + 1);
        g_free(row[STRIP]);
        row[STRIP] = cut;
    }
}

// TABLES ----------------------------------------------------------------------------------------

// Puts a table of the rows and leaves none; with their units where these differ.
static void rows_put(Rows *rows, gboolean units)
{
    static const DocumentColumn all[CELLS] = {
        [NAME] = {"", ALIGN_LEFT},  [VALUE] = {"", ALIGN_POINT},   [DOUBT] = {"", ALIGN_WHOLE},
        [FROM] = {"", ALIGN_RIGHT}, [STRIP] = {"", ALIGN_WHOLE},   [TO] = {"", ALIGN_WHOLE},
        [UNIT] = {"", ALIGN_WHOLE}, [VERDICT] = {"", ALIGN_WHOLE}, [SEE] = {"", ALIGN_NOTES}};
    DocumentColumn columns[CELLS];
    guint count = 0;
    for (guint i = 0; i < CELLS; i++)
        if (i != UNIT || units)
            columns[count++] = all[i];
    strips_cut(rows);
    document_table(rows->document, columns, count);
    document_tight(rows->document);
    for (guint r = 0; r < rows->rows->len; r++) {
        const GStrv row = g_ptr_array_index(rows->rows, r);
        const char *cells[CELLS];
        for (guint i = 0, to = 0; i < CELLS; i++)
            if (i != UNIT || units)
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

static void put_sized(Rows *rows, const GPtrArray *groups, const char *unit, gboolean large)
{
    for (guint i = 0; i < groups->len; i++) {
        const GPtrArray *group = g_ptr_array_index(groups, i);
        if (strcmp(unit_of(group), unit) == 0 && is_large(group) == large)
            group_add(rows, group);
    }
    if (rows->rows->len)
        rows_put(rows, FALSE);
}

static void put_others(Rows *rows, const GPtrArray *groups, const char *unit)
{
    for (guint i = 0; i < groups->len; i++)
        if (strcmp(unit_of(g_ptr_array_index(groups, i)), unit) != 0)
            group_add(rows, g_ptr_array_index(groups, i));
    if (!rows->rows->len)
        return;
    document_heading(rows->document, 2, "In other units");
    rows_put(rows, TRUE);
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
    g_autoptr(GPtrArray) groups = groups_of(source, TRUE);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < groups->len; i++)
        by_plan_add(words, groups->pdata[i]);
    return words->len
               ? g_strdup_printf("Worked out from the plan alone, not measured: %s.", words->str)
               : NULL;
}

// Readings that have nothing to be held against, where there is nothing else to show; NULL without
// any.
static char *unlimited_words(const SheetSource *source)
{
    guint count = 0;
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        const Requirement *each = requirement_at(source, i);
        gboolean typed = is_as_left(source, i) && !each->check->formula;
        count += typed && !each->lower && !each->upper ? 1 : 0;
    }
    if (count == 0)
        return NULL;
    return g_strdup_printf("%u reading%s without limits %s on the workshop's record.", count,
                           count == 1 ? "" : "s", count == 1 ? "is" : "are");
}

// The tables of figures with limits.
static void put_tables(Document *document, const SheetSource *source, const GPtrArray *groups)
{
    g_autoptr(GPtrArray) list = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    Rows rows = {source, document, list};
    const char *unit = most_used(groups);
    g_autofree char *legend =
        g_strconcat(*unit ? "in " : "", unit_said(unit), *unit ? "   " : "",
                    "█ the reading   ▒ what the gauge cannot tell (U, k = 2)   ├ ┤ limits", NULL);
    const char *folded = "×4   the least and the greatest of so many places; each is on record";
    document_line(document, legend);
    if (any_folded(groups))
        document_line(document, folded);
    put_sized(&rows, groups, unit, FALSE);
    put_sized(&rows, groups, unit, TRUE);
    put_others(&rows, groups, unit);
}

void section_measured(Document *document, const SheetSource *source)
{
    g_autoptr(GPtrArray) groups = groups_of(source, FALSE);
    g_autofree char *unlimited = groups->len ? NULL : unlimited_words(source);
    g_autofree char *by_plan = by_plan_words(source);
    if (groups->len == 0 && !unlimited && !by_plan)
        return;
    document_heading(document, 1, "Measured");
    if (unlimited)
        document_line(document, unlimited);
    if (by_plan)
        document_line(document, by_plan);
    if (groups->len)
        put_tables(document, source, groups);
    document_footnotes(document);
}
