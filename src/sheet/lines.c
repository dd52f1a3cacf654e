#include "lines.h"

#include <standbook/sheet/document.h>
#include <string.h>

static guint character_width(gunichar character)
{
    return g_unichar_iszerowidth(character) ? 0 : g_unichar_iswide(character) ? 2 : 1;
}

guint span_width(const char *text, gsize bytes)
{
    guint width = 0;
    for (const char *at = text; at < text + bytes; at = g_utf8_next_char(at))
        width += character_width(g_utf8_get_char(at));
    return width;
}

guint text_width(const char *text)
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

GPtrArray *break_lines(const char *text, guint width)
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

GArray *word_widths(const char *text)
{
    GArray *widths = g_array_new(FALSE, FALSE, sizeof(guint));
    while (*text) {
        gsize bytes = strcspn(text, " ");
        guint width = span_width(text, bytes);
        if (bytes)
            g_array_append_val(widths, width);
        text += bytes;
        text += strspn(text, " ");
    }
    return widths;
}

guint lines_of_words(const GArray *widths, guint width)
{
    guint lines = 1, used = 0;
    for (guint i = 0; i < widths->len; i++) {
        guint word = g_array_index(widths, guint, i);
        if (used && used + 1 + word > width) {
            lines++;
            used = 0;
        }
        used += (used ? 1 : 0) + word;
        for (; used > width; used -= width)
            lines++;
    }
    return lines;
}

void put_blanks(GString *out, guint count)
{
    for (guint i = 0; i < count; i++)
        g_string_append_c(out, ' ');
}

void end_line(GString *out)
{
    while (out->len && out->str[out->len - 1] == ' ')
        g_string_truncate(out, out->len - 1);
    g_string_append_c(out, '\n');
}

void put_rule(GString *out)
{
    put_blanks(out, MARGIN);
    for (guint i = 0; i < DOCUMENT_WIDTH - 2 * MARGIN; i++)
        g_string_append(out, "─");
    end_line(out);
}
