#include <standbook/base/error.h>
#include <standbook/base/moment.h>
#include <standbook/base/text.h>
#include <standbook/work/words.h>
#include <stdlib.h>
#include <string.h>

static const char BLANKS[] = " \t";

static void skip_blanks(Words *words)
{
    words->at += strspn(words->at, BLANKS);
}

gboolean words_refuse(const Words *words, const char *at, GError **error, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *message = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_autofree char *clean = text_clean(message, -1);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, "column %ld: %s",
                g_utf8_pointer_to_offset(words->text, at) + 1, clean);
    return FALSE;
}

static gboolean is_hidden(gunichar character)
{
    GUnicodeType type = g_unichar_type(character);
    return character != '\t' &&
           (type == G_UNICODE_CONTROL || type == G_UNICODE_FORMAT || type == G_UNICODE_UNASSIGNED ||
            type == G_UNICODE_LINE_SEPARATOR || type == G_UNICODE_PARAGRAPH_SEPARATOR);
}

gboolean words_begin(Words *words, const char *text, GError **error)
{
    *words = (Words){text, text};
    const char *broken = text;
    if (!g_utf8_validate(text, -1, &broken))
        return words_refuse(words, broken, error,
                            "this is not UTF-8 (byte 0x%02X); save the file as UTF-8",
                            (unsigned)(guchar)*broken);
    if (strlen(text) > WORDS_LENGTH)
        return words_refuse(words, text, error,
                            "the line has more than 4096 bytes; say it in several lines");
    for (const char *at = text; *at; at = g_utf8_next_char(at))
        if (is_hidden(g_utf8_get_char(at)))
            return words_refuse(words, at, error, "a hidden character (U+%04X); take it out",
                                g_utf8_get_char(at));
    skip_blanks(words);
    return TRUE;
}

gboolean words_ended(const Words *words)
{
    return *words->at == '\0';
}

// Whether a word ends before this character.
static gboolean is_edge(char character)
{
    return character == '\0' || strchr(" \t[]\",:", character) != NULL;
}

// The bytes that the phrase takes at `at`, any number of blanks for each of its own; 0 if it is not
// there.
static gsize match(const char *at, const char *phrase)
{
    const char *start = at;
    for (; *phrase; phrase++) {
        gsize blanks = *phrase == ' ' ? strspn(at, BLANKS) : *at == *phrase ? 1 : 0;
        if (blanks == 0)
            return 0;
        at += blanks;
    }
    return is_edge(*at) ? (gsize)(at - start) : 0;
}

gboolean words_skip(Words *words, const char *phrase)
{
    gsize length = match(words->at, phrase);
    words->at += length;
    skip_blanks(words);
    return length > 0;
}

const char *words_name(Words *words, const char *const *names, gsize count)
{
    const char *longest = NULL;
    gsize length = 0;
    for (gsize i = 0; i < count; i++) {
        gsize fits = *names[i] == *words->at ? match(words->at, names[i]) : 0;
        if (fits > length) {
            longest = names[i];
            length = fits;
        }
    }
    words->at += length;
    skip_blanks(words);
    return longest;
}

static gboolean begins_number(const char *at)
{
    return g_ascii_isdigit(*at) || (*at && strchr("<>+-", *at) && g_ascii_isdigit(at[1]));
}

const char *words_meant(const Words *words, const char *const *names, gsize count)
{
    const char *end = words->at;
    while (*end && !strchr("[\":", *end) && !(end > words->at && begins_number(end)))
        end++;
    g_autofree char *typed = g_strchomp(g_strndup(words->at, (gsize)(end - words->at)));
    for (;;) {
        const char *near = text_nearest(typed, names, count);
        char *blank = strrchr(typed, ' ');
        if (near || !blank)
            return *typed ? near : NULL;
        *blank = '\0';
    }
}

static gsize word_length(const char *at)
{
    return strcspn(at, " \t[]\",");
}

char *words_peek(const Words *words)
{
    gsize length = word_length(words->at);
    return words_ended(words) ? NULL : g_strndup(words->at, MAX(length, 1));
}

char *words_word(Words *words, const char *what, GError **error)
{
    gsize length = word_length(words->at);
    if (length == 0) {
        words_refuse(words, words->at, error, "%s is missing here", what);
        return NULL;
    }
    char *word = g_strndup(words->at, length);
    words->at += length;
    skip_blanks(words);
    return word;
}

gboolean words_are_quoted(const Words *words)
{
    return *words->at == '"';
}

static char *read_quoted(Words *words, const char *what, GError **error)
{
    const char *opening = words->at;
    g_autoptr(GString) text = g_string_new(NULL);
    const char *at = opening + 1;
    for (; *at && (*at != '"' || at[1] == '"'); at++) {
        g_string_append_c(text, *at);
        at += *at == '"';
    }
    if (!*at) {
        words_refuse(words, opening, error,
                     "this quote is not closed; end the words with \", and write a quote within "
                     "them twice");
        return NULL;
    }
    g_autofree char *stripped = g_strstrip(g_strdup(text->str));
    if (!*stripped) {
        words_refuse(words, opening, error, "%s is empty; write it between the quotes", what);
        return NULL;
    }
    words->at = at + 1;
    if (!is_edge(*words->at)) {
        words_refuse(words, words->at, error, "put a blank behind the closing quote");
        return NULL;
    }
    skip_blanks(words);
    return g_steal_pointer(&stripped);
}

