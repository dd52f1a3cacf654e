#include "lines.h"
#include "parts.h"

#include <standbook/base/text.h>
#include <string.h>

// Lines of a text; the second and all after it stand under the text, behind `label`.
static void put_broken(GString *out, const char *label, const char *text)
{
    g_autofree char *clean = text_clean(text, -1);
    guint indent = MARGIN + text_width(label);
    g_autoptr(GPtrArray) lines = break_lines(clean, DOCUMENT_WIDTH - MARGIN - indent);
    for (guint i = 0; i < lines->len; i++) {
        put_blanks(out, i == 0 ? MARGIN : indent);
        if (i == 0)
            g_string_append(out, label);
        g_string_append(out, g_ptr_array_index(lines, i));
        end_line(out);
    }
}

// BLOCKS

static void block_free(gpointer data)
{
    Block *block = data;
    g_free(block->text);
    g_strfreev(block->notes);
    g_free(block);
}

static Block *block_add(GPtrArray *blocks, char *text, gboolean parted)
{
    Block *block = g_new0(Block, 1);
    block->text = text;
    block->parted = parted;
    for (const char *at = text; *at; at++)
        block->lines += *at == '\n';
    g_ptr_array_add(blocks, block);
    return block;
}

// In pages the rule above and below each is enough.
static void add_heading(GPtrArray *blocks, const DocumentPart *part, gboolean ruled)
{
    GString *text = g_string_new(NULL);
    g_autofree char *capitals =
        g_utf8_validate(part->text, -1, NULL) ? g_utf8_strup(part->text, -1) : g_strdup(part->text);
    put_broken(text, "", part->level == 1 ? capitals : part->text);
    if (part->level == 1 && ruled)
        put_rule(text);
    block_add(blocks, g_string_free(text, FALSE), TRUE)->kept = TRUE;
}

// The numbers that stand in a row's cells for footnotes.
static GStrv notes_of_row(const DocumentPart *table, guint row)
{
    const GStrv cells = g_ptr_array_index(table->rows, row);
    for (guint i = 0; i < table->columns; i++)
        if (table->align[i] == ALIGN_NOTES && *cells[i])
            return g_strsplit(cells[i], " ", -1);
    return NULL;
}

static void add_table(GPtrArray *blocks, const DocumentPart *table, gboolean parted)
{
    g_autoptr(GPtrArray) lines = table_lines(table);
    for (guint i = 0; i < lines->len; i++) {
        const char *text = g_ptr_array_index(lines, i);
        if (!*text)
            continue;
        Block *block = block_add(blocks, g_strdup(text), parted);
        block->kept = i == 0 && lines->len > 1;
        block->notes = i > 0 ? notes_of_row(table, i - 1) : NULL;
        parted = FALSE;
    }
}

char *footnote_text(const Document *document, guint number)
{
    GString *text = g_string_new(NULL);
    g_autofree char *label = g_strdup_printf("%u  ", number);
    put_broken(text, label, g_ptr_array_index(document->notes, number - 1));
    return g_string_free(text, FALSE);
}

static void add_footnotes(GPtrArray *blocks, const Document *document, const DocumentPart *part,
                          gboolean parted)
{
    for (guint number = part->first; number < part->behind; number++)
        block_add(blocks, footnote_text(document, number), parted && number == part->first)
            ->footnotes = TRUE;
}

static void add_text(GPtrArray *blocks, const DocumentPart *part, gboolean parted)
{
    GString *lines = g_string_new(NULL);
    put_broken(lines, "", part->text);
    block_add(blocks, g_string_free(lines, FALSE), parted)->kept = part->kept;
}

GPtrArray *document_blocks(const Document *document)
{
    GPtrArray *blocks = g_ptr_array_new_with_free_func(block_free);
    for (guint i = 0; i < document->parts->len; i++) {
        const DocumentPart *part = g_ptr_array_index(document->parts, i);
        const DocumentPart *before = i > 0 ? g_ptr_array_index(document->parts, i - 1) : NULL;
        gboolean parted = before && before->sort != PART_HEADING;
        switch (part->sort) {
        case PART_HEADING:
            add_heading(blocks, part, !document->head_left);
            break;
        case PART_PARAGRAPH:
        case PART_LINE:
            add_text(blocks, part, parted && part->sort == PART_PARAGRAPH);
            break;
        case PART_TABLE:
            add_table(blocks, part, parted);
            break;
        case PART_FOOTNOTES:
            add_footnotes(blocks, document, part, parted);
            break;
        }
    }
    return blocks;
}

// PRINTING

static void put_whole(GString *out, const Document *document)
{
    g_autoptr(GPtrArray) blocks = document_blocks(document);
    put_broken(out, "", document->title);
    put_rule(out);
    for (guint i = 0; i < blocks->len; i++) {
        const Block *block = g_ptr_array_index(blocks, i);
        if (block->parted)
            end_line(out);
        g_string_append(out, block->text);
    }
}

char *document_text(const Document *document)
{
    GString *out = g_string_new(NULL);
    if (document->foot)
        put_pages(out, document);
    else
        put_whole(out, document);
    return g_string_free(out, FALSE);
}
