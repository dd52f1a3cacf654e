#include "parts.h"

#include <standbook/base/text.h>
#include <string.h>

enum { INDENT = 2, GAP = 2, LEAST = 12, FIGURE = 24 }; // columns

static guint character_width(gunichar character)
{
    return g_unichar_iszerowidth(character) ? 0 : g_unichar_iswide(character) ? 2 : 1;
}

static guint span_width(const char *text, gsize bytes)
{
    guint width = 0;
    for (const char *at = text; at < text + bytes; at = g_utf8_next_char(at))
        width += character_width(g_utf8_get_char(at));
    return width;
}

static guint text_width(const char *text)
{
    return span_width(text, strlen(text));
}

// How many bytes of the text fit into `width` columns; at least one character.
static gsize bytes_within(const char *text, guint width)
{
    const char *at = text;
    guint used = 0;
    while (*at) {
        used += character_width(g_utf8_get_char(at));
        if (used > width && at > text)
            break;
        at = g_utf8_next_char(at);
    }
    return (gsize)(at - text);
}

// Breaks clean text into lines of at most `width` columns (char *), at blanks where there are any.
static GPtrArray *break_lines(const char *text, guint width)
{
    GPtrArray *lines = g_ptr_array_new_with_free_func(g_free);
    while (*text) {
        gsize bytes = bytes_within(text, width);
        if (text[bytes] && text[bytes] != ' ') {
            const char *blank = g_strrstr_len(text, (gssize)bytes, " ");
            if (blank && blank > text)
                bytes = (gsize)(blank - text);
        }
        g_ptr_array_add(lines, g_strchomp(g_strndup(text, bytes)));
        text += bytes;
        text += strspn(text, " ");
    }
    if (lines->len == 0)
        g_ptr_array_add(lines, g_strdup(""));
    return lines;
}

static void put_blanks(GString *out, guint count)
{
    for (guint i = 0; i < count; i++)
        g_string_append_c(out, ' ');
}

static void end_line(GString *out)
{
    while (out->len && out->str[out->len - 1] == ' ')
        g_string_truncate(out, out->len - 1);
    g_string_append_c(out, '\n');
}

// Lines of a text; the second and all after it stand under the text, behind `label`.
static void put_broken(GString *out, const char *label, const char *text)
{
    g_autofree char *clean = text_clean(text, -1);
    guint indent = INDENT + text_width(label);
    g_autoptr(GPtrArray) lines = break_lines(clean, DOCUMENT_WIDTH - INDENT - indent);
    for (guint i = 0; i < lines->len; i++) {
        put_blanks(out, i == 0 ? INDENT : indent);
        if (i == 0)
            g_string_append(out, label);
        g_string_append(out, g_ptr_array_index(lines, i));
        end_line(out);
    }
}

static void put_rule(GString *out)
{
    put_blanks(out, INDENT);
    for (guint i = 0; i < DOCUMENT_WIDTH - 2 * INDENT; i++)
        g_string_append(out, "─");
    end_line(out);
}

static void put_heading(GString *out, const DocumentPart *part)
{
    g_autofree char *capitals =
        g_utf8_validate(part->text, -1, NULL) ? g_utf8_strup(part->text, -1) : g_strdup(part->text);
    end_line(out);
    put_broken(out, "", part->level == 1 ? capitals : part->text);
    if (part->level == 1)
        put_rule(out);
}

// TABLES

typedef struct {
    guint width;
    guint before; // of the point, for ALIGN_POINT
    DocumentAlign align;
} Column;

