// A document in pages: the same head above each, footnotes on the page that names them, and below
// a foot with `2 of 4`, so that no page can be lost or come from elsewhere without being seen.
#include "lines.h"
#include "parts.h"

#include <standbook/base/text.h>
#include <stdlib.h>
#include <string.h>

enum {
    HEAD = 3, // lines: words, rule, empty
    FOOT = 3, // empty, rule, words
    BODY = PAGE_LINES - HEAD - FOOT,
};

typedef struct {
    GString *body;
    guint lines;
    GArray *notes; // guint: numbers of its footnotes, in order
    guint note_lines;
} PrintedPage;

static void page_free(gpointer data)
{
    PrintedPage *page = data;
    g_string_free(page->body, TRUE);
    g_array_unref(page->notes);
    g_free(page);
}

static PrintedPage *page_add(GPtrArray *pages)
{
    PrintedPage *page = g_new0(PrintedPage, 1);
    page->body = g_string_new(NULL);
    page->notes = g_array_new(FALSE, FALSE, sizeof(guint));
    g_ptr_array_add(pages, page);
    return page;
}

static gboolean has_note(const GArray *notes, guint number)
{
    for (guint i = 0; i < notes->len; i++)
        if (g_array_index(notes, guint, i) == number)
            return TRUE;
    return FALSE;
}

// The footnotes that a block names and `notes` lacks are added to them. Returns their lines.
static guint notes_gather(const Document *document, const Block *block, GArray *notes)
{
    guint lines = 0;
    for (guint i = 0; block->notes && block->notes[i]; i++) {
        guint number = (guint)strtoul(block->notes[i], NULL, 10);
        if (number < 1 || number > document->notes->len || has_note(notes, number))
            continue;
        g_autofree char *text = footnote_text(document, number);
        for (const char *at = text; *at; at++)
            lines += *at == '\n';
        lines += notes->len == 0; // the empty line above the first
        g_array_append_val(notes, number);
    }
    return lines;
}

static GArray *notes_copy(const GArray *notes)
{
    GArray *copy = g_array_new(FALSE, FALSE, sizeof(guint));
    g_array_append_vals(copy, notes->data, notes->len);
    return copy;
}

// How many lines the page would have with that block and those that it stays with.
static guint lines_with(const Document *document, const PrintedPage *page, const GPtrArray *blocks,
                        guint index)
{
    g_autoptr(GArray) notes = notes_copy(page->notes);
    guint lines = page->lines + page->note_lines;
    for (guint i = index; i < blocks->len; i++) {
        const Block *block = g_ptr_array_index(blocks, i);
        lines += block->lines + (block->parted && lines > 0) + notes_gather(document, block, notes);
        if (!block->kept)
            break;
    }
    return lines;
}

static void page_put(const Document *document, PrintedPage *page, const Block *block)
{
    if (block->parted && page->lines > 0) {
        g_string_append_c(page->body, '\n');
        page->lines++;
    }
    g_string_append(page->body, block->text);
    page->lines += block->lines;
    page->note_lines += notes_gather(document, block, page->notes);
}

// A block longer than a page makes a longer page: nothing is left out.
static GPtrArray *pages_filled(const Document *document)
{
    g_autoptr(GPtrArray) blocks = document_blocks(document);
    GPtrArray *pages = g_ptr_array_new_with_free_func(page_free);
    PrintedPage *page = page_add(pages);
    gboolean kept = FALSE;
    for (guint i = 0; i < blocks->len; i++) {
        const Block *block = g_ptr_array_index(blocks, i);
        if (block->footnotes)
            continue;
        if (!kept && page->lines > 0 && lines_with(document, page, blocks, i) > BODY)
            page = page_add(pages);
        page_put(document, page, block);
        kept = block->kept;
    }
    return pages;
}

// Left and right on one line; what does not fit is cut at the left one's end.
static void put_sides(GString *out, const char *left, const char *right)
{
    g_autofree char *one = text_clean(left, -1), *other = text_clean(right, -1);
    guint room = DOCUMENT_WIDTH - 2 * MARGIN, width = MIN(text_width(other), room - 1);
    g_autoptr(GPtrArray) lines = break_lines(one, room - width - 1);
    const char *first = g_ptr_array_index(lines, 0);
    put_blanks(out, MARGIN);
    g_string_append(out, first);
    put_blanks(out, room - width - text_width(first));
    g_string_append(out, other);
    end_line(out);
}

static int compare_numbers(gconstpointer a, gconstpointer b)
{
    guint one = *(const guint *)a, other = *(const guint *)b;
    return (one > other) - (one < other);
}

static void put_notes(GString *out, const Document *document, const PrintedPage *page)
{
    g_array_sort(page->notes, compare_numbers);
    guint used = page->lines + page->note_lines;
    for (guint line = used; line < BODY; line++)
        end_line(out);
    if (page->notes->len)
        end_line(out);
    for (guint i = 0; i < page->notes->len; i++) {
        g_autofree char *text = footnote_text(document, g_array_index(page->notes, guint, i));
        g_string_append(out, text);
    }
}

void put_pages(GString *out, const Document *document)
{
    g_autoptr(GPtrArray) pages = pages_filled(document);
    for (guint i = 0; i < pages->len; i++) {
        const PrintedPage *page = g_ptr_array_index(pages, i);
        g_autofree char *number = g_strdup_printf("%u of %u", i + 1, pages->len);
        g_string_append(out, i ? "\f" : "");
        put_sides(out, document->head_left, document->head_right);
        put_rule(out);
        end_line(out);
        g_string_append(out, page->body->str);
        put_notes(out, document, page);
        end_line(out);
        put_rule(out);
        put_sides(out, document->foot, number);
    }
}
