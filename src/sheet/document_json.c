#include "parts.h"

#include <standbook/base/text.h>

static json_t *text_json(const char *text)
{
    g_autofree char *clean = text_clean(text, -1);
    return json_string(clean);
}

static json_t *texts_json(const char *const *texts)
{
    json_t *list = json_array();
    for (; *texts; texts++)
        json_array_append_new(list, text_json(*texts));
    return list;
}

static json_t *table_json(const DocumentPart *table)
{
    json_t *rows = json_array();
    for (guint i = 0; i < table->rows->len; i++) {
        json_t *row = texts_json(g_ptr_array_index(table->rows, i));
        const char *under = g_ptr_array_index(table->unders, i);
        if (under)
            json_array_append_new(row, text_json(under));
        json_array_append_new(rows, row);
    }
    return json_pack("{s:o,s:o}", "columns", texts_json((const char *const *)table->titles), "rows",
                     rows);
}

static json_t *footnotes_json(const Document *document, const DocumentPart *part)
{
    json_t *notes = json_object();
    for (guint number = part->first; number < part->behind; number++) {
        g_autofree char *key = g_strdup_printf("%u", number);
        json_object_set_new(notes, key, text_json(g_ptr_array_index(document->notes, number - 1)));
    }
    return json_pack("{s:o}", "footnotes", notes);
}

static json_t *part_json(const Document *document, const DocumentPart *part)
{
    switch (part->sort) {
    case PART_HEADING:
        return json_pack("{s:o,s:i}", "heading", text_json(part->text), "level", (int)part->level);
    case PART_PARAGRAPH:
        return json_pack("{s:o}", "paragraph", text_json(part->text));
    case PART_LINE:
        return json_pack("{s:o}", "line", text_json(part->text));
    case PART_TABLE:
        return table_json(part);
    case PART_FOOTNOTES:
        return footnotes_json(document, part);
    }
    return NULL;
}

json_t *document_json(const Document *document)
{
    json_t *parts = json_array();
    for (guint i = 0; i < document->parts->len; i++)
        json_array_append_new(parts, part_json(document, g_ptr_array_index(document->parts, i)));
    return json_pack("{s:s,s:o,s:o}", "document", document->kind, "title",
                     text_json(document->title), "parts", parts);
}