static guint before_point(const char *cell)
{
    const char *point = strchr(cell, '.');
    return point ? span_width(cell, (gsize)(point - cell)) : text_width(cell);
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

// Words among the figures: then there is no point to stand under.
static gboolean has_words(const GPtrArray *rows, guint column)
{
    for (guint r = 0; r < rows->len; r++)
        if (text_width(((GStrv)g_ptr_array_index(rows, r))[column]) > FIGURE)
            return TRUE;
    return FALSE;
}

static void column_measure(Column *column, DocumentAlign align, const GPtrArray *rows, guint index,
                           const char *title)
{
    column->align = align == ALIGN_POINT && has_words(rows, index) ? ALIGN_LEFT : align;
    for (guint r = 0; r < rows->len; r++)
        column_widen(column, ((GStrv)g_ptr_array_index(rows, r))[index]);
    guint least = text_width(title);
    if (column->width < least) {
        column->before += least - column->width;
        column->width = least;
    }
}

static guint table_width(const Column *columns, guint count)
{
    guint width = 2 * INDENT + GAP * (count - 1);
    for (guint i = 0; i < count; i++)
        width += columns[i].width;
    return width;
}

// The widest column of an alignment up to `most` that can still give a column away.
static Column *widest_column(Column *columns, const DocumentPart *table, DocumentAlign most)
{
    Column *widest = NULL;
    for (guint i = 0; i < table->columns; i++)
        if (columns[i].align <= most && columns[i].width > LEAST &&
            (!widest || columns[i].width > widest->width))
            widest = &columns[i];
    return widest;
}

// Takes from the widest until the table fits: first from columns that may be broken, and only if
// that is not enough from those that should not be.
static void columns_narrow(Column *columns, const DocumentPart *table)
{
    while (table_width(columns, table->columns) > DOCUMENT_WIDTH) {
        Column *widest = widest_column(columns, table, ALIGN_LEFT);
        if (!widest)
            widest = widest_column(columns, table, ALIGN_POINT);
        if (!widest)
            return;
        widest->align = ALIGN_LEFT;
        widest->width--;
    }
}

static GStrv row_clean(const GStrv row, guint count)
{
    GStrv clean = g_new0(char *, count + 1);
    for (guint i = 0; i < count; i++)
        clean[i] = text_clean(row[i], -1);
    return clean;
}

static void put_cell(GString *out, const Column *column, DocumentAlign align, const char *text)
{
    guint width = text_width(text);
    guint lead = align == ALIGN_RIGHT   ? column->width - MIN(width, column->width)
                 : align == ALIGN_POINT ? column->before - MIN(before_point(text), column->before)
                                        : 0;
    put_blanks(out, lead);
    g_string_append(out, text);
    if (lead + width < column->width)
        put_blanks(out, column->width - lead - width);
    put_blanks(out, GAP);
}

static void put_row(GString *out, const Column *columns, const DocumentPart *table, GStrv cells,
                    gboolean titles)
{
    GPtrArray *broken = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    guint height = 1;
    for (guint i = 0; i < table->columns; i++) {
        guint width = columns[i].align == ALIGN_LEFT ? columns[i].width : G_MAXUINT / 2;
        GPtrArray *lines = break_lines(cells[i], width);
        height = MAX(height, lines->len);
        g_ptr_array_add(broken, lines);
    }
    for (guint line = 0; line < height; line++) {
        put_blanks(out, INDENT);
        for (guint i = 0; i < table->columns; i++) {
            const GPtrArray *lines = g_ptr_array_index(broken, i);
            const char *text = line < lines->len ? g_ptr_array_index(lines, line) : "";
            DocumentAlign align = columns[i].align;
            put_cell(out, &columns[i], titles && align == ALIGN_POINT ? ALIGN_RIGHT : align, text);
        }
        end_line(out);
    }
    g_ptr_array_unref(broken);
}

static gboolean has_titles(const DocumentPart *table)
{
    for (guint i = 0; i < table->columns; i++)
        if (*table->titles[i])
            return TRUE;
    return FALSE;
}

static void put_table(GString *out, const DocumentPart *table)
{
    g_autofree Column *columns = g_new0(Column, table->columns);
    g_auto(GStrv) titles = row_clean(table->titles, table->columns);
    g_autoptr(GPtrArray) rows = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    for (guint i = 0; i < table->rows->len; i++)
        g_ptr_array_add(rows, row_clean(g_ptr_array_index(table->rows, i), table->columns));
    for (guint i = 0; i < table->columns; i++)
        column_measure(&columns[i], table->align[i], rows, i, titles[i]);
    columns_narrow(columns, table);
    if (has_titles(table))
        put_row(out, columns, table, titles, TRUE);
    for (guint r = 0; r < rows->len; r++)
        put_row(out, columns, table, g_ptr_array_index(rows, r), FALSE);
}

static void put_footnotes(GString *out, const Document *document, const DocumentPart *part)
{
    for (guint number = part->first; number < part->behind; number++) {
        g_autofree char *label = g_strdup_printf("%u  ", number);
        put_broken(out, label, g_ptr_array_index(document->notes, number - 1));
    }
}

static void put_part(GString *out, const Document *document, const DocumentPart *part,
                     gboolean first)
{
    gboolean parted =
        part->sort == PART_PARAGRAPH || part->sort == PART_TABLE || part->sort == PART_FOOTNOTES;
    if (parted && !first)
        end_line(out);
    switch (part->sort) {
    case PART_HEADING:
        put_heading(out, part);
        break;
    case PART_PARAGRAPH:
    case PART_LINE:
        put_broken(out, "", part->text);
        break;
    case PART_TABLE:
        put_table(out, part);
        break;
    case PART_FOOTNOTES:
        put_footnotes(out, document, part);
        break;
    }
}

char *document_text(const Document *document)
{
    GString *out = g_string_new(NULL);
    put_broken(out, "", document->title);
    put_rule(out);
    for (guint i = 0; i < document->parts->len; i++) {
        const DocumentPart *before = i > 0 ? g_ptr_array_index(document->parts, i - 1) : NULL;
        gboolean first = !before || before->sort == PART_HEADING;
        put_part(out, document, g_ptr_array_index(document->parts, i), first);
    }
    return g_string_free(out, FALSE);
}
