// A table as text. Where it is wider than the page, columns of words are narrowed, one column of
// characters at a time and always there where it costs the fewest lines; no word is broken as long
// as there is another way.
#include "lines.h"
#include "parts.h"

#include <standbook/base/text.h>
#include <string.h>

enum { WORDS = 12, FIGURE = 16, UNDER = 6 }; // columns

typedef struct {
    guint width;
    guint least;  // its longest word
    guint before; // of the point, for ALIGN_POINT
    DocumentAlign align;
    GPtrArray *words; // GArray * of word widths: one for the title, one for each row
    guint *heights;   // lines of each of these at `width`
} Column;

// A table laid out: `cells` has the clean titles, then the clean rows (GStrv).
typedef struct {
    GPtrArray *cells;
    Column *columns;
    guint count;
    guint gap; // blanks between columns
} Layout;

static gboolean is_words(const Column *column)
{
    return column->align == ALIGN_LEFT || column->align == ALIGN_NOTES;
}

// What stands in front of the point: the first figure's sign and digits, else all of it.
static guint before_point(const char *cell)
{
    const char *digits = cell + strspn(cell, "-+<>");
    gsize span = (gsize)(digits - cell) + strspn(digits, "0123456789");
    return g_ascii_isdigit(*digits) ? span_width(cell, span) : text_width(cell);
}

static void column_widen(Column *column, const char *cell)
{
    guint before = before_point(cell), behind = text_width(cell) - before;
    if (column->align == ALIGN_POINT && column->width - column->before < behind)
        column->width = column->before + behind;
    if (column->align == ALIGN_POINT && column->before < before) {
        column->width += before - column->before;
        column->before = before;
    }
    if (column->align != ALIGN_POINT)
        column->width = MAX(column->width, text_width(cell));
}

static const char *cell_at(const Layout *layout, guint row, guint column)
{
    return ((GStrv)g_ptr_array_index(layout->cells, row))[column];
}

static void column_measure(const Layout *layout, guint index, DocumentAlign align)
{
    Column *column = &layout->columns[index];
    column->align = align;
    for (guint r = 1; r < layout->cells->len; r++)
        column_widen(column, cell_at(layout, r, index));
    guint title = text_width(cell_at(layout, 0, index));
    if (column->width < title) {
        column->before += title - column->width;
        column->width = title;
    }
    column->words = g_ptr_array_new_with_free_func((GDestroyNotify)g_array_unref);
    column->heights = g_new0(guint, layout->cells->len);
    for (guint r = 0; r < layout->cells->len; r++) {
        GArray *words = word_widths(cell_at(layout, r, index));
        for (guint i = 0; i < words->len; i++)
            column->least = MAX(column->least, g_array_index(words, guint, i));
        g_ptr_array_add(column->words, words);
        column->heights[r] = 1;
    }
}

static guint height_in(const Column *column, guint row, guint width)
{
    return is_words(column) ? lines_of_words(g_ptr_array_index(column->words, row), width) : 1;
}

static void column_set(const Layout *layout, Column *column, guint width)
{
    column->width = width;
    for (guint r = 0; r < layout->cells->len; r++)
        column->heights[r] = height_in(column, r, width);
}

static guint layout_width(const Layout *layout)
{
    guint width = MARGIN + layout->gap * (layout->count - 1);
    for (guint i = 0; i < layout->count; i++)
        width += layout->columns[i].width;
    return width;
}

// Up to the margin; a tight table up to the edge of the page.
static guint width_allowed(const Layout *layout)
{
    return DOCUMENT_WIDTH - (layout->gap > 1 ? MARGIN : 0);
}

// How many lines the table takes once that column is narrower by one.
static guint lines_without(const Layout *layout, guint narrowed)
{
    guint lines = 0;
    for (guint r = 0; r < layout->cells->len; r++) {
        const Column *column = &layout->columns[narrowed];
        guint height = height_in(column, r, column->width - 1);
        for (guint i = 0; i < layout->count; i++)
            if (i != narrowed)
                height = MAX(height, layout->columns[i].heights[r]);
        lines += height;
    }
    return lines;
}

// The column of words to narrow next: it costs the fewest lines, of several it is the widest. NULL
// if none can be narrowed without breaking a word.
static Column *cheapest_column(const Layout *layout)
{
    Column *cheapest = NULL;
    guint fewest = 0;
    for (guint i = 0; i < layout->count; i++) {
        Column *column = &layout->columns[i];
        if (!is_words(column) || column->width <= MAX(column->least, 1))
            continue;
        guint lines = lines_without(layout, i);
        if (!cheapest || lines < fewest || (lines == fewest && column->width > cheapest->width)) {
            cheapest = column;
            fewest = lines;
        }
    }
    return cheapest;
}

// Where columns of words have no more to give: the widest column that should not be broken and has
// blanks, else simply the widest, whose words are then broken.
static Column *widest_column(const Layout *layout)
{
    Column *widest = NULL, *blank = NULL;
    for (guint i = 0; i < layout->count; i++) {
        Column *column = &layout->columns[i];
        if (!widest || column->width > widest->width)
            widest = column;
        if (!is_words(column) && column->least < column->width &&
            (!blank || column->width > blank->width))
            blank = column;
    }
    return blank ? blank : widest;
}

static void layout_narrow(const Layout *layout)
{
    for (guint i = 0; i < layout->count; i++)
        if (is_words(&layout->columns[i]))
            column_set(layout, &layout->columns[i],
                       MIN(layout->columns[i].width, DOCUMENT_WIDTH - 2 * MARGIN));
    while (layout_width(layout) > width_allowed(layout)) {
        Column *column = cheapest_column(layout);
        if (!column) {
            column = widest_column(layout);
            column->align = ALIGN_LEFT;
        }
        column_set(layout, column, column->width - 1);
    }
}

