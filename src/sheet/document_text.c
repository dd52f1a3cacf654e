#include "lines.h"
#include "parts.h"

#include <standbook/base/text.h>

enum { INDENT = 2 }; // columns

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
