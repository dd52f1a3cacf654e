#include <standbook/base/text.h>

#include <string.h>

static gboolean is_unsafe(gunichar character)
{
    switch (g_unichar_type(character)) {
    case G_UNICODE_CONTROL:
    case G_UNICODE_FORMAT:
    case G_UNICODE_SURROGATE:
    case G_UNICODE_UNASSIGNED:
    case G_UNICODE_LINE_SEPARATOR:
    case G_UNICODE_PARAGRAPH_SEPARATOR:
        return TRUE;
    default:
        return FALSE;
    }
}

static void append_escaped(GString *clean, const char *bytes, gsize count)
{
    for (gsize i = 0; i < count; i++)
        g_string_append_printf(clean, "\\x%02X", (unsigned)(guchar)bytes[i]);
}

char *text_clean(const char *bytes, gssize length)
{
    const char *end = bytes + (length < 0 ? strlen(bytes) : (gsize)length);
    GString *clean = g_string_sized_new((gsize)(end - bytes));
    while (bytes < end) {
        gunichar character = g_utf8_get_char_validated(bytes, end - bytes);
        gboolean broken = character == (gunichar)-1 || character == (gunichar)-2;
        gsize width = broken || *bytes == '\0' ? 1 : (gsize)(g_utf8_next_char(bytes) - bytes);
        if (broken || character == 0 || is_unsafe(character))
            append_escaped(clean, bytes, width);
        else
            g_string_append_len(clean, bytes, (gssize)width);
        bytes += width;
    }
    return g_string_free(clean, FALSE);
}

// Whether a shell takes the path as it stands, which has nothing that a terminal must not see.
static gboolean is_shell_word(const char *path)
{
    gboolean word = *path && *path != '~' && *path != '-';
    for (const char *at = path; word && *at; at = g_utf8_next_char(at)) {
        gunichar character = g_utf8_get_char(at);
        word = g_unichar_isalnum(character) ||
               (character < 0x80 && strchr("_./:@%+,=~-", (int)character));
    }
    return word;
}

char *text_path(const char *path)
{
    g_autofree char *clean = text_clean(path, -1);
    if (strcmp(clean, path) == 0)
        return is_shell_word(path) ? g_strdup(path) : g_shell_quote(path);
    g_auto(GStrv) parts = g_strsplit(path, "\\", -1);
    g_autofree char *slashed = g_strjoinv("\\\\", parts);
    g_auto(GStrv) quotes = g_strsplit(slashed, "'", -1);
    g_autofree char *quoted = g_strjoinv("\\'", quotes);
    g_autofree char *escaped = text_clean(quoted, -1);
    return g_strdup_printf("$'%s'", escaped);
}

static guint least(guint a, guint b, guint c)
{
    return MIN(a, MIN(b, c));
}

// One row of the distance table for each of the last two letters of `a` keeps it in memory three
// rows wide.
static guint slips_between(const gunichar *a, glong rows, const gunichar *b, glong columns)
{
    gsize width = (gsize)columns + 1;
    guint *table = g_new0(guint, 3 * width);
    guint *before = table, *last = table + width, *row = table + 2 * width;
    for (gsize j = 0; j < width; j++)
        last[j] = (guint)j;
    for (glong i = 1; i <= rows; i++) {
        row[0] = (guint)i;
        for (glong j = 1; j <= columns; j++) {
            row[j] = least(last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] != b[j - 1]));
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = MIN(row[j], before[j - 2] + 1);
        }
        guint *spare = before;
        before = last;
        last = row;
        row = spare;
    }
    guint slips = last[columns];
    g_free(table);
    return slips;
}

guint text_slips(const char *one, const char *other)
{
    g_autofree char *folded_one = g_utf8_casefold(one, -1);
    g_autofree char *folded_other = g_utf8_casefold(other, -1);
    glong rows = 0, columns = 0;
    g_autofree gunichar *a = g_utf8_to_ucs4_fast(folded_one, -1, &rows);
    g_autofree gunichar *b = g_utf8_to_ucs4_fast(folded_other, -1, &columns);
    return slips_between(a, rows, b, columns);
}

const char *text_nearest(const char *word, const char *const *candidates, gsize count)
{
    glong letters = g_utf8_strlen(word, -1);
    guint allowed = letters > 1 ? (guint)(letters + 3) / 4 : 0; // another letter is another word
    const char *nearest = NULL;
    guint fewest = allowed + 1;
    for (gsize i = 0; i < count; i++) {
        if (ABS(g_utf8_strlen(candidates[i], -1) - letters) > (glong)allowed)
            continue; // too many left out or added; a very long word costs nothing
        guint slips = text_slips(word, candidates[i]);
        if (slips < fewest) {
            nearest = candidates[i];
            fewest = slips;
        }
    }
    return nearest;
}

void text_add_once(GPtrArray *texts, const char *text)
{
    if (text && !g_ptr_array_find_with_equal_func(texts, text, g_str_equal, NULL))
        g_ptr_array_add(texts, (gpointer)text);
}

char *text_counted(guint64 count, const char *noun)
{
    gboolean y = g_str_has_suffix(noun, "ry"); // entry, but day
    gsize stem = strlen(noun) - (y && count != 1 ? 1 : 0);
    const char *end = count == 1 ? "" : y ? "ies" : "s";
    return g_strdup_printf("%" G_GUINT64_FORMAT " %.*s%s", count, (int)stem, noun, end);
}
