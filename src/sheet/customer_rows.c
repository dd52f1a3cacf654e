// The rows of the customer's measured figures: places that passed alike in one, each with its
// strip. The strip shows neither wear limit nor aim: what counts here is where the reading lies
// between its limits.
#include "measured.h"
#include "sections.h"

#include <standbook/sheet/strip.h>
#include <string.h>

static gboolean is_plain(const Requirement *requirement)
{
    return (requirement->verdict == VERDICT_PASS || requirement->verdict == VERDICT_NOTED) &&
           !requirement->upheld && !requirement->amended;
}

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
    row[CELL_NAME] = name;
    row[CELL_VALUE] = value;
    row[CELL_DOUBT] = doubt;
    row[CELL_FROM] = lower ? figure_number(requirement, lower) : g_strdup("");
    row[CELL_STRIP] = strip;
    row[CELL_TO] = upper ? figure_number(requirement, upper) : g_strdup("");
    row[CELL_UNIT] = g_strdup(figure_unit(requirement));
    row[CELL_VERDICT] = g_strdup(verdict_words(requirement->verdict));
    row[CELL_SEE] = footnotes_of(rows->document, rows->source, requirement);
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
    GString *numbers = g_string_new(row[CELL_SEE]);
    for (guint i = 1; i < folded->len; i++)
        footnotes_add(numbers, rows->document, rows->source, folded->pdata[i]);
    g_free(row[CELL_SEE]);
    row[CELL_SEE] = g_string_free(numbers, FALSE);
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

guint measured_folded(const GPtrArray *groups)
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
    GString *numbers = g_string_new(row[CELL_SEE]);
    note_add(numbers, rows->document, words);
    g_free(row[CELL_SEE]);
    row[CELL_SEE] = g_string_free(numbers, FALSE);
}

void measured_group_add(Rows *rows, const GPtrArray *group)
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
    guint least = *row[CELL_FROM] ? 0 : STRIP_LOWER,
          most = *row[CELL_TO] ? STRIP_CELLS : STRIP_UPPER;
    guint cell = 0;
    for (const char *at = row[CELL_STRIP]; *at; at = g_utf8_next_char(at), cell++) {
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

void measured_strips_cut(const Rows *rows)
{
    guint first = STRIP_LOWER, last = STRIP_UPPER;
    for (guint i = 0; i < rows->rows->len; i++)
        cells_needed(g_ptr_array_index(rows->rows, i), &first, &last);
    for (guint i = 0; i < rows->rows->len; i++) {
        GStrv row = g_ptr_array_index(rows->rows, i);
        char *cut = strip_cut(row[CELL_STRIP], first, last);
        g_free(row[CELL_STRIP]);
        row[CELL_STRIP] = cut;
    }
}