static void put_cell(GString *out, const Column *column, DocumentAlign align, guint gap,
                     const char *text)
{
    guint width = text_width(text);
    guint lead = align == ALIGN_RIGHT   ? column->width - MIN(width, column->width)
                 : align == ALIGN_POINT ? column->before - MIN(before_point(text), column->before)
                                        : 0;
    put_blanks(out, lead);
    g_string_append(out, text);
    if (lead + width < column->width)
        put_blanks(out, column->width - lead - width);
    put_blanks(out, gap);
}

static void put_row(GString *out, const Layout *layout, guint row)
{
    GPtrArray *broken = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    guint height = 1;
    for (guint i = 0; i < layout->count; i++) {
        const Column *column = &layout->columns[i];
        guint width = is_words(column) ? column->width : G_MAXUINT / 2;
        GPtrArray *lines = break_lines(cell_at(layout, row, i), width);
        height = MAX(height, lines->len);
        g_ptr_array_add(broken, lines);
    }
    for (guint line = 0; line < height; line++) {
        put_blanks(out, MARGIN);
        for (guint i = 0; i < layout->count; i++) {
            const GPtrArray *lines = g_ptr_array_index(broken, i);
            const char *text = line < lines->len ? g_ptr_array_index(lines, line) : "";
            DocumentAlign align = layout->columns[i].align;
            put_cell(out, &layout->columns[i],
                     row == 0 && align == ALIGN_POINT ? ALIGN_RIGHT : align, layout->gap, text);
        }
        end_line(out);
    }
    g_ptr_array_unref(broken);
}

static void put_under(GString *out, const char *text)
{
    g_autofree char *clean = text_clean(text, -1);
    g_autoptr(GPtrArray) lines = break_lines(clean, DOCUMENT_WIDTH - MARGIN - UNDER);
    for (guint i = 0; i < lines->len; i++) {
        put_blanks(out, UNDER);
        g_string_append(out, g_ptr_array_index(lines, i));
        end_line(out);
    }
}

static GStrv row_clean(const GStrv row, guint count)
{
    GStrv clean = g_new0(char *, count + 1);
    for (guint i = 0; i < count; i++)
        clean[i] = text_clean(row[i], -1);
    return clean;
}

static gboolean has_titles(const DocumentPart *table)
{
    for (guint i = 0; i < table->columns; i++)
        if (*table->titles[i])
            return TRUE;
    return FALSE;
}

// What is no figure, or no longer one.
static gboolean is_said(const char *cell)
{
    return before_point(cell) > WORDS || text_width(cell) > FIGURE;
}

// Words among figures are taken out of their cell, to stand under the row. NULL where there are
// none.
static char *words_taken(const DocumentPart *table, GStrv row)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < table->columns; i++) {
        if (table->align[i] != ALIGN_POINT || !is_said(row[i]))
            continue;
        g_string_append_printf(words, "%s%s", words->len ? "; " : "", row[i]);
        *row[i] = '\0';
    }
    return g_string_free(words, words->len == 0);
}

static void columns_clear(Column *columns, guint count)
{
    for (guint i = 0; i < count; i++) {
        g_ptr_array_unref(columns[i].words);
        g_free(columns[i].heights);
        columns[i] = (Column){0};
    }
}

static void columns_measure(const Layout *layout, const DocumentPart *table)
{
    for (guint i = 0; i < table->columns; i++)
        column_measure(layout, i, table->align[i]);
}

// Where the table is too wide, words among its figures leave them the room: what of each row stands
// under it (char *, NULL for nothing).
static GPtrArray *layout_words(const Layout *layout, const DocumentPart *table)
{
    GPtrArray *taken = g_ptr_array_new_with_free_func(g_free);
    gboolean wide = layout_width(layout) > width_allowed(layout);
    for (guint r = 0; r < layout->cells->len; r++)
        g_ptr_array_add(taken, wide ? words_taken(table, layout->cells->pdata[r]) : NULL);
    if (wide) {
        columns_clear(layout->columns, layout->count);
        columns_measure(layout, table);
    }
    return taken;
}

GPtrArray *table_lines(const DocumentPart *table)
{
    g_autofree Column *columns = g_new0(Column, table->columns);
    g_autoptr(GPtrArray) cells = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    const Layout layout = {cells, columns, table->columns, table->tight ? 1 : 2};
    GPtrArray *lines = g_ptr_array_new_with_free_func(g_free);
    g_ptr_array_add(cells, row_clean(table->titles, table->columns));
    for (guint r = 0; r < table->rows->len; r++)
        g_ptr_array_add(cells, row_clean(g_ptr_array_index(table->rows, r), table->columns));
    columns_measure(&layout, table);
    g_autoptr(GPtrArray) taken = layout_words(&layout, table);
    layout_narrow(&layout);
    for (guint r = 0; r < cells->len; r++) {
        GString *text = g_string_new(NULL);
        if (r > 0 || has_titles(table))
            put_row(text, &layout, r);
        if (taken->pdata[r])
            put_under(text, taken->pdata[r]);
        if (r > 0 && g_ptr_array_index(table->unders, r - 1))
            put_under(text, g_ptr_array_index(table->unders, r - 1));
        g_ptr_array_add(lines, g_string_free(text, FALSE));
    }
    columns_clear(columns, table->columns);
    return lines;
}
