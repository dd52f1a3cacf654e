#include <standbook/plan/labels.h>

#include <standbook/base/error.h>
#include <string.h>

G_GNUC_PRINTF(2, 3) static gboolean refuse(GError **error, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *message = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    return FALSE;
}

static gboolean is_label(const char *text)
{
    for (const char *at = text; *at; at = g_utf8_next_char(at))
        if (!g_unichar_isalnum(g_utf8_get_char(at)))
            return FALSE;
    return *text != '\0';
}

static gboolean add_label(GPtrArray *labels, const char *label, GError **error)
{
    if (!is_label(label))
        return refuse(error,
                      *label ? "`%s` is no label; a label has letters and digits only"
                             : "a label is missing here%s; write one",
                      label);
    if (labels->len == LABELS_MOST)
        return refuse(error, "there are more than 1,000 labels here; check the range");
    for (guint i = 0; i < labels->len; i++)
        if (g_str_equal(g_ptr_array_index(labels, i), label))
            return refuse(error, "`%s` stands here twice; write it once", label);
    g_ptr_array_add(labels, g_strdup(label));
    return TRUE;
}

// The end of a range as letters before a number.
typedef struct {
    gsize letters; // length
    gint number;
} RangeEnd;

static gboolean range_end_read(const char *text, RangeEnd *end)
{
    gsize length = strlen(text);
    end->letters = length;
    while (end->letters > 0 && g_ascii_isdigit(text[end->letters - 1]))
        end->letters--;
    gsize digits = length - end->letters;
    if (digits == 0 || digits > 6)
        return FALSE;
    end->number = (gint)g_ascii_strtoll(text + end->letters, NULL, 10);
    return TRUE;
}

static gboolean add_letters(GPtrArray *labels, guchar from, guchar to, GError **error)
{
    gint step = from <= to ? 1 : -1;
    for (gint letter = from;; letter += step) {
        char label[2] = {(char)letter, '\0'};
        if (!add_label(labels, label, error))
            return FALSE;
        if (letter == to)
            return TRUE;
    }
}

static gboolean add_range(GPtrArray *labels, const char *first, const char *last, GError **error)
{
    RangeEnd from, to;
    if (strlen(first) == 1 && strlen(last) == 1 && g_ascii_isalpha(*first) &&
        g_ascii_isalpha(*last) && !!g_ascii_isupper(*first) == !!g_ascii_isupper(*last))
        return add_letters(labels, (guchar)*first, (guchar)*last, error);
    if (!range_end_read(first, &from) || !range_end_read(last, &to) || from.letters != to.letters ||
        strncmp(first, last, from.letters) != 0)
        return refuse(error, "`%s..%s` is no range; write one such as 1..4 or L1..L3", first, last);
    gint step = from.number <= to.number ? 1 : -1;
    for (gint number = from.number;; number += step) {
        g_autofree char *label = g_strdup_printf("%.*s%d", (int)from.letters, first, number);
        if (!add_label(labels, label, error))
            return FALSE;
        if (number == to.number)
            return TRUE;
    }
}

static gboolean add_part(GPtrArray *labels, const char *part, GError **error)
{
    g_auto(GStrv) ends = g_strsplit(part, "..", 2);
    if (!ends[0] || !ends[1])
        return add_label(labels, part, error);
    return add_range(labels, g_strstrip(ends[0]), g_strstrip(ends[1]), error);
}

// Where the part that begins at `index` (bytes) stands, past its spaces, in characters.
static gsize offset_of(const char *text, gsize index)
{
    index += strspn(text + index, " ");
    return (gsize)g_utf8_pointer_to_offset(text, text + index);
}

GStrv labels_read(const char *text, gsize *offset, GError **error)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new_with_free_func(g_free);
    g_auto(GStrv) parts = g_strsplit(*text ? text : " ", "/", -1);
    gsize index = 0;
    for (gsize i = 0; parts[i]; i++) {
        gsize length = strlen(parts[i]);
        if (!add_part(labels, g_strstrip(parts[i]), error)) {
            *offset = offset_of(text, index);
            return NULL;
        }
        index += length + 1;
    }
    g_ptr_array_add(labels, NULL);
    return (GStrv)g_ptr_array_free(g_steal_pointer(&labels), FALSE);
}
