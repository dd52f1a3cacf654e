#include "parts.h"

#include <string.h>

static void part_free(gpointer data)
{
    DocumentPart *part = data;
    g_free(part->text);
    g_strfreev(part->titles);
    g_free(part->align);
    if (part->rows)
        g_ptr_array_unref(part->rows);
    if (part->unders)
        g_ptr_array_unref(part->unders);
    g_free(part);
}

Document *document_new(const char *kind, const char *title)
{
    Document *document = g_new0(Document, 1);
    document->kind = g_strdup(kind);
    document->title = g_strdup(title);
    document->parts = g_ptr_array_new_with_free_func(part_free);
    document->notes = g_ptr_array_new_with_free_func(g_free);
    return document;
}

void document_free(Document *document)
{
    if (!document)
        return;
    g_free(document->kind);
    g_free(document->title);
    g_free(document->head_left);
    g_free(document->head_right);
    g_free(document->foot);
    g_ptr_array_unref(document->parts);
    g_ptr_array_unref(document->notes);
    g_free(document);
}

static DocumentPart *part_add(Document *document, PartSort sort, const char *text)
{
    DocumentPart *part = g_new0(DocumentPart, 1);
    part->sort = sort;
    part->text = g_strdup(text);
    g_ptr_array_add(document->parts, part);
    return part;
}

void document_heading(Document *document, guint level, const char *text)
{
    part_add(document, PART_HEADING, text)->level = level;
}

void document_paragraph(Document *document, const char *text)
{
    part_add(document, PART_PARAGRAPH, text);
}

void document_line(Document *document, const char *text)
{
    part_add(document, PART_LINE, text);
}

void document_keep(Document *document)
{
    g_return_if_fail(document->parts->len > 0);
    DocumentPart *last = g_ptr_array_index(document->parts, document->parts->len - 1);
    last->kept = TRUE;
}

void document_table(Document *document, const DocumentColumn *columns, guint count)
{
    DocumentPart *part = part_add(document, PART_TABLE, NULL);
    part->columns = count;
    part->titles = g_new0(char *, count + 1);
    part->align = g_new0(DocumentAlign, count);
    for (guint i = 0; i < count; i++) {
        part->titles[i] = g_strdup(columns[i].title);
        part->align[i] = columns[i].align;
    }
    part->rows = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    part->unders = g_ptr_array_new_with_free_func(g_free);
}

static DocumentPart *last_table(const Document *document)
{
    for (guint i = document->parts->len; i-- > 0;) {
        DocumentPart *part = g_ptr_array_index(document->parts, i);
        if (part->sort == PART_TABLE)
            return part;
    }
    return NULL;
}

void document_row(Document *document, const char *const *cells)
{
    DocumentPart *table = last_table(document);
    g_return_if_fail(table);
    GStrv row = g_new0(char *, table->columns + 1);
    for (guint i = 0; i < table->columns; i++)
        row[i] = g_strdup(cells[i] ? cells[i] : "");
    g_ptr_array_add(table->rows, row);
    g_ptr_array_add(table->unders, NULL);
}

void document_under(Document *document, const char *text)
{
    DocumentPart *table = last_table(document);
    g_return_if_fail(table && table->rows->len > 0);
    char **under = (char **)&g_ptr_array_index(table->unders, table->rows->len - 1);
    g_free(*under);
    *under = g_strdup(text);
}

void document_tight(Document *document)
{
    DocumentPart *table = last_table(document);
    g_return_if_fail(table);
    table->tight = TRUE;
}

void document_pages(Document *document, const char *left, const char *right, const char *foot)
{
    g_return_if_fail(!document->foot);
    document->head_left = g_strdup(left);
    document->head_right = g_strdup(right);
    document->foot = g_strdup(foot);
}

guint document_footnote(Document *document, const char *text)
{
    for (guint i = 0; i < document->notes->len; i++)
        if (strcmp(g_ptr_array_index(document->notes, i), text) == 0)
            return i + 1;
    g_ptr_array_add(document->notes, g_strdup(text));
    return document->notes->len;
}

void document_footnotes(Document *document)
{
    if (document->printed == document->notes->len)
        return;
    DocumentPart *part = part_add(document, PART_FOOTNOTES, NULL);
    part->first = document->printed + 1;
    part->behind = document->notes->len + 1;
    document->printed = document->notes->len;
}