char *words_text(Words *words, const char *what, GError **error)
{
    if (words_are_quoted(words))
        return read_quoted(words, what, error);
    if (word_length(words->at) == 0) {
        words_refuse(words, words->at, error, "%s is missing here; write it in quotes", what);
        return NULL;
    }
    return words_word(words, what, error);
}

gboolean words_whole(Words *words, const char *what, guint least, guint *number, GError **error)
{
    const char *at = words->at;
    gsize digits = strspn(at, "0123456789");
    guint64 value = g_ascii_strtoull(at, NULL, 10);
    if (digits == 0 || digits > 9 || !is_edge(at[digits]) || value < least)
        return words_refuse(words, at, error, "%s is a whole number from %u", what, least);
    *number = (guint)value;
    words->at += digits;
    skip_blanks(words);
    return TRUE;
}

// Whether the text is of this form, in which a 0 stands for any digit.
static gboolean is_like(const char *text, gsize length, const char *form)
{
    if (length != strlen(form))
        return FALSE;
    for (gsize i = 0; i < length; i++)
        if (form[i] == '0' ? !g_ascii_isdigit(text[i]) : text[i] != form[i])
            return FALSE;
    return TRUE;
}

static char *go_behind(Words *words, gsize length)
{
    char *text = g_strndup(words->at, length);
    words->at += length;
    skip_blanks(words);
    return text;
}

guint words_month(const char *text, gsize letters)
{
    static const char *const months[] = {"january",   "february", "march",    "april",
                                         "may",       "june",     "july",     "august",
                                         "september", "october",  "november", "december"};
    for (guint i = 0; letters >= 3 && i < G_N_ELEMENTS(months); i++)
        if (letters <= strlen(months[i]) && g_ascii_strncasecmp(text, months[i], letters) == 0)
            return i + 1;
    return 0;
}

// `1 Sept 2026`, `13. March 2025`, as `2026-09-01`, with its length in the text; NULL if no such
// date stands there. The caller frees.
static char *spelled_date(const char *text, gsize *length)
{
    gsize digits = strspn(text, "0123456789");
    const char *name = text + digits + strspn(text + digits, ". ");
    gsize letters = 0;
    while (g_ascii_isalpha(name[letters]))
        letters++;
    const char *year = name + letters + strspn(name + letters, ". ");
    gsize figures = strspn(year, "0123456789");
    guint month = words_month(name, letters);
    if (digits == 0 || digits > 2 || !month || figures != 4 || (year[4] && year[4] != ' '))
        return NULL;
    *length = (gsize)(year + figures - text);
    return g_strdup_printf("%.4s-%02u-%02d", year, month, atoi(text));
}

gboolean words_date(Words *words, char **date, GError **error)
{
    Moment moment;
    const char *at = words->at;
    gsize length = word_length(at);
    gboolean figures = is_like(at, length, "0000-00-00");
    g_autofree char *day = figures ? g_strndup(at, length) : spelled_date(at, &length);
    *date = NULL;
    if (!day)
        return TRUE;
    g_autofree char *midnight = g_strconcat(day, "T00:00:00", NULL);
    if (!moment_parse(midnight, &moment, NULL))
        return words_refuse(words, at, error, "there is no such day as %.*s", (int)length, at);
    g_free(go_behind(words, length));
    *date = g_steal_pointer(&day);
    return TRUE;
}

gboolean words_time(Words *words, char **time, GError **error)
{
    Moment moment;
    gsize length = word_length(words->at);
    *time = NULL;
    if (!is_like(words->at, length, "00:00") && !is_like(words->at, length, "00:00:00"))
        return TRUE;
    g_autofree char *of_a_day = g_strdup_printf("2000-01-01T%.*s", (int)length, words->at);
    if (!moment_parse(of_a_day, &moment, NULL))
        return words_refuse(words, words->at, error,
                            "there is no such time as %.*s; a day goes from 00:00 to 23:59",
                            (int)length, words->at);
    *time = go_behind(words, length);
    return TRUE;
}

char *words_up_to(Words *words, const char *end)
{
    char *text = g_strchomp(g_strndup(words->at, (gsize)(end - words->at)));
    words->at = end;
    skip_blanks(words);
    return text;
}

gboolean words_finish(const Words *words, GError **error)
{
    static const char *const endings[] = {"with",     "after", "from",  "second", "adapter",
                                          "customer", "loose", "stage", "lot"};
    if (words_ended(words))
        return TRUE;
    g_autofree char *rest = words_peek(words);
    const char *near = text_nearest(rest, endings, G_N_ELEMENTS(endings));
    if (near && strcmp(near, rest) != 0 && strlen(rest) > 2)
        return words_refuse(words, words->at, error, "`%s` is too much here; did you mean `%s`?",
                            rest, near);
    return words_refuse(words, words->at, error,
                        "`%s` is too much here; the line should end before", rest);
}
